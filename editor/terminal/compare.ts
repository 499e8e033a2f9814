// chalkline compare: what changed in the garment between two recipes, two revisions of one, or a piece and the piece it was
// copied from.
import { realpathSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { blameOnSteps } from "../../kernel/compare/blame.ts";
import { compareSources, sourcesOf } from "../../kernel/compare/compare-sources.ts";
import { isUnchanged } from "../../kernel/compare/comparison.ts";
import { type LaidBy, laidAsAsked } from "../../kernel/compare/laid-over.ts";
import { compareJson, schema } from "../../kernel/report/compare-json.ts";
import { compareMarkdown } from "../../kernel/report/compare-markdown.ts";
import { type PairOf, picturesOf } from "../../kernel/report/compare-pictures.ts";
import { compareReport } from "../../kernel/report/compare-report.ts";
import { toldOf } from "../../kernel/report/compare-sections.ts";
import type { Review } from "../../kernel/report/compare-told.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { blank } from "../../kernel/report/said.ts";
import type { Unreadable } from "../../kernel/sources.ts";
import { drawingNames } from "../files/drawing-names.ts";
import { findRecipes } from "../files/find-recipes.ts";
import { openAtRevision, recipesAtRevision } from "../files/git-recipes.ts";
import type { OpenedRecipe } from "../files/recipe-files.ts";
import { saveInto } from "../files/save.ts";
import { cannotWrite } from "./cannot-write.ts";
import { comparePage } from "./compare-page.ts";
import { reviewOf, type Side, sideOf } from "./compare-sides.ts";
import { isFolder, openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { exitCode, refusal } from "./told.ts";
import type { Given } from "./worked.ts";

export interface CompareOptions extends Given {
  readonly root?: string;
  /** The folder that pictures and the page go to. */
  readonly out?: string;
  readonly align: LaidBy;
  readonly form: "long" | "markdown" | "json";
}

/** What is to be held against what: two paths, one file at revisions, or a file's own pieces. */
export type Asked =
  | { readonly kind: "paths"; readonly before: string; readonly after: string }
  | { readonly kind: "revisions"; readonly before: string; readonly after: string | undefined; readonly file: string }
  | { readonly kind: "pieces"; readonly file: string };

/** Compares, and tells; the exit code is 1 where a check began to fail with an error, or a side could not be worked whole. */
export const compare = async (asked: Asked, options: CompareOptions, out: Paper, err: Paper): Promise<number> => {
  if (options.align.by !== "table" && options.out === undefined) {
    err.say(refusal("--align says how pictures are laid: give --out FOLDER as well."));
    return exitCode.unreadable;
  }
  const reviews = await reviewsOf(asked, options);
  if (!Array.isArray(reviews)) {
    err.say(refusal(reviews.problem.message, reviews.problem.hint));
    return exitCode.unreadable;
  }
  if (options.out !== undefined) {
    const problem = drawn(reviews, options.out, options.align);
    if (problem !== undefined) {
      err.say(refusal(problem));
      return exitCode.unreadable;
    }
  }
  tell(
    reviews.map(({ review }) => review),
    options,
    out,
  );
  const isBad = reviews.some(
    ({
      review: {
        comparison: { checks },
        remarks,
      },
    }) => remarks.length > 0 || checks.began.some(({ severity }) => severity === "error"),
  );
  return isBad ? exitCode.errors : exitCode.clean;
};

/** Writes one picture for each piece and the page; or says why that cannot be. */
const drawn = (reviews: readonly Reviewed[], folder: string, by: LaidBy): string | undefined => {
  const pairs = reviews.flatMap(({ review, pairOf }) => review.comparison.pieces.map(({ name }) => pairOf(name)));
  if (pairs.length > 0 && !pairs.some(({ before, after }) => before && after && laidAsAsked(before, after, by))) {
    const what = by.by === "place" ? `place called ${by.place}` : by.by;
    return `--align: no piece that changed has a ${what} on both sides.`;
  }
  const pictured = reviews.map(({ review, pairOf }) => ({ review, pictures: picturesOf(review, pairOf, by) }));
  const pieces = pictured.flatMap(({ review, pictures }) =>
    pictures.map((picture) => ({
      ...picture,
      name: reviews.length === 1 ? picture.piece : `${review.title} ${picture.piece}`,
    })),
  );
  const names = drawingNames(pieces.map(({ name }) => name));
  try {
    saveInto(folder, [
      ...pieces.map(({ name, svg }) => ({ name: `${names.get(name)!}.svg`, content: svg })),
      { name: "compare.html", content: comparePage(pictured) },
    ]);
  } catch (error) {
    return cannotWrite(error, folder);
  }
  return undefined;
};

const tell = (reviews: readonly Review[], { form }: CompareOptions, out: Paper): void => {
  if (form === "json") {
    const [only, another] = reviews.map(compareJson);
    out.print(
      jsonText(only !== undefined && another === undefined ? only : { schema, recipes: reviews.map(compareJson) }),
    );
  } else if (form === "markdown") out.print(reviews.map((review) => compareMarkdown(toldOf(review))).join("\n"));
  else
    out.say(reviews.flatMap((review, i) => [...(i === 0 ? [] : [blank]), ...compareReport(toldOf(review), out.width)]));
};

/** How the two sides of a question are opened. */
interface Pair {
  readonly before: { readonly called: string; readonly opened: OpenedRecipe | Unreadable };
  readonly after: { readonly called: string; readonly opened: OpenedRecipe | Unreadable };
}

/** A review, and the pieces that its pictures show. */
interface Reviewed {
  readonly review: Review;
  readonly pairOf: PairOf;
}

const reviewsOf = async (asked: Asked, options: CompareOptions): Promise<Reviewed[] | Unreadable> => {
  if (asked.kind === "pieces") return piecesReview(asked.file, options);
  const pairs = await pairsOf(asked, options.root);
  if (!Array.isArray(pairs)) return pairs;
  const reviews: Reviewed[] = [];
  for (const { before, after } of pairs) {
    const sides = [before, after].map(({ called, opened }) =>
      "problem" in opened ? opened : workedSide(called, opened, options),
    ) as [Side | Unreadable, Side | Unreadable];
    const [was, is] = sides;
    if ("problem" in was) return was;
    if ("problem" in is) return is;
    const review = reviewOf(was, is, options);
    const from = new Map(review.comparison.pieces.map((piece) => [piece.name, piece.from]));
    const pairOf: PairOf = (name) => ({
      before: was.outcome.garment.pieces.get(from.get(name) ?? ""),
      after: is.outcome.garment.pieces.get(name),
    });
    reviews.push({ review, pairOf });
  }
  // Of many recipes those that are the same to the letter are not worth a word, unless all are.
  const told = reviews.filter(({ review }) => !review.isSameText || !isUnchanged(review.comparison));
  return told.length === 0 ? reviews.slice(0, 1) : told;
};

const workedSide = (called: string, opened: OpenedRecipe, given: Given): Side | Unreadable => {
  const side = sideOf(called, opened, given);
  return "problem" in side ? { problem: { code: "given", message: `${called}: ${side.problem}` } } : side;
};

const pairsOf = async (
  asked: Exclude<Asked, { kind: "pieces" }>,
  root: string | undefined,
): Promise<Pair[] | Unreadable> => {
  if (asked.kind === "paths") {
    const { before, after } = asked;
    if (isFolder(before) && isFolder(after)) return folderPairs(before, after, root);
    return [
      {
        before: { called: before, opened: await openNamed(before, root) },
        after: { called: after, opened: await openNamed(after, root) },
      },
    ];
  }
  return isFolder(asked.file) ? revisedFolder(asked, root) : [await revised(asked, root)];
};

type Revisions = Extract<Asked, { kind: "revisions" }>;

const revised = async ({ before, after, file }: Revisions, root: string | undefined): Promise<Pair> => ({
  before: { called: `${file} at ${before}`, opened: openAtRevision(file, before, root) },
  after:
    after === undefined
      ? { called: `${file} as it lies here`, opened: await openNamed(file, root) }
      : { called: `${file} at ${after}`, opened: openAtRevision(file, after, root) },
});

/** Every recipe that a folder holds on both sides. */
const revisedFolder = async (
  { before, after, file: folder }: Revisions,
  root: string | undefined,
): Promise<Pair[] | Unreadable> => {
  const was = waysAt(folder, before);
  const is = waysAt(folder, after);
  if ("problem" in was) return was;
  if ("problem" in is) return is;
  const shared = was.filter((way) => is.includes(way));
  if (shared.length === 0)
    return { problem: { code: "nothing-shared", message: `${folder} holds no recipe on both sides.` } };
  const pairs: Pair[] = [];
  for (const path of shared)
    pairs.push(await revised({ kind: "revisions", before, after, file: join(folder, path) }, root ?? folder));
  return pairs;
};

/** The ways from a folder to the recipes that it holds at a revision, or now. */
const waysAt = (folder: string, revision: string | undefined): string[] | Unreadable => {
  if (revision === undefined) return findRecipes(folder).map((path) => relative(folder, path));
  const paths = recipesAtRevision(folder, revision);
  return "problem" in paths ? paths : paths.map((path) => relative(realpathSync(folder), path));
};

/** The recipes that two folders have under the same name; what only one of them has is no alteration. */
const folderPairs = async (before: string, after: string, root: string | undefined): Promise<Pair[] | Unreadable> => {
  const ways = (folder: string): Map<string, string> =>
    new Map(findRecipes(folder).map((path) => [relative(folder, path).split(sep).join("/"), path]));
  const [was, is] = [ways(before), ways(after)];
  const shared = [...was].filter(([way]) => is.has(way));
  if (shared.length === 0)
    return {
      problem: { code: "nothing-shared", message: `No recipe lies under the same name in ${before} and in ${after}.` },
    };
  const pairs: Pair[] = [];
  for (const [way, path] of shared) {
    const other = is.get(way)!;
    pairs.push({
      before: { called: path, opened: await openNamed(path, root ?? before) },
      after: { called: other, opened: await openNamed(other, root ?? after) },
    });
  }
  return pairs;
};

const piecesReview = async (file: string, options: CompareOptions): Promise<Reviewed[] | Unreadable> => {
  const opened = await openNamed(file, options.root);
  if ("problem" in opened) return opened;
  const side = workedSide(file, opened, options);
  if ("problem" in side) return side;
  const { garment } = side.outcome;
  const copied = [...garment.pieces.values()].flatMap(({ from }) => from ?? []);
  if (copied.length === 0)
    return {
      problem: {
        code: "nothing-copied",
        message: `No piece of ${file} was copied from another, so there is nothing to hold it against.`,
        hint: "Name two recipes, or a revision: chalkline compare HEAD~1 -- FILE.",
      },
    };
  const comparison = compareSources(side.outcome);
  const review: Review = {
    title: garment.title || garment.file,
    before: [...new Set(copied)].join(", "),
    after: "the pieces made of them",
    units: garment.units,
    comparison,
    causes: { causes: [], untried: 0 },
    blame: blameOnSteps(comparison, side.outcome),
    isSameText: true,
    remarks: [],
  };
  const sources = sourcesOf(side.outcome);
  return [{ review, pairOf: (name) => ({ before: sources.get(name), after: garment.pieces.get(name) }) }];
};

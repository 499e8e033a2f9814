// recipes/REVIEWING.md: the swing coat with six alterations, each reviewed as `chalkline compare` tells it of a real git repository.
// The file is what the program says now; CHALKLINE_UPDATE=1 rewrites it.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, workroom } from "../terminal/chalkline.ts";

const recipes = fileURLToPath(new URL("../../recipes/", import.meta.url));
const file = join(recipes, "REVIEWING.md");
const picture = join(recipes, "pictures", "more-swing.svg");
const hasGit = spawnSync("git", ["--version"]).status === 0;

beforeAll(build);

interface Alteration {
  readonly words: string;
  readonly was: string;
  readonly is: string;
  /** What a reviewer sees in the comparison and not in the line. */
  readonly seen: string;
}

const alterations: readonly Alteration[] = [
  {
    words: "More swing",
    was: "param flare  = 9 cm",
    is: "param flare  = 12 cm",
    seen: "One number; the hem grows on all four panels, and neck, shoulder and armhole are as long as before.",
  },
  {
    words: "Ten centimeters longer",
    was: "param longer = 6 cm",
    is: "param longer = 10 cm",
    seen: "Both side seams grow by the same, so they still fit one another.",
  },
  {
    words: "A deeper hem at the wrist",
    was: "allow wrist by 4 cm",
    is: "allow wrist by 5 cm",
    seen: "Only cloth to be turned up; the sleeve itself is what it was.",
  },
  {
    words: "The back a little longer",
    was: "  extend-hem hem by longer\n  true-seam hem, neck, shoulder",
    is: "  extend-hem hem by longer + 1 cm\n  true-seam hem, neck, shoulder",
    seen: "The front was forgotten: the side seam no longer fits, and the reviewer sends it back.",
  },
  {
    words: "The front as well",
    was: "  extend-hem hem by longer\n  true-seam hem, shoulder",
    is: "  extend-hem hem by longer + 1 cm\n  true-seam hem, shoulder",
    seen: "The finding is gone.",
  },
  {
    words: "The piece is called arm",
    was: "sleeve",
    is: "arm",
    seen: "Five lines of text changed, and nothing in the garment but a name.",
  },
];

/** The document and the picture of its first alteration, from a repository that is made for it and thrown away. */
const reviewed = (): { readonly document: string; readonly picture: string } => {
  const blocks = readdirSync(join(recipes, "blocks"), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".chalk"))
    .map((name) => [`blocks/${name}`, readFileSync(join(recipes, "blocks", name), "utf8")] as const);
  let text = readFileSync(join(recipes, "lobby-coat-swing.chalk"), "utf8");
  const folder = workroom(...blocks, ["coat.chalk", text]);
  const git = (...args: string[]): void => {
    const person = [
      "-c",
      "user.name=Workroom",
      "-c",
      "user.email=workroom@example.org",
      "-c",
      "init.defaultBranch=main",
    ];
    const { status, stderr } = spawnSync("git", [...person, ...args], { cwd: folder, encoding: "utf8" });
    if (status !== 0) throw new Error(stderr);
  };
  git("init");
  git("add", "-A");
  git("commit", "-m", "The swing coat");
  const parts = alterations.map(({ words, was, is, seen }) => {
    if (!text.includes(was)) throw new Error(`the swing coat does not say ${was}`);
    text = was === "sleeve" ? text.replaceAll(/(?<![.\w-])sleeve(?![\w-])/g, is) : text.replace(was, is);
    writeFileSync(join(folder, "coat.chalk"), text);
    git("commit", "-am", words);
    const { out, err } = chalkline(folder, [
      "compare",
      "HEAD~1..HEAD",
      "--out",
      join("review", words),
      "--",
      "coat.chalk",
    ]);
    if (err !== "") throw new Error(err);
    return `## ${words}\n\n${seen}\n\n\`\`\`\n$ chalkline compare HEAD~1..HEAD -- coat.chalk\n${out.trimEnd()}\n\`\`\`\n`;
  });
  const document = [
    "# Six alterations of the swing coat, reviewed",
    "",
    "A recipe lives in version control, and a second pattern maker looks at each change. This is what `chalkline compare` tells of six",
    "commits to [lobby-coat-swing.chalk](lobby-coat-swing.chalk); `--out FOLDER` draws each changed piece over what it was, `--markdown`",
    "fits a pull request.",
    "",
    "![The back of the coat before and after: the cloth that was added is hatched along the side, and the hem is marked as 3.2 cm longer, by line 11](pictures/more-swing.svg)",
    "",
    ...parts,
  ].join("\n");
  return { document, picture: readFileSync(join(folder, "review", alterations[0]!.words, "back.svg"), "utf8") };
};

test.skipIf(!hasGit)("recipes/REVIEWING.md is what the program says of the six alterations", () => {
  const now = reviewed();
  if (process.env.CHALKLINE_UPDATE) {
    writeFileSync(file, now.document);
    writeFileSync(picture, now.picture);
  }
  expect(readFileSync(file, "utf8")).toBe(now.document);
  expect(readFileSync(picture, "utf8")).toBe(now.picture);
});

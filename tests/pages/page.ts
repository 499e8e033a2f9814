// A test page: prose with recipes in it, what is found in them, and what they measure. A recipe block is a whole recipe,
// unless the page has a `before` block, which is then put in front of each; `file NAME` blocks are recipes to be used.
// A `drafting` block is a recipe as it stands while one still draws: the built-in checks are not run on it.

/** A fenced block of a page. */
export interface Fence {
  /** The words behind the opening ```: "recipe", "measured", "file blocks/plain.chalk". */
  readonly info: string;
  readonly text: string;
  /** Line of the page (from 1) on which its first line stands. */
  readonly line: number;
}

/** One recipe of a page, with the blocks that follow it. */
export interface Case {
  /** The last line of prose above it: what the recipe is to show. */
  readonly title: string;
  readonly recipe: Fence;
  readonly measured?: Fence;
  readonly tidied?: Fence;
}

export interface Page {
  readonly before: Fence | undefined;
  readonly files: ReadonlyMap<string, Fence>;
  readonly cases: readonly Case[];
}

/** Reads a page; throws where a block is not one that the runner knows, so that none is passed over by mistake. */
export const pageOf = (markdown: string): Page => {
  const files = new Map<string, Fence>();
  const cases: Case[] = [];
  let before: Fence | undefined;
  let title = "";
  const lines = markdown.split("\n");
  for (let index = 0; index < lines.length; index += 1) {
    const line = lines[index]!;
    if (!line.startsWith("```")) {
      if (line.trim() !== "") title = line.replace(/^#+ /, "");
      continue;
    }
    const close = lines.indexOf("```", index + 1);
    if (close < 0) throw new Error(`line ${index + 1}: this block is never closed`);
    const fence = { info: line.slice(3).trim(), text: lines.slice(index + 1, close).join("\n"), line: index + 2 };
    index = close;
    const last = cases.at(-1);
    if (fence.info === "recipe" || fence.info === "drafting") cases.push({ title, recipe: fence });
    else if (fence.info === "before" && !before && cases.length === 0) before = fence;
    else if (fence.info.startsWith("file ")) files.set(fence.info.slice(5), fence);
    else if (fence.info === "measured" && last && !last.measured)
      cases[cases.length - 1] = { ...last, measured: fence };
    else if (fence.info === "tidied" && last && !last.tidied) cases[cases.length - 1] = { ...last, tidied: fence };
    else throw new Error(`line ${fence.line - 1}: a \`${fence.info}\` block cannot stand here`);
  }
  if (cases.length === 0) throw new Error("the page holds no recipe");
  return { before, files, cases };
};

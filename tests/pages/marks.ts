// What a recipe says will be found in it: comment lines with carets under the stretch that is to blame.
//
//     point B = A right 5
//     #                 ^ error value-kind
//     # | A length is wanted here
//     # > point B = A right 5 cm
//
// `|` holds words of the message or the hint, `>` the line as the fix leaves it. `#^^^` marks from the first column on.

export interface Mark {
  /** Line of the recipe, from 1. */
  readonly line: number;
  /** First and last column, from 1. */
  readonly from: number;
  readonly to: number;
  readonly severity: string;
  readonly code: string;
  readonly words: readonly string[];
  readonly fixed?: string;
}

const caret = /^\s*#( *)(\^+) (error|warning) ([a-z][a-z-]*)\s*$/;

/** The marks of a recipe. */
export const marksIn = (recipe: string): Mark[] => {
  const marks: Mark[] = [];
  let marked = 0;
  recipe.split("\n").forEach((line, index) => {
    const found = caret.exec(line);
    const last = marks.at(-1);
    if (found) {
      const [, gap, carets, severity, code] = found;
      const sign = line.indexOf("#") + 1;
      const from = gap === "" ? sign : sign + gap!.length + 1;
      const to = line.indexOf("^") + carets!.length;
      marks.push({ line: marked, from, to, severity: severity!, code: code!, words: [] });
    } else if (last && /^\s*# [|>] /.test(line)) {
      const said = line.replace(/^\s*# [|>] /, "").trim();
      const isFix = /^\s*# > /.test(line);
      marks[marks.length - 1] = isFix ? { ...last, fixed: said } : { ...last, words: [...last.words, said] };
    } else {
      marked = index + 1;
    }
  });
  return marks;
};

/** A mark or a finding in one line, so that two lists of them read well side by side. */
export const inOneLine = ({ line, from, to, severity, code }: Omit<Mark, "words">): string =>
  `line ${line}, columns ${from} to ${to}: ${severity} ${code}`;

// The regular expressions that stand in a source, found by reading it sign by sign: texts, templates and comments are passed over, and
// a stroke begins an expression where no value stands before it.
import { transformSync } from "esbuild";

export interface Written {
  readonly source: string;
  readonly flags: string;
}

/** All of a TypeScript file, in the order in which they stand. */
export const regexesIn = (typescript: string, isPage: boolean): Written[] => {
  // Types gone and comments with them, so that what is left is plain.
  const { code } = transformSync(typescript, {
    loader: isPage ? "tsx" : "ts",
    legalComments: "none",
    target: "esnext",
  });
  const found: Written[] = [];
  // How many braces are open in each template's hole, innermost last.
  const holes: number[] = [];
  let at = 0;
  const pastText = (quote: string): void => {
    at += 1;
    while (at < code.length && code[at] !== quote) at += code[at] === "\\" ? 2 : 1;
    at += 1;
  };
  const pastTemplate = (): void => {
    at += 1;
    while (at < code.length && code[at] !== "`" && !code.startsWith("${", at)) at += code[at] === "\\" ? 2 : 1;
    if (code[at] === "`") at += 1;
    else {
      holes.push(0);
      at += 2;
    }
  };
  while (at < code.length) {
    const sign = code[at]!;
    if (code.startsWith("//", at)) at = endOr(code.indexOf("\n", at), code.length);
    else if (code.startsWith("/*", at)) at = endOr(code.indexOf("*/", at), code.length) + 2;
    else if (sign === '"' || sign === "'") pastText(sign);
    else if (sign === "`") pastTemplate();
    else if (sign === "}" && holes.at(-1) === 0) {
      holes.pop();
      pastTemplate();
    } else if (sign === "/" && beginsExpression(code.slice(Math.max(0, at - 40), at))) {
      const from = at + 1;
      let inClass = false;
      for (at = from; code[at] !== "/" || inClass; at += 1) {
        if (code[at] === "\\") at += 1;
        else if (code[at] === "[") inClass = true;
        else if (code[at] === "]") inClass = false;
      }
      const source = code.slice(from, at);
      const [flags = ""] = /^[a-z]*/.exec(code.slice(at + 1, at + 10)) ?? [];
      found.push({ source, flags });
      at += 1 + flags.length;
    } else {
      if (holes.length > 0 && sign === "{") holes[holes.length - 1]! += 1;
      if (holes.length > 0 && sign === "}") holes[holes.length - 1]! -= 1;
      at += 1;
    }
  }
  return found;
};

const endOr = (index: number, end: number): number => (index < 0 ? end : index);

const beginsExpression = (before: string): boolean => {
  const text = before.trimEnd();
  const word = /[\w$]+$/.exec(text)?.[0];
  if (word !== undefined) return /^(?:return|typeof|case|in|of|delete|void|throw|new|else|do|yield|await)$/.test(word);
  return !/[)\]}"'`]$/.test(text);
};

// What people wrote, shown in Markdown: read by the reader of Markdown that the editor itself uses.
import { expect, test } from "vitest";
import { asCode, asText } from "../../../editor/assist/markdown.ts";

interface Marked {
  parse(text: string): string;
}

// The editor ships its reader of Markdown as a plain module, without types.
const reader = new URL("../../../node_modules/monaco-editor/esm/vs/base/common/marked/marked.js", import.meta.url).href;
const { parse } = (await import(/* @vite-ignore */ reader)) as Marked;

const nasty = [
  "[a](http://x.y)",
  "![a](x.png)",
  "<b>bold</b> <script>alert(1)</script>",
  "<http://x.y> http://x.y www.x.com a@b.com mailto:a@b.com",
  "# heading",
  "- item",
  "1. item",
  "> quote",
  "*a* _b_ **c** ~~d~~ `e`",
  "a | b\n--- | ---\n1 | 2",
  "    code\n\n```\nmore\n```",
  "a\\",
  "&lt;b&gt; &#60;b&#62;",
  "[a]: http://x.y\n[a]",
  "=== ---",
];

/** The tags of a page, and its text as a reader sees it. */
const seen = (html: string): { tags: string[]; text: string } => ({
  tags: [...html.matchAll(/<\/?([a-z0-9]+)[^>]*>/gi)].map(([, tag]) => tag!),
  text: html
    .replace(/<[^>]*>/g, "")
    .replace(/&(?:#(\d+)|(lt|gt|quot|amp));/g, (_, code: string | undefined, name: string) =>
      code === undefined ? { lt: "<", gt: ">", quot: '"', amp: "&" }[name]! : String.fromCharCode(Number(code)),
    )
    .trim(),
});

test("a text is a paragraph and nothing else, and reads as it was written", () => {
  for (const text of nasty) {
    const { tags, text: shown } = seen(parse(asText(text)));
    expect(
      tags.filter((tag) => tag !== "p" && tag !== "br"),
      text,
    ).toEqual([]);
    expect(shown, text).toBe(text.replace(/\s+/g, " ").trim());
  }
});

test("code is code, whatever stands in it", () => {
  for (const text of [...nasty, "`", "``", "a `b` ``c``", "` `"]) {
    const { tags } = seen(parse(`see ${asCode(text)} here`));
    expect([...new Set(tags)].sort(), text).toEqual(["code", "p"]);
  }
});

// Words of a recipe in every format that they are written in: they come out as they went in, and never as a command.
import { SaxesParser } from "saxes";
import { expect, test } from "vitest";
import { asText } from "../../editor/assist/markdown.ts";
import { dxfText } from "../../kernel/export/dxf-text.ts";
import { escaped, idOf } from "../../kernel/export/svg.ts";
import { csvText } from "../../kernel/report/csv.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { readable } from "../../kernel/report/readable.ts";

// After OWASP, "XSS Filter Evasion Cheat Sheet", and the W3C's predefined entities (XML 1.0, 4.6), from memory.
const hostile = [
  "<script>alert(1)</script>",
  "</text><script>alert(1)</script>",
  "</title></svg><svg onload=alert(1)>",
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  "<IMG SRC=`javascript:alert(1)`>",
  "<a href=javascript:alert(1)>x</a>",
  "<![CDATA[<script>alert(1)</script>]]>",
  "]]>",
  "<!-- -->",
  "--><script>",
  "<?xml version='1.0'?>",
  '<!DOCTYPE a [<!ENTITY b SYSTEM "file:///etc/passwd">]>&b;',
  "&lt;script&gt;",
  "&#60;script&#62;",
  "&amp;amp;",
  "&",
  "<",
  ">",
  "'",
  '"',
  "\\u003cscript\\u003e",
  "%3Cscript%3E",
  "\u000b<script>\u0000</script>",
];

test.each(hostile)("%j stands in an SVG, in a text and in an attribute, as itself", (words) => {
  const parser = new SaxesParser();
  const found: string[] = [];
  const tags: string[] = [];
  parser.on("text", (text) => found.push(text));
  parser.on("opentag", ({ name, attributes }) => {
    tags.push(name);
    found.push(...(Object.values(attributes) as string[]));
  });
  parser.on("error", (error) => {
    throw error;
  });
  parser
    .write(`<svg id="${idOf(words)}" title="${escaped(words)}" lang='${escaped(words)}'>${escaped(words)}</svg>`)
    .close();
  // What XML 1.0 cannot hold at all is left out (2.2, "Char"), and so are other controls.
  const plain = [...words].filter((sign) => sign >= " ").join("");
  expect(tags).toEqual(["svg"]);
  expect(found.slice(1)).toEqual([plain, plain, plain]);
  expect(decodeURIComponent(found[0]!)).toBe(words);
});

test.each(hostile)("%j is one string of JSON, and ends no script that the JSON may stand in", (words) => {
  const text = jsonText({ words });
  expect(JSON.parse(text)).toEqual({ words });
  // HTML Standard, 4.12.1.3: these two begin and end what a script's text is taken for.
  expect(text).not.toMatch(/<\/|<!/);
});

test.each(hostile)("%j is no markup in Markdown", (words) => {
  // CommonMark 0.31, 4.6 and 6.6: HTML begins with <, entities with &.
  expect(asText(words).replace(/&#\d+;/g, "")).not.toMatch(/[<>&]/);
});

// OWASP, "CSV Injection": what a spreadsheet takes for a formula begins with = + - @ TAB or CR; the wide forms of them too.
test.each([
  "=1+1",
  "+1",
  "-1+1",
  "@SUM(A1)",
  "\t=1",
  "\r=1",
  '=HYPERLINK("http://x","y")',
  "=cmd|'/C calc'!A0",
  "\uff1d1",
  "\uff0b1",
  "\uff0d1",
  "\uff201",
])("%j begins no formula in a table", (words) => {
  const [field = ""] = /^"?(.)/s.exec(csvText([[words]]))!.slice(1);
  expect(field).toBe("'");
});

test("a number stays a number in a table, with its sign", () => {
  expect(csvText([[-1.5, 2]])).toBe("-1.5,2\r\n");
});

test.each([
  "a\n0\nSECTION",
  "a\r\n  0\r\nEOF",
  "^J0^JSECTION",
  "%%d",
  "\\P{x}",
  "\u20280",
  "\u00850",
  "a\u0000b",
  "\u202eb",
])("%j stays on one line of a DXF, in ASCII", (words) => {
  // DXF reference: a group is a line of code and a line of value, and ^ makes a control of the letter behind it.
  expect(dxfText(words)).toMatch(/^[\x20-\x7e]*$/);
  expect(dxfText(words)).not.toMatch(/\^[^ ]/);
});

// ECMA-48: the controls of both sets, CSI in both forms, and OSC that sets a window's title or a clipboard (from memory).
test.each([
  "\u001b[31m",
  "\u009b31m",
  "\u001b]0;x\u0007",
  "\u001b]52;c;eA==\u001b\\\\",
  "\u0008\u0008",
  "\r",
  "\u202e",
  "\u2066",
  "\u200f",
])("%j does not steer a terminal", (words) => {
  expect(readable(words)).toMatch(/^[^\p{Cc}\u202a-\u202e\u2066-\u2069\u200e\u200f]*$/u);
  expect([...readable(words)].length).toBe([...words].length);
});

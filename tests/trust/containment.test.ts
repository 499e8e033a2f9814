// What the program cannot do because no line of it does so: reach a network, run a text, start another program, put a recipe's words
// into a page as markup. Read from the sources, and where there is strace seen from outside.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { build, panel, program, workroom } from "../terminal/chalkline.ts";

const root = new URL("../../", import.meta.url);
const sources = ["grammar", "kernel", "editor"].flatMap((folder) =>
  readdirSync(new URL(`${folder}/`, root), { recursive: true, encoding: "utf8" })
    .filter((name) => /\.(?:tsx?|mjs|js|html)$/.test(name))
    .map((name) => ({ file: `${folder}/${name}`, text: readFileSync(new URL(`${folder}/${name}`, root), "utf8") })),
);

/** The lines of all sources, comments left out, in which something stands, as "file: what". */
const standing = (what: RegExp): string[] =>
  sources.flatMap(({ file, text }) =>
    text
      .split("\n")
      .map((line) => line.replace(/(?:^|\s)\/\/.*|^\s*\*.*|^\s*\/\*\*.*/, ""))
      .flatMap((line) => [...line.matchAll(what)].map(([found]) => `${file}: ${found}`)),
  );
const only = (found: readonly string[]): string[] => [...new Set(found)].sort();

test("there are sources to look at, and what is looked for would be found", () => {
  expect(sources.length).toBeGreaterThan(300);
  expect(standing(/from "node:fs"/g).length).toBeGreaterThan(5);
});

test("nothing knows a network but the editor's server on this machine, and the queue that `batch --queue` names", () => {
  const modules =
    /from "(?:node:(?:net|http|https|http2|tls|dgram|dns|quic|inspector)(?:\/\w+)?|undici|ws|axios|got|node-fetch|ioredis|redis|bullmq)"/g;
  expect(only(standing(modules))).toEqual([
    'editor/batch/queue-jobs.ts: from "bullmq"',
    'editor/batch/queue-worker.ts: from "bullmq"',
    'editor/batch/queue.ts: from "ioredis"',
    'editor/server/serve.ts: from "node:http"',
  ]);
  const globals =
    /\b(?:fetch|WebSocket|WebTransport|EventSource|XMLHttpRequest|sendBeacon|RTCPeerConnection|importScripts)\s*\(/g;
  // The page asks the server that it came from, by paths without a host.
  expect(only(standing(globals))).toEqual(["editor/page/files/served-home.ts: fetch("]);
  expect(sources.find(({ file }) => file === "editor/page/files/served-home.ts")!.text).not.toMatch(
    /["'`](?:https?:)?\/\//,
  );
});

test("the server listens on this machine alone, and asks nobody", () => {
  const { text } = sources.find(({ file }) => file === "editor/server/serve.ts")!;
  expect(text).toContain('server.listen(port, "127.0.0.1"');
  expect([...text.matchAll(/\.listen\(/g)]).toHaveLength(1);
  // Of what asks others, such as `request`, it knows the types alone.
  const [, known = ""] = /import \{([^}]*)\} from "node:http"/.exec(text)!;
  expect(known.split(",").filter((name) => !name.trim().startsWith("type "))).toEqual([" createServer"]);
});

test("no text is run: no eval, no made function, no other module than those that are written here", () => {
  expect(
    standing(/\beval\s*\(|\bnew Function\b|\bFunction\s*\(|from "node:(?:vm|repl|wasi|sea)"|\bsetTimeout\(\s*["'`]/g),
  ).toEqual([]);
  // An import of what is only known when it runs: steps that the user asked for.
  expect(only(standing(/\bimport\(\s*[^"'\s)][^)]{0,20}/g)).map((found) => found.split(":")[0])).toEqual([
    "editor/terminal/import-text.ts",
  ]);
});

test("no other program is started but git, by name and without a shell", () => {
  expect(only(standing(/from "node:child_process"/g))).toEqual(['editor/files/git-run.ts: from "node:child_process"']);
  const { text } = sources.find(({ file }) => file === "editor/files/git-run.ts")!;
  expect(text).not.toMatch(/shell\s*:|\bexec(?:Sync)?\(/);
  expect(text).toMatch(/spawnSync\(\s*"git"|execFileSync\(\s*"git"|spawn\(\s*"git"/);
});

test("no words of a recipe become markup of the page", () => {
  expect(
    standing(
      /\b(?:innerHTML|outerHTML|insertAdjacentHTML|dangerouslySetInnerHTML|createContextualFragment|srcdoc)\b|document\.write/g,
    ),
  ).toEqual([]);
  // Hover texts of the editor are Markdown; HTML in it is switched on nowhere.
  expect(standing(/supportHtml:\s*true|isTrusted:\s*true/g)).toEqual([]);
});

test("each format has one function that makes text harmless, and whatever writes that format asks it", () => {
  // Where the entities of XML and HTML are made.
  expect(only(standing(/"&lt;"|'&lt;'|&amp;lt;/g)).map((found) => found.split(":")[0])).toEqual([
    "kernel/export/svg.ts",
    "kernel/report/compare-markdown.ts",
  ]);
  const writers = sources.filter(
    ({ file, text }) =>
      file.endsWith(".ts") && !file.startsWith("editor/page/") && /`[^`]*<(?:text|title|desc|h1|td|li)\b/.test(text),
  );
  expect(writers.length).toBeGreaterThan(3);
  const asks = /import \{[^}]*\bescaped\b[^}]*\} from "(?:[^"]*export|\.)\/svg\.ts"/;
  for (const { file, text } of writers) expect(file === "kernel/export/svg.ts" || asks.test(text), file).toBe(true);
  // DXF words are written by dxfText, PDF strings as hexadecimal digits, fields of tables by csvText.
  expect(standing(/PDFString\.of|PDFLiteralString/g)).toEqual([]);
  expect(
    only(standing(/"\\r\\n"|\\r\\n`/g))
      .filter((found) => /csv/.test(found))
      .map((found) => found.split(":")[0]),
  ).toEqual(["kernel/report/csv.ts"]);
});

const strace = spawnSync("strace", ["-V"]).status === 0;

test.skipIf(!strace)(
  "seen from outside, no command opens a way to a network, or starts a program",
  { timeout: 120_000 },
  () => {
    build();
    const folder = workroom(["lobby.chalk", panel]);
    for (const args of [
      ["check", "lobby.chalk"],
      ["measure", "--json", "lobby.chalk"],
      ["draw", "lobby.chalk", "--out", "drawn", "--as", "svg,pdf,dxf"],
      ["tidy", "lobby.chalk"],
    ]) {
      const log = join(folder, "calls.log");
      const traced = ["-f", "-qq", "-e", "trace=socket,connect,bind,listen,sendto,sendmsg,execve", "-o", log];
      const { status } = spawnSync("strace", [...traced, process.execPath, program, ...args], {
        cwd: folder,
        encoding: "utf8",
      });
      expect(status, args.join(" ")).toBe(0);
      const calls = readFileSync(log, "utf8")
        .split("\n")
        .filter((line) => /\b(?:AF_INET6?|connect|bind|listen|sendto|sendmsg)\b/.test(line));
      expect(calls, args.join(" ")).toEqual([]);
      expect([...readFileSync(log, "utf8").matchAll(/\bexecve\(/g)], args.join(" ")).toHaveLength(1);
    }
  },
);

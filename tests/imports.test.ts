// The arrows between folders never turn round, and what must stay out of the kernel stays out of it.
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const root = fileURLToPath(new URL("..", import.meta.url));

interface SourceFile {
  readonly path: string;
  readonly text: string;
  /** What it imports: files of ours by path from the root, packages by name. */
  readonly imports: readonly string[];
}

const sourceFiles: SourceFile[] = ["grammar", "kernel", "editor"].flatMap((folder) =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => {
      const path = `${folder}/${name.replaceAll("\\", "/")}`;
      const text = readFileSync(join(root, path), "utf8");
      const found = [
        ...text.matchAll(/^(?:import|export)\b[^"';]*?\bfrom\s+"([^"]+)";/gm),
        ...text.matchAll(/(?:^import\s+|\bimport\()"([^"]+)"/gm),
      ].map(([, target]) => target!);
      const imports = found.map((target) =>
        target.startsWith(".") ? relative(root, resolve(root, dirname(path), target)).replaceAll("\\", "/") : target,
      );
      return { path, text, imports };
    }),
);

const under = (folder: string): SourceFile[] => sourceFiles.filter(({ path }) => path.startsWith(`${folder}/`));

/** A sentence for each import of a folder that is not allowed. */
const strays = (files: readonly SourceFile[], allowed: (target: string, file: SourceFile) => boolean): string[] =>
  files.flatMap((file) =>
    file.imports.filter((target) => !allowed(target, file)).map((target) => `${file.path} must not import ${target}.`),
  );

test("there is something to look at", () => {
  expect(sourceFiles.length).toBeGreaterThan(150);
  expect(under("grammar").some(({ imports }) => imports.includes("chevrotain"))).toBe(true);
});

test("the grammar imports itself and chevrotain only", () => {
  expect(strays(under("grammar"), (target) => target.startsWith("grammar/") || target === "chevrotain")).toEqual([]);
});

test("the kernel imports the grammar and itself only, and no package at all", () => {
  expect(strays(under("kernel"), (target) => /^(?:grammar|kernel)\//.test(target))).toEqual([]);
});

test("geometry imports geometry only", () => {
  expect(strays(under("kernel/geometry"), (target) => target.startsWith("kernel/geometry/"))).toEqual([]);
});

test.each(["steps", "checks"])("%s never import one another", (folder) => {
  const files = under(`kernel/${folder}`);
  expect(strays(files, (target) => !/^kernel\/(?:steps|checks)\//.test(target))).toEqual([]);
});

test("only the vocabulary names steps and checks", () => {
  const others = sourceFiles.filter(({ path }) => path !== "kernel/vocabulary.ts");
  expect(strays(others, (target) => !/^kernel\/(?:steps|checks)\//.test(target))).toEqual([]);
});

test("an export reads drawings, and so never meets a step", () => {
  expect(
    strays(
      under("kernel/export"),
      (target) => /^kernel\/(?:export|drawing|geometry)\//.test(target) || target === "kernel/units.ts",
    ),
  ).toEqual([]);
});

test("nothing in the kernel knows a language server, a page, a clock, chance or a locale", () => {
  const forbidden = /\bDate\b|Math\.random|toLocale|\bIntl\b|\bprocess\.|\bwindow\b\.|\bdocument\./;
  const found = [...under("grammar"), ...under("kernel")].filter(({ text }) => forbidden.test(withoutComments(text)));
  expect(found.map(({ path }) => path)).toEqual([]);
});

test("sines and their kin are in trig.ts only, for engines differ in the last bit", () => {
  const found = sourceFiles.filter(
    ({ path, text }) =>
      path !== "kernel/geometry/trig.ts" &&
      /Math\.(?:a?sin|a?cos|a?tan|atan2|sinh|cosh|tanh|exp|log|pow|cbrt|hypot)\b/.test(withoutComments(text)),
  );
  expect(found.map(({ path }) => path)).toEqual([]);
});

test("only editor/files and editor/terminal touch files", () => {
  const touching = sourceFiles.filter(({ imports }) =>
    imports.some((target) => /^node:(?:fs|child_process|net|http|https|dgram)/.test(target)),
  );
  expect(touching.filter(({ path }) => !/^editor\/(?:files|terminal)\//.test(path)).map(({ path }) => path)).toEqual(
    [],
  );
});

test("nothing reaches the network", () => {
  const reaching = sourceFiles.filter(
    ({ imports, text }) =>
      imports.some((target) => /^node:(?:net|http|https|http2|dgram|tls|dns)/.test(target)) ||
      /\bfetch\(/.test(withoutComments(text)),
  );
  expect(reaching.map(({ path }) => path)).toEqual([]);
});

const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^\s*\/\/.*$/gm, "");

// Steps from outside: taken in only where the user says so on the command line or has pinned the file; never from a recipe or from
// what lies beside it.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { changeTrusted, readTrusted, trustedFile } from "../../editor/files/trusted.ts";
import { build, chalkline, panel, program, workroom } from "../terminal/chalkline.ts";

beforeAll(build);

/** Eyelets down an edge: the plugin that DEVELOPERS.md shows. */
const eyelets = `// Eyelets for a laced back.
export default ({ pieceStep, phrase, slot, Problem, lengthIn, geometry }) => ({
  steps: [
    pieceStep({
      name: "eyelets",
      since: "1",
      summary: "Drills holes along an edge, evenly spread.",
      example: \`chalkline 1
piece strap {
  line side = (0, 0) to (0, 30 cm)
  eyelets side holes 5
}\`,
      phrase: [phrase\`eyelets \${slot.ownEdge("edge", "the edge")} holes \${slot.number("holes", "how many")}\`],
      work({ edge, holes }, piece, line) {
        if (!(holes >= 2 && holes <= 100)) throw new Problem("eyelets-count", "Eyelets come in 2 to 100.", { slot: "holes" });
        const { path } = piece.edges.get(edge);
        const apart = geometry.pathLength(path) / (holes - 1);
        const drills = Array.from({ length: holes }, (_, index) => ({
          point: geometry.pointAt(path, index * apart),
          drawnBy: line.where,
        }));
        return { now: { ...piece, drills: [...piece.drills, ...drills] }, words: \`\${holes} eyelets \${lengthIn(apart, line.units)} apart\` };
      },
    }),
  ],
});
`;
const laced = panel.replace("  notch side at 20 cm\n", "  eyelets side holes 5\n");

/** A plugin of one step that does what is written. */
const stepThat = (work: string, name = "mend"): string =>
  `export default ({ pieceStep, phrase, slot }) => ({ steps: [pieceStep({ name: "${name}", since: "1", summary: "Mends.", example: "chalkline 1", phrase: [phrase\`${name} \${slot.ownEdge("edge", "the edge")}\`], work(fill, piece, line) { ${work} } })] });`;
const mended = panel.replace("  notch side at 20 cm\n", "  mend side\n");

/** A user's settings folder of their own, and the environment that names it. */
const settings = (folder: string) => ({
  env: { XDG_CONFIG_HOME: join(folder, "settings"), APPDATA: join(folder, "settings"), HOME: folder },
});

describe("--with FILE", () => {
  test("its steps are known to every command, like the built-in ones", () => {
    const folder = workroom(["eyelets.mjs", eyelets], ["laced.chalk", laced]);
    const withIt = (...args: string[]) => chalkline(folder, [...args, "--with", "eyelets.mjs"]);
    expect(withIt("check", "laced.chalk")).toMatchObject({ code: 0, err: "" });
    // The side is 100 cm long, so four spaces of 25 cm.
    expect(withIt("measure", "laced.chalk").out).toContain("5 eyelets 25 cm apart");
    expect(withIt("steps", "eyelets").out).toContain("eyelets EDGE holes NUMBER");
    expect(withIt("manual").out).toContain("### eyelets");
    expect(withIt("tidy", "laced.chalk").code).toBe(0);
    expect(withIt("tidy", "--check", "laced.chalk").code).toBe(0);
    expect(withIt("draw", "laced.chalk", "--out", "drawn").code).toBe(0);
    expect(chalkline(folder, ["--with", "eyelets.mjs", "check", "laced.chalk"]).code).toBe(0);
    // Without it the line is a plain mistake.
    const without = chalkline(folder, ["check", "laced.chalk"]);
    expect(without.code).toBe(1);
    expect(without.out).toContain("There is no step called eyelets.");
    // What the step itself refuses is told at the number that is to blame.
    writeFileSync(join(folder, "one.chalk"), laced.replace("holes 5", "holes 1"));
    const { out } = withIt("check", "--format", "short", "one.chalk");
    expect(out).toContain("error eyelets-count: Eyelets come in 2 to 100.");
  });

  test.each([
    ["a step that Chalkline has", stepThat("", "allow"), "brings a step called allow, and that name is taken"],
    ["a statement's word", stepThat("", "piece"), "brings a step called piece, and that name is taken"],
    ["a place word", stepThat("", "toward"), "brings a step called toward, and that name is taken"],
    [
      "a name that none can write",
      stepThat("").replace('name: "mend"', 'name: "Mend It"'),
      "brings a step called Mend It",
    ],
    ["another verb than its name", stepThat("").replace('name: "mend"', 'name: "darn"'), "does not begin with darn"],
    ["no function", "export default 3;", "its default export has to be a function"],
    ["nothing", "export default () => ({});", "brings no steps and no checks"],
    ["no export", "const a = 1;", "its default export has to be a function"],
    ["no JavaScript", "piece a {", "could not be loaded"],
    [
      "a fault as it is loaded",
      "export default () => { throw new Error('out of thread\\nat line 3'); };",
      "out of thread.",
    ],
    ["a fault that is no Error", "export default () => { throw null; };", "could not be loaded: null."],
    ["another file", "import './other.mjs'; export default () => ({});", "could not be loaded"],
    ["a step made by hand", "export default () => ({ steps: [{ name: 'mend' }] });", "not made with pieceStep"],
    [
      "a check without words",
      "export default ({ defineCheck }) => ({ checks: [defineCheck({ name: 'a', judge() {} })] });",
      "its check a lacks a title",
    ],
  ])("a file with %s is refused in a sentence", (_, text, words) => {
    const folder = workroom(["mend.mjs", text], ["other.mjs", "globalThis.x = 1;"], ["a.chalk", panel]);
    const { code, out, err } = chalkline(folder, ["check", "a.chalk", "--with", "mend.mjs"]);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain("mend.mjs");
    expect(err).toContain(words);
    expect(err).not.toMatch(/\n\s+at |data:/);
  });

  test.each([
    ["throws", "return piece.nothing.there;", /mend, which mend\.mjs brings, failed: Cannot read properties/],
    ["throws something", "throw 'a thread';", /failed: a thread\./],
    ["gives nothing", "", /failed: it gave no piece and words back\./],
    [
      "gives half a piece",
      'return { now: { name: piece.name }, words: "" };',
      /failed: it gave no piece and words back\./,
    ],
    [
      "gives no map",
      'return { now: { ...piece, edges: {} }, words: "" };',
      /failed: it gave no piece and words back\./,
    ],
    [
      "gives what is no number",
      'const places = new Map(piece.places).set("A", { point: { x: NaN, y: 1 } }); return { now: { ...piece, places }, words: "" };',
      /This reaches further than 100 m/,
    ],
  ])("a step that %s is a mistake of its line, and no stack is shown", (_, work, words) => {
    const folder = workroom(["mend.mjs", stepThat(work)], ["a.chalk", mended]);
    for (const args of [["check"], ["measure"], ["draw", "--out", "drawn"]]) {
      const { code, out, err } = chalkline(folder, [...args, "a.chalk", "--with", "mend.mjs"]);
      expect(code).toBe(1);
      expect(`${out}${err}`).toMatch(words);
      expect(`${out}${err}`).toContain("a.chalk:19");
      expect(`${out}${err}`).not.toMatch(/\n\s+at .*[:(]\d+|data:|itself failed/);
    }
  });

  test("a check that fails is told as its own finding, and the others are run", () => {
    const check = `export default ({ defineCheck }) => ({ checks: [defineCheck({ name: "laced", since: "1", title: "Laced.", why: "So.", passes: "chalkline 1", fails: "chalkline 1", *judge(garment) { throw new Error("no lace"); } })] });`;
    const folder = workroom(["laced.mjs", check], ["a.chalk", panel]);
    const { code, out } = chalkline(folder, ["check", "a.chalk", "--with", "laced.mjs"]);
    expect(code).toBe(1);
    expect(out).toContain("laced, which laced.mjs brings, failed: no lace.");
  });

  test("two files may not bring the same name, one file may be named twice", () => {
    const folder = workroom(["a.mjs", eyelets], ["b.mjs", eyelets], ["laced.chalk", laced]);
    expect(chalkline(folder, ["check", "laced.chalk", "--with", "a.mjs", "--with", "./a.mjs"]).code).toBe(0);
    const twice = chalkline(folder, ["check", "laced.chalk", "--with", "a.mjs", "--with", "b.mjs"]);
    expect(twice.code).toBe(2);
    expect(twice.err).toContain("b.mjs brings a step called eyelets, and that name is taken");
    expect(chalkline(folder, ["check", "laced.chalk", "--with", "none.mjs"])).toMatchObject({
      code: 2,
      err: "error: There is no file none.mjs.\n",
    });
  });
});

test.each([
  [["edit", "laced.chalk"], "The cutting table knows the built-in steps only."],
  [["batch", "laced.chalk", "--bodies", "cast.csv", "--out", "out"], "batch knows the built-in steps only."],
  [["batch-worker", "--queue", "redis://127.0.0.1:1"], "batch-worker knows the built-in steps only."],
  [["trust", "a.mjs"], "trust looks at the file itself: say chalkline trust FILE."],
])("%s takes no steps in, and says so before it begins", (args, words) => {
  const folder = workroom(
    ["a.mjs", eyelets],
    ["laced.chalk", laced],
    ["cast.csv", "name,waist-girth (cm)\nUsher 1,70\n"],
  );
  expect(chalkline(folder, [...args, "--with", "a.mjs"], settings(folder))).toEqual({
    code: 2,
    out: "",
    err: `error: ${words} --with does nothing here.\n`,
  });
  expect(readdirSync(folder).sort()).toEqual(["a.mjs", "cast.csv", "laced.chalk"]);
});

describe("chalkline trust", () => {
  test("pins a file, by its content; changed, it is refused with a sentence until it is trusted again", () => {
    const folder = workroom(["tools/eyelets.mjs", eyelets], ["laced.chalk", laced]);
    const run = (...args: string[]) => chalkline(folder, args, settings(folder));
    expect(run("trust", "--list").out).toBe("No files of steps are trusted.\n");
    const { code, out } = run("trust", "tools/eyelets.mjs");
    expect(code).toBe(0);
    expect(out).toContain("step  eyelets  Drills holes along an edge, evenly spread.");
    expect(out).toContain(createHash("sha256").update(eyelets).digest("hex"));
    expect(out).toContain("It runs with all your rights");
    expect(run("check", "laced.chalk")).toMatchObject({ code: 0, err: "" });
    expect(run("trust", "--list").out).toContain("eyelets.mjs  unchanged");

    // One blank more is another file.
    writeFileSync(join(folder, "tools/eyelets.mjs"), `${eyelets} `);
    const changed = run("check", "laced.chalk");
    expect(changed.code).toBe(1);
    expect(changed.err).toContain("eyelets.mjs has changed since you trusted it");
    expect(changed.err).toContain("Its steps are not loaded.");
    expect(changed.out).toContain("There is no step called eyelets.");
    expect(run("trust", "--list").out).toContain("has changed since, and is refused");
    expect(run("trust", "tools/eyelets.mjs").code).toBe(0);
    expect(run("check", "laced.chalk").code).toBe(0);

    expect(run("trust", "--remove", "tools/eyelets.mjs").code).toBe(0);
    expect(run("check", "laced.chalk").code).toBe(1);
    expect(run("trust", "--remove", "tools/eyelets.mjs")).toMatchObject({ code: 2 });
  });

  test("what another command trusts at the same time is kept", () => {
    const others = { path: "/elsewhere/hooks.mjs", sha256: "1".repeat(64) };
    const another = JSON.stringify({ schema: 1, trusted: [others] });
    // A command that comes through while this one runs its file.
    const slow = `import { mkdirSync, writeFileSync } from "node:fs";
mkdirSync("settings/chalkline", { recursive: true });
writeFileSync("settings/chalkline/steps.json", ${JSON.stringify(another)});
${eyelets}`;
    const folder = workroom(["eyelets.mjs", slow]);
    expect(chalkline(folder, ["trust", "eyelets.mjs"], settings(folder)).code).toBe(0);
    const { out } = chalkline(folder, ["trust", "--list"], settings(folder));
    expect(out).toContain("/elsewhere/hooks.mjs  cannot be read any more");
    expect(out).toContain("eyelets.mjs  unchanged");

    // And one that comes through between the reading and the writing.
    const list = join(folder, "settings/chalkline/steps.json");
    const own = { path: "/here/loops.mjs", sha256: "2".repeat(64) };
    let isFirst = true;
    const problem = changeTrusted(list, (all) => {
      if (isFirst) writeFileSync(list, another);
      isFirst = false;
      return [...all, own];
    });
    expect(problem).toBeUndefined();
    expect(readTrusted(list)).toEqual([others, own]);
  });

  test("a file that cannot be used is not pinned", () => {
    const folder = workroom(["mend.mjs", "export default 1;"]);
    expect(chalkline(folder, ["trust", "mend.mjs"], settings(folder))).toMatchObject({ code: 2 });
    expect(existsSync(join(folder, "settings"))).toBe(false);
    expect(chalkline(folder, ["trust"], settings(folder)).code).toBe(2);
    expect(chalkline(folder, ["trust", "mend.mjs", "--list"], settings(folder)).code).toBe(2);
  });

  test.each([
    ["no list", "[]"],
    ["no JSON", "{"],
    ["a relative path", `{"schema":1,"trusted":[{"path":"eyelets.mjs","sha256":"${"0".repeat(64)}"}]}`],
    ["no mark", '{"schema":1,"trusted":[{"path":"/eyelets.mjs","sha256":"abc"}]}'],
    ["null", "null"],
  ])("a list with %s loads nothing, and says so", (_, text) => {
    const folder = workroom(["settings/chalkline/steps.json", text], ["a.chalk", panel]);
    const { code, err } = chalkline(folder, ["check", "a.chalk"], settings(folder));
    expect(code).toBe(0);
    expect(err).toContain("is no list of trusted steps. No trusted steps are loaded.");
  });

  test.skipIf(process.platform === "win32")(
    "a relative settings folder is not looked for where one happens to be",
    () => {
      // XDG Base Directory Specification 0.8: "All paths set in these environment variables must be absolute. If an implementation
      // encounters a relative path … it should consider the path invalid and ignore it." (from memory)
      expect(trustedFile({ XDG_CONFIG_HOME: "settings" })).not.toContain("settings");
      expect(trustedFile({ XDG_CONFIG_HOME: "/a" })).toBe("/a/chalkline/steps.json");
    },
  );
});

/** A folder as a stranger might pack it: whatever some program or other would take for its settings or run. */
const mark = "require('fs').writeFileSync('/proc/self/cwd/RUN', 'run')".replace("/proc/self/cwd/", "");
const bait: readonly string[] = [
  "chalkline.config.js",
  "chalkline.config.mjs",
  "chalkline.config.cjs",
  "chalkline.config.ts",
  ".chalklinerc",
  ".chalklinerc.js",
  ".chalklinerc.json",
  ".chalkline/steps.js",
  ".config/chalkline/steps.json",
  "chalkline/steps.json",
  "steps.js",
  "steps.mjs",
  "steps.json",
  "plugins/steps.mjs",
  "package.json",
  "index.js",
  "node_modules/chalkline/index.js",
  "node_modules/chalkline-plugin-trim/index.js",
  "node_modules/commander/index.js",
  ".env",
  ".npmrc",
  ".node-version",
  ".vscode/settings.json",
  ".vscode/tasks.json",
  ".editorconfig",
  ".gitattributes",
  ".git/config",
  "tsconfig.json",
  "lobby.chalk.js",
  "lobby.js",
  "lobby.mjs",
];

const baited = (name: string): string => {
  if (name === "package.json")
    return JSON.stringify({
      name: "x",
      main: "index.js",
      chalkline: { with: ["./steps.mjs"], steps: ["./steps.mjs"] },
    });
  if (name === ".env") return "NODE_OPTIONS=--require=./steps.js\nCHALKLINE_WITH=./steps.mjs\n";
  if (name.endsWith(".json") || name === ".chalklinerc")
    return JSON.stringify({ schema: 1, with: ["./steps.mjs"], plugins: ["./steps.mjs"], trusted: ["./steps.mjs"] });
  if (name === ".git/config") return '[core]\n\tfsmonitor = touch RUN\n[diff "chalkline"]\n\ttextconv = touch RUN\n';
  if (name.endsWith("rc")) return "node-options=--require=./steps.js\n";
  return name.endsWith(".mjs") || name.endsWith(".ts")
    ? `import { writeFileSync } from "node:fs"; writeFileSync("RUN", "run"); export default () => ({});`
    : `${mark};`;
};

describe("a folder full of settings and plugins that nobody asked for", () => {
  const room = (): string => workroom(["lobby.chalk", panel], ...bait.map((name) => [name, baited(name)] as const));
  const commands = [
    ["check", "lobby.chalk"],
    ["check", "."],
    ["measure", "lobby.chalk"],
    ["draw", "lobby.chalk", "--out", "drawn", "--as", "svg,pdf,dxf"],
    ["tidy", "lobby.chalk"],
    ["facts", "lobby.chalk"],
    ["card", "lobby.chalk"],
  ];

  test("the bait would leave its mark if it were run", () => {
    const folder = room();
    spawnSync(process.execPath, ["steps.js"], { cwd: folder });
    expect(readdirSync(folder)).toContain("RUN");
  });

  test("none of it is run", () => {
    const folder = room();
    for (const args of commands) {
      const { code, err } = chalkline(folder, args, settings(dirname(folder)));
      expect(code, args.join(" ")).toBe(0);
      expect(err, args.join(" ")).not.toContain("note");
    }
    expect(readdirSync(folder)).not.toContain("RUN");
    for (const name of bait) expect(readFileSync(join(folder, name), "utf8"), name).toBe(baited(name));
  });

  const strace = spawnSync("strace", ["-V"]).status === 0;

  test.skipIf(!strace)("none of it is opened", () => {
    const folder = room();
    for (const args of commands.filter(([name]) => name !== "facts")) {
      const log = join(folder, "..", "opened.log");
      const { status } = spawnSync(
        "strace",
        ["-f", "-qq", "-e", "trace=open,openat,openat2,execve", "-o", log, process.execPath, program, ...args],
        { cwd: folder, env: { PATH: process.env.PATH, ...settings(dirname(folder)).env }, encoding: "utf8" },
      );
      expect(status).toBe(0);
      const opened = [...readFileSync(log, "utf8").matchAll(/(?:open\w*|execve)\((?:AT_FDCWD, )?"([^"]+)"/g)].map(
        ([, path]) => (path!.startsWith("/") ? path! : join(folder, path!)),
      );
      // That something is seen at all: the recipe itself.
      expect(opened.some((path) => path.endsWith("lobby.chalk"))).toBe(true);
      expect(opened.filter((path) => bait.some((name) => path === join(folder, name)))).toEqual([]);
    }
  });

  test("nor where the settings folder of the user cannot be told", () => {
    const folder = room();
    expect(chalkline(folder, ["check", "lobby.chalk"], { env: { HOME: "", XDG_CONFIG_HOME: ".config" } }).err).toBe("");
    expect(readdirSync(folder)).not.toContain("RUN");
  });
});

test.skipIf(process.platform === "win32")("a file named through a link is the file that it leads to", () => {
  const folder = workroom(["eyelets.mjs", eyelets], ["laced.chalk", laced]);
  mkdirSync(join(folder, "links"));
  symlinkSync("../eyelets.mjs", join(folder, "links", "a.mjs"));
  const both = ["check", "laced.chalk", "--with", "links/a.mjs", "--with", "eyelets.mjs"];
  expect(chalkline(folder, both).code).toBe(0);
});

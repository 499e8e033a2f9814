// Loaded before the program (node --import): one of its calls to the file system, counted among those that touch a folder, fails
// with an error of the system, or ends the program as kill -9 does, or finds that somebody else has written meanwhile.
import fs from "node:fs";
import { syncBuiltinESMExports } from "node:module";
import { resolve, sep } from "node:path";

/**
 * `folder` is the one that is watched; `at` counts from 1, and 0 lets all calls pass; `call` counts one function alone; `what` is
 * "kill" (before the call), "half" (behind it, or with half of the bytes written), the name of a signal that is sent before the
 * call, the system's name of an error, or `{ file, text }` to be written before the call, or taken away where the text is null.
 * How many calls there were goes to the file `report`.
 */
const { folder, at, call, what, report } = JSON.parse(process.env.CHALKLINE_FAULT);

const original = { ...fs };
const watchedHandles = new Set();
let count = 0;
let depth = 0;

const isWatched = (first) =>
  typeof first === "number"
    ? watchedHandles.has(first)
    : typeof first === "string" && (resolve(first) === folder || resolve(first).startsWith(folder + sep));

const killed = () => {
  process.kill(process.pid, "SIGKILL");
  // The signal is on its way; nothing more may happen until it is here.
  for (;;);
};

const systemError = (code, syscall) =>
  Object.assign(new Error(`${code}: as the test wants it, ${syscall}`), { code, syscall, errno: -1 });

const failing = (name, args) => {
  if (what === "kill") killed();
  if (what === "half") {
    if (name === "writeFileSync") {
      const bytes = Buffer.from(args[1]);
      original.writeSync(args[0], bytes, 0, bytes.length >> 1);
    } else {
      try {
        original[name](...args);
      } catch {
        // A folder that is there already cannot be made, say; what counts is that the call has been.
      }
    }
    killed();
  }
  if (what === "SIGINT" || what === "SIGTERM") {
    process.kill(process.pid, what);
    return;
  }
  if (typeof what === "string") throw systemError(what, name.replace(/Sync$/, ""));
  if (what.text === null) original.rmSync(what.file);
  else original.writeFileSync(what.file, what.text);
};

const calls = [
  ...[
    "accessSync",
    "closeSync",
    "fchmodSync",
    "fchownSync",
    "fstatSync",
    "fsyncSync",
    "lstatSync",
    "mkdirSync",
    "openSync",
  ],
  ...["readFileSync", "readSync", "readdirSync", "realpathSync", "renameSync", "rmSync", "rmdirSync", "statSync"],
  "writeFileSync",
];
for (const name of calls) {
  fs[name] = (...args) => {
    // Node's own functions call one another.
    if (depth > 0 || !isWatched(args[0])) return original[name](...args);
    if (call === undefined || call === name) {
      count += 1;
      if (count === at) failing(name, args);
    }
    depth += 1;
    try {
      const result = original[name](...args);
      if (name === "openSync") watchedHandles.add(result);
      if (name === "closeSync") watchedHandles.delete(args[0]);
      return result;
    } finally {
      depth -= 1;
    }
  };
}
syncBuiltinESMExports();

if (report !== undefined) process.on("exit", () => original.writeFileSync(report, String(count)));

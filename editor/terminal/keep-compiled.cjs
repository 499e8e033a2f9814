// `node keep-compiled.cjs PROGRAM ARGS`: runs the built program once and keeps beside it what V8 has compiled by then. The build calls
// it; what is kept is used by launch.cjs, and made of the same text in the same wrapping.
"use strict";
const { readFileSync, writeFileSync } = require("node:fs");
const { createRequire, wrap } = require("node:module");
const { dirname } = require("node:path");
const { Script } = require("node:vm");

const [filename] = process.argv.splice(2, 1);
const script = new Script(wrap(readFileSync(filename, "latin1")), { filename });
process.on("exit", () => writeFileSync(filename.replace(/\.js$/, ".compiled"), script.createCachedData()));
script.runInThisContext()(exports, createRequire(filename), module, filename, dirname(filename));

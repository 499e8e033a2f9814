// What `chalkline` starts: the built program, with what V8 made of it when it was built, so that node need not compile it again. A
// node of another version takes no notice of that and compiles.
"use strict";
const { readFileSync } = require("node:fs");
const { wrap } = require("node:module");
const { join } = require("node:path");
const { Script } = require("node:vm");

// The build puts the name of the program here.
const filename = join(__dirname, CHALKLINE_PROGRAM);

const compiled = () => {
  try {
    return readFileSync(filename.replace(/\.js$/, ".compiled"));
  } catch {
    return undefined;
  }
};

// The build writes nothing but ASCII, which is fastest to read.
const script = new Script(wrap(readFileSync(filename, "latin1")), { filename, cachedData: compiled() });
script.runInThisContext()(exports, require, module, filename, __dirname);

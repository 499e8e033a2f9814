// The one place where the program runs a module that is not its own. A file to itself, which build.mjs leaves as one: a script that
// V8 takes from what it kept of it can import nothing.

/** The module that a text is. Nothing but this text is run by it, for it has no place from which to bring in other files. */
export const importText = (text: string): Promise<{ readonly default?: unknown }> =>
  import(`data:text/javascript;base64,${Buffer.from(text).toString("base64")}`);

// Names that Windows keeps for itself or takes for others ("Naming Files, Paths, and Namespaces", Microsoft Learn, from memory). A
// recipe and its drawings go from one system to another, so they are avoided on all of them.

/** Whether Windows opens a device by this name: in every folder, whatever ending is behind it, superscript digits too. */
export const isDevice = (name: string): boolean =>
  /^(?:con|prn|aux|nul|conin\$|conout\$|(?:com|lpt)[0-9¹²³]) *(?:\.|$)/i.test(name);

/** Whether Windows takes the name for a shorter one: it drops blanks and points at the end. */
export const losesItsEnd = (name: string): boolean => /[ .]$/.test(name);

// DXF files spelt out in tests.

/** A file of these entities, each a row of codes and values. */
export const dxfOf = (...entities: readonly (readonly (string | number)[])[]): string =>
  [[0, "SECTION", 2, "ENTITIES"], ...entities, [0, "ENDSEC", 0, "EOF"]]
    .flat()
    .map((each) => `${each}\n`)
    .join("");

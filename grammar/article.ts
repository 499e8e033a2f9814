// A noun with "a" or "an" before it.

/** "an edge", "a length". */
export const withArticle = (noun: string): string => (/^[aeiou]/.test(noun) ? `an ${noun}` : `a ${noun}`);

// Names drawn inside a block of lines are kept by the piece under hidden names, which no report shows.

/** Whether a recipe could have written this name. */
export const isShown = (name: string): boolean => !name.includes("~");

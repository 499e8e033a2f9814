// The kinds of file that are brought in.

/** By the ending of their names. */
export const drawingKinds = ["svg", "dxf", "csv"] as const;

export type DrawingKind = (typeof drawingKinds)[number];

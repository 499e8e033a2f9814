// When a mesh is too coarse to be believed.

/** Links that are longer than this ratio over their length make a picture doubtful (trade handbook: under 1 %). */
export const mostStretch = 0.01;

// Buttonholes are known by what they are called, so that the check finds them again whatever has become of their piece.

/** The number of the buttonhole that an edge is by its name, `buttonhole-3`, or `other-buttonhole-3` once laid together with another piece; undefined for any other edge. */
export const buttonholeNumber = (edge: string): number | undefined => {
  const number = /(?:^|-)buttonhole-(\d+)$/.exec(edge)?.[1];
  return number === undefined ? undefined : Number(number);
};

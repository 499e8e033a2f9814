// A picture that the user hands over: opened by the browser itself, from memory, and never sent anywhere.

/** A picture under the points, and where in memory the browser finds it. */
export interface Photograph {
  readonly name: string;
  /** An object URL, given back when the picture is put away. */
  readonly address: string;
  /** Pixels, the right way up. */
  readonly width: number;
  readonly height: number;
}

// A larger picture fills the memory of a small computer, and shows no more of a pattern's line.
const mostPixels = 40_000_000;

/** Opens a picture; words about it where it cannot be used. */
export const readPicture = async (chosen: File): Promise<Photograph | string> => {
  const address = URL.createObjectURL(chosen);
  const image = new Image();
  image.src = address;
  const opened = await new Promise<boolean>((settle) => {
    image.onload = () => settle(true);
    image.onerror = () => settle(false);
  });
  const { naturalWidth: width, naturalHeight: height } = image;
  const refused =
    !opened || width === 0 || height === 0 ? unreadable(chosen.name) : tooLarge(chosen.name, width, height);
  if (refused === undefined) return { name: chosen.name, address, width, height };
  URL.revokeObjectURL(address);
  return refused;
};

const unreadable = (name: string): string =>
  `${name} cannot be read as a picture. Try a JPEG or PNG file of the photograph or scan.`;

const tooLarge = (name: string, width: number, height: number): string | undefined =>
  width * height <= mostPixels
    ? undefined
    : `${name} has ${Math.ceil((width * height) / 1_000_000)} megapixels, and ${mostPixels / 1_000_000} is the most. Save it smaller and choose it again.`;

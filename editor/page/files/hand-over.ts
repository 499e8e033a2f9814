// Hands a file to the user: the browser puts it where downloads go.

/** Offers these bytes under a name. */
export const handOver = (name: string, type: string, content: string | Uint8Array): void => {
  const address = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser has taken hold of the bytes by the next turn.
  setTimeout(() => URL.revokeObjectURL(address));
};

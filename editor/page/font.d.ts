// The bundler puts a font into the program that names it.
declare module "*.ttf" {
  const bytes: Uint8Array;
  export default bytes;
}

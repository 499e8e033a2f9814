// The bundler takes style sheets out of the scripts that name them.
declare module "*.css";

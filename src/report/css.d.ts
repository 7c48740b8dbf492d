declare module "*.css?inline" {
  const css: string;
  // biome-ignore lint/style/noDefaultExport: the bundler hands the text of a style sheet as the default export
  export default css;
}

/** Something the user should know that stops nothing. `code` is stable; `text` is a sentence. */
export type Warning = { readonly code: string; readonly text: string };

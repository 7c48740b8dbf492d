/**
 * A page as one HTML file that needs nothing else: styles inside, no script, no network. The policy in its head forbids both, so
 * that not even a hostile channel name could fetch anything.
 */
import type { ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";

export type HtmlPage = { readonly title: string; readonly css: string; readonly body: ReactNode };

const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

export function htmlPage({ title, css, body }: HtmlPage): string {
  const page = (
    <html lang="en">
      <head>
        <meta charSet="utf-8" />
        <meta httpEquiv="Content-Security-Policy" content={POLICY} />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <title>{title}</title>
        <style>{css}</style>
      </head>
      <body>
        <main>{body}</main>
      </body>
    </html>
  );
  return `<!doctype html>\n${renderToStaticMarkup(page)}\n`;
}

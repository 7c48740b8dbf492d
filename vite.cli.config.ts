import { readFileSync } from "node:fs";
import { defineConfig } from "vite";

const { version } = JSON.parse(readFileSync(new URL("package.json", import.meta.url), "utf8")) as { version: string };

// The command line and the server as one program for Node; what it draws is loaded only when asked for.
export default defineConfig({
  define: { __AIRTALLY_VERSION__: JSON.stringify(version) },
  build: {
    ssr: "edge/airtally.ts",
    outDir: "dist/cli",
    emptyOutDir: true,
    target: "node20",
    rolldownOptions: { output: { entryFileNames: "airtally.js", chunkFileNames: "[name]-[hash].js" } },
  },
  ssr: { noExternal: true },
});

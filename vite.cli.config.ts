import { readFileSync } from "node:fs";
import { defineConfig } from "vite";

const { version } = JSON.parse(readFileSync(new URL("package.json", import.meta.url), "utf8")) as { version: string };

// The command line and the server as one program for Node; what it draws is loaded only when asked for. Beside it the thread in which
// the server has its checks done.
export default defineConfig({
  define: { __AIRTALLY_VERSION__: JSON.stringify(version) },
  build: {
    ssr: true,
    outDir: "dist/cli",
    emptyOutDir: true,
    target: "node20",
    rolldownOptions: {
      input: { airtally: "edge/airtally.ts", "work-thread": "edge/work-thread.ts" },
      output: { entryFileNames: "[name].js", chunkFileNames: "[name]-[hash].js" },
    },
  },
  ssr: { noExternal: true },
});

import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

// Run as `vite build web`. Everything is served by the local server under its strict policy, so nothing may be inlined
// that the policy forbids: no module preload script, no assets as data addresses.
// biome-ignore lint/style/noDefaultExport: vite reads the default export
export default defineConfig({
  plugins: [react()],
  build: {
    outDir: "../dist/web",
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: false,
    rolldownOptions: {
      // The page draws the card; the report as a file is rendered by the server. Without this its renderer would come along.
      treeshake: {
        moduleSideEffects: (id: string) => !id.includes("render-report-html") && !id.includes("react-dom/server"),
      },
    },
  },
});

import { defineConfig } from "vitest/config";

// Quick tests run on every commit; slow ones (whole recordings, browser journeys) are named *.slow.test.ts.
export default defineConfig({
  test: {
    include: ["{src,edge,web,published,test}/**/*.test.{ts,tsx}"],
    exclude: process.env.AIRTALLY_SLOW ? [] : ["**/*.slow.test.*", "node_modules/**"],
    css: true, // style sheets are part of the reports under test
    isolate: false, // tests keep no state between files; a fresh worker per file doubled the time
    testTimeout: 60_000,
    reporters: ["default"],
    sequence: { shuffle: false },
  },
});

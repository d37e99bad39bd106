import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

const entry = (name: string) => fileURLToPath(new URL(`src/${name}.tsx`, import.meta.url));

export default defineConfig({
  base: "/static/",
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: {
    outDir: "../quizroom/static",
    emptyOutDir: true,
    manifest: true,
    // fonts stay files of their own: the pages' policy lets nothing come from data addresses
    assetsInlineLimit: 0,
    rolldownOptions: {
      input: {
        front: entry("front"),
        seat: entry("seat"),
        wall: entry("wall"),
        group: entry("group"),
        desk: entry("desk"),
        grading: entry("grading"),
        items: entry("items"),
        records: entry("records"),
        report: entry("report"),
        mine: entry("mine"),
        worker: fileURLToPath(new URL("src/mine/worker.ts", import.meta.url)),
      },
    },
  },
});

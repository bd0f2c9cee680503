import { fileURLToPath } from "node:url";
import { preact } from "@preact/preset-vite";
import { defineConfig } from "vite";

/** Where a workbench listens while the page is developed with `vite --config web/vite.config.ts`. */
const workbench = process.env["BOLLARD_ADDRESS"] ?? "http://127.0.0.1:8730";

export default defineConfig(({ command }) => {
  // Also when a test run builds the page, it must be the page that people get, without debugging aids.
  if (command === "build") process.env["NODE_ENV"] = "production";
  return {
    root: fileURLToPath(new URL(".", import.meta.url)),
    base: "./",
    plugins: [preact()],
    build: {
      outDir: "../.build/web",
      emptyOutDir: true,
      target: "es2022",
      // From these on browsers know light-dark(). Rewritten for older ones it would no longer follow the scheme of an
      // element, and pictures are exported in the light one.
      cssTarget: ["chrome123", "firefox120", "safari17.5"],
      // The page's policy allows scripts and styles from files of its own origin only, so nothing may be inlined.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      sourcemap: false,
    },
    server: { proxy: { "/api": { target: workbench, changeOrigin: true } } },
  };
});

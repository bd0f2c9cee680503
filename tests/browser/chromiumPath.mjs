import { existsSync } from "node:fs";

const PLACES = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** Path of a Chromium on this machine, or undefined. The environment variable CHROMIUM goes first. */
export function findChromium() {
  return [process.env.CHROMIUM, ...PLACES].find((path) => path && existsSync(path));
}

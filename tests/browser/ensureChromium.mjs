// The browser tests need Chromium. On a Debian machine where we may install it, it is installed; elsewhere a clear word.
import { execFileSync } from "node:child_process";
import { findChromium } from "./chromiumPath.mjs";

function install() {
  console.log("Chromium is not on this machine: installing Debian's package (once).");
  const quiet = { stdio: ["ignore", "ignore", "inherit"], env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
  execFileSync("apt-get", ["update", "-qq"], quiet);
  execFileSync("apt-get", ["install", "-y", "-qq", "chromium"], quiet);
}

if (!findChromium()) {
  try {
    if (process.getuid?.() === 0) install();
  } catch (problem) {
    console.error(`Installing Chromium did not work: ${problem.message}`);
  }
  if (!findChromium()) {
    console.error(
      "The browser tests need Chromium. Install it (Debian: apt-get install chromium), or set CHROMIUM to its path, and run the tests again.",
    );
    process.exit(1);
  }
}

import { chromium } from "playwright-core";
const base = "http://127.0.0.1:8791/";
const which = process.argv[2] ? process.argv[2].split(",") : ["overview","parts"];
const modes = process.argv[3] ? process.argv[3].split(",") : ["1440-light","390-dark"];
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--headless","--no-sandbox","--disable-gpu","--disable-quic","--no-first-run","--disable-background-networking"] });
const { readFileSync } = await import("node:fs");
const axe = readFileSync("/work/main/node_modules/axe-core/axe.min.js","utf8");
for (const m of modes) {
  const [w, scheme] = m.split("-");
  const ctx = await browser.newContext({ viewport: { width: +w, height: w === "390" ? 844 : 900 }, colorScheme: scheme, bypassCSP: true });
  const page = await ctx.newPage();
  page.on("console", (c) => ["error","warning"].includes(c.type()) && console.log(m, "console", c.text()));
  page.on("pageerror", (e) => console.log(m, "pageerror", e.message, e.stack?.slice(0,300)));
  for (const s of which) {
    await page.goto(`${base}#/${s}`); if (s !== which[0]) await page.reload();
    await page.waitForTimeout(4500);
    await page.screenshot({ path: `/tmp/g/shots/${s}-${m}.png`, fullPage: true });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    await page.evaluate(axe);
    const r = await page.evaluate(() => axe.run(document, { runOnly: ["wcag2a","wcag2aa","wcag21aa","wcag22aa","best-practice"] }));
    console.log(m, s, "overflow", over, "axe", r.violations.map(v => `${v.id}(${v.nodes.length}): ${v.nodes[0].target} ${v.nodes[0].any?.[0]?.message ?? v.nodes[0].failureSummary}`).join(" | ") || "clean");
  }
  await ctx.close();
}
await browser.close();

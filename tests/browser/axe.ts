import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/**
 * What axe finds against WCAG 2.2 AA on the page as it is: rule and places of each. The page's own policy forbids that
 * axe is put into it, so open it with `bypassCSP`.
 */
export async function violationsOf(page: Page): Promise<string[][]> {
  await page.addScriptTag({ content: AXE });
  return page.evaluate(async () => {
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
    // @ts-expect-error axe is put into the page above
    const found = await window.axe.run({ runOnly: tags });
    return found.violations.map((one: { id: string; nodes: { target: string[] }[] }) => [
      one.id,
      ...one.nodes.map(({ target }) => target.join(" ")),
    ]);
  });
}

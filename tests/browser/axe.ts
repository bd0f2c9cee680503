import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** The rules that look at colours; where only those change, nothing else can be found. */
const COLOURS = ["color-contrast", "link-in-text-block"];

/**
 * What axe finds against WCAG 2.2 AA on the page as it is: rule and places of each. `colours`: only by the rules that
 * look at colours, for a page that was found good in others. A script tag would be forbidden by the page's own policy.
 */
export async function violationsOf(page: Page, only?: "colours"): Promise<string[][]> {
  await page.evaluate(AXE);
  return page.evaluate(
    async (rules) => {
      const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];
      // @ts-expect-error axe is put into the page above
      const found = await window.axe.run({ runOnly: rules ?? tags });
      return found.violations.map((one: { id: string; nodes: { target: string[] }[] }) => [
        one.id,
        ...one.nodes.map(({ target }) => target.join(" ")),
      ]);
    },
    only === "colours" ? COLOURS : null,
  );
}

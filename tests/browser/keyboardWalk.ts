import type { Page } from "playwright-core";
import { expect } from "vitest";

/** What the keyboard stands on. */
export interface Focused {
  /** Its name as it is spoken: label, words or title. */
  readonly name: string;
  /** What a sighted person misses, empty when the focus is plain to see. */
  readonly unseen: string;
}

/** Goes from control to control with the Tab key alone, and notes every place where the focus can not be seen. */
export class KeyboardWalk {
  readonly unseen: string[] = [];

  constructor(private readonly page: Page) {}

  /** Tabs on until a control of this name has the focus. */
  async to(name: RegExp, { most = 160 } = {}): Promise<void> {
    const passed: string[] = [];
    for (let step = 0; step < most; step++) {
      await this.page.keyboard.press("Tab");
      const focused = await this.look();
      if (name.test(focused.name)) return;
      passed.push(focused.name);
    }
    throw new Error(`no control is called ${name}; passed: ${passed.join(" | ")}`);
  }

  /** Tabs to a control and presses Enter there. */
  async press(name: RegExp): Promise<void> {
    await this.to(name);
    await this.page.keyboard.press("Enter");
  }

  /** Presses a button that takes the focus elsewhere, and waits until it has gone there. */
  async follow(name: RegExp): Promise<void> {
    await this.press(name);
    await expect.poll(async () => (await this.look()).name).not.toMatch(name);
  }

  /** Waits until a control of this name has the focus. */
  async arriveAt(name: RegExp): Promise<void> {
    await expect.poll(async () => (await this.look()).name).toMatch(name);
  }

  /** Tabs to a field and writes over what stands there. */
  async fill(name: RegExp, text: string): Promise<void> {
    await this.to(name);
    await this.page.keyboard.press("Control+A");
    await this.page.keyboard.type(text);
  }

  /** What has the focus now; noted where it can not be seen. */
  async look(): Promise<Focused> {
    let focused = await this.page.evaluate(focusedElement);
    if (focused.unseen !== "") {
      await this.page.evaluate(nextPicture);
      focused = await this.page.evaluate(focusedElement);
    }
    if (focused.unseen !== "") this.unseen.push(`${focused.name}: ${focused.unseen}`);
    return focused;
  }
}

/**
 * Runs in the page: until it is painted again. Where something that arrives above pushes the focus away, the browser scrolls
 * after it before it paints; a look in between would see what no person sees.
 */
function nextPicture(): Promise<void> {
  return new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())));
}

/** Runs in the page. */
function focusedElement(): Focused {
  const one = document.activeElement as HTMLElement | null;
  if (!one || one === document.body) return { name: "", unseen: "" };
  const field = one as HTMLInputElement;
  const words = one instanceof HTMLSelectElement ? "" : one.innerText;
  const name = (one.ariaLabel || field.labels?.[0]?.innerText || words || one.title).trim().replace(/\s+/g, " ");
  const { outlineStyle, outlineWidth } = getComputedStyle(one);
  const { left, right, top, bottom, width, height } = one.getBoundingClientRect();
  const isRinged = outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 1;
  // What is taller than the window can only be seen in part.
  const [x, y] = [
    (Math.max(left, 0) + Math.min(right, innerWidth)) / 2,
    (Math.max(top, 0) + Math.min(bottom, innerHeight)) / 2,
  ];
  const above = document.elementFromPoint(x, y);
  const isCovered = above !== null && !one.contains(above) && !above.contains(one) && !above.closest(".toasts");
  const unseen = !isRinged
    ? "no ring"
    : width < 2 || height < 2
      ? "no size"
      : bottom <= 0 || top >= innerHeight
        ? "outside the window"
        : isCovered
          ? `under ${above.className || above.tagName}`
          : "";
  return { name, unseen };
}

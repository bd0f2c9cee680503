import { COLOURS } from "./seriesStyle.ts";

/** Colours a canvas is drawn with, resolved from the tokens of the page. */
export interface Palette {
  readonly ink: string;
  readonly soft: string;
  readonly line: string;
  readonly paper: string;
  readonly hatch: string;
  readonly focus: string;
  readonly series: readonly string[];
}

/**
 * The tokens as the browser computes them now. `scheme` asks for one theme whatever the page shows: an exported picture is
 * always light.
 */
export function readPalette(within: HTMLElement, scheme?: "light"): Palette {
  const probe = document.createElement("span");
  probe.hidden = true;
  if (scheme) probe.style.colorScheme = scheme;
  within.append(probe);
  const token = (name: string) => {
    probe.style.color = `var(${name})`;
    return getComputedStyle(probe).color;
  };
  const palette = {
    ink: token("--ink"),
    soft: token("--ink-soft"),
    line: token("--line"),
    paper: token("--panel"),
    hatch: token("--hatch"),
    focus: token("--accent"),
    series: Array.from({ length: COLOURS }, (_, at) => token(`--series-${at}`)),
  };
  probe.remove();
  return palette;
}

/** `colour` (rgb) with an opacity. */
export function faded(colour: string, opacity: number): string {
  return colour.replace(/^rgba?\(([^,)]+,[^,)]+,[^,)]+).*\)$/, `rgba($1, ${opacity})`);
}

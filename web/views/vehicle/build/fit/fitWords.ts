import type { DragFit, DragFitData } from "../../../../../shared/model/vehicle/dragFit.ts";
import { formatNumber } from "../../../../../shared/quantity/format.ts";
import type { ChartSpec } from "../../../../charts/chartSpec.ts";
import type { FitMethod } from "./fitDraft.ts";

interface MethodWords {
  readonly label: string;
  /** How it is done, and what goes wrong. */
  readonly how: string;
  /** A table to begin with. */
  readonly example: string;
  /** What the two relative uncertainties are of; null: there is no second. */
  readonly doubts: readonly [string, string | null];
}

export const METHOD_WORDS: Readonly<Record<FitMethod, MethodWords>> = {
  tow: {
    label: "tow: force at some speeds",
    how: "Tow it on a thin line with a scale or load cell in it, long and low enough that the line pulls level, at four speeds or more. Take the drag of the line off.",
    example: "speed (m/s), force (N)\n0.3, 2.1\n0.6, 8.3\n0.9, 18.9\n1.2, 33.4",
    doubts: ["Speed readings are good to", "Force readings are good to"],
  },
  coastDown: {
    label: "coast-down: slowing by itself",
    how: "Bring it up to speed, stop the thrusters, and log speed or distance while it slows. Neutral, in a straight line, away from the walls.",
    example: "time (s), speed (m/s)\n0, 1.00\n1, 0.77\n2, 0.62\n3, 0.53\n4, 0.45\n5, 0.40",
    doubts: ["Readings are good to", null],
  },
  timedRuns: {
    label: "timed runs: speed at known thrust",
    how: "Run a measured course at steady thrust, both ways where the water moves. The thrust is that of the thrusters at that speed, less what the hull takes off it.",
    example: "thrust (N), distance (m), time (s)\n10, 10, 15.8\n20, 10, 11.2\n30, 10, 9.1\n40, 10, 7.9",
    doubts: ["Thrusts are good to", "Course and clock are good to"],
  },
  terminal: {
    label: "dive: sinking or climbing by its weight",
    how: "Trim it heavy or light by a known weight, let it go without thrust, and log the depth until long after it no longer gains speed. Add a run for each weight.",
    example: "time (s), depth (m)\n0, 0.00\n1, 0.18\n2, 0.42\n3, 0.67\n4, 0.92\n5, 1.17\n6, 1.42\n7, 1.67",
    doubts: ["Net weights are good to", "Depth readings are good to"],
  },
};

/** "speed, m/s" as quantity and unit. */
function axisOf(words: string): { readonly label: string; readonly unit: string } {
  const comma = words.lastIndexOf(",");
  const label = words.slice(0, comma).trim();
  return { label: label.charAt(0).toUpperCase() + label.slice(1), unit: words.slice(comma + 1).trim() };
}

/** Measured against fitted. */
export function fitChart({ fitted }: Pick<DragFit, "fitted">): ChartSpec {
  const points = fitted.points.toSorted((one, other) => one.x - other.x);
  return {
    title: `Measured and fitted ${axisOf(fitted.up).label.toLowerCase()}`,
    x: axisOf(fitted.across),
    y: axisOf(fitted.up),
    series: [
      {
        ...{ id: "measured", name: "Measured", kind: points.length > 200 ? "trace" : "measured", style: 0 },
        points: points.map(({ x, measured }) => ({ x, y: measured })),
      },
      {
        ...{ id: "fitted", name: "Fitted", kind: "fit", style: 1 },
        points: points.map((one) => ({ x: one.x, y: one.fitted })),
      },
    ],
  };
}

/** Where the doubt of the drag area comes from: cause and share of its variance, the greatest first. */
export function doubtShares({ parts }: Pick<DragFit, "parts">): { readonly cause: string; readonly share: string }[] {
  const whole = parts.reduce((sum, { standardUncertainty }) => sum + standardUncertainty ** 2, 0);
  return parts
    .filter(({ standardUncertainty }) => standardUncertainty > 0)
    .toSorted((one, other) => other.standardUncertainty - one.standardUncertainty)
    .map(({ cause, standardUncertainty }) => ({
      cause,
      share: `${formatNumber((100 * standardUncertainty ** 2) / whole, 2)} %`,
    }));
}

/** "a tow, 240 rows": what is kept of a measurement. */
export function keptInWords(data: DragFitData): string {
  const rows = (count: number, one: string) => `${count} ${count === 1 ? one : `${one}s`}`;
  switch (data.method) {
    case "tow":
      return `Tow, ${rows(data.speed.length, data.time ? "row" : "point")}`;
    case "coastDown":
      return `Coast-down, ${rows(data.time.length, "row")}`;
    case "timedRuns":
      return `Timed runs, ${rows(data.runs.length, "run")}`;
    case "terminal":
      return `Dive, ${rows(data.runs.length, "run")}`;
  }
}

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { DEMO, type PropellerDemoRun, propellerRuns } from "../../samples/demo.ts";
import { sampleLogs } from "../../samples/generator/logs.ts";
import { TRUE_PROPELLERS } from "../../samples/generator/truth.ts";
import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { compareVariants } from "../../shared/compare/compareVariants.ts";
import { readLog } from "../../shared/log/readLog.ts";
import { Instrument, type UsedInstruments } from "../../shared/model/instrument.ts";
import { Controller } from "../../shared/model/parts/controller.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import { Reduction } from "../../shared/model/reduction.ts";

/**
 * The generator knows what is true; the reduction sees only the files. The reference is the generator's own input, which
 * no code under test has read. A 95 % interval misses now and then: one run of the eleven may, and none by more than
 * half its half-width.
 */
const TRUTH = new Map(sampleLogs().map(({ fileName, truth }) => [fileName, truth]));

const RUNS = propellerRuns(DEMO);

const onDisk = (file: string) => readFileSync(new URL(`../../samples/logs/${file}`, import.meta.url));

const instrumentsOf = ({ thrustInstrument: key }: PropellerDemoRun): UsedInstruments =>
  key ? { thrust: { id: key, instrument: Instrument.parse(DEMO.instruments[key]) } } : {};

function reduce(run: PropellerDemoRun, bytes: Uint8Array = onDisk(run.file)): Reduction {
  return reduceRun({
    table: readLog(new Uint8Array(bytes), run.file),
    recipe: Recipe.parse(run.recipe),
    propeller: Propeller.parse(DEMO.propellers[run.propeller]),
    motor: Motor.parse(DEMO.motors[run.motor]),
    controller: Controller.parse(DEMO.controllers[run.controller]),
    instruments: instrumentsOf(run),
    source: { sha256: createHash("sha256").update(bytes).digest("hex"), program: "test" },
  });
}

const TRUE_RATIO = TRUE_PROPELLERS.sanded.thrustCoefficient / TRUE_PROPELLERS.asPrinted.thrustCoefficient;
const REDUCED = new Map(RUNS.map((run) => [run.file, reduce(run)]));
const reductionsOf = (variant: string) =>
  RUNS.filter((run) => run.variant === variant).map((run) => REDUCED.get(run.file)!);

interface Interval {
  readonly value: number;
  readonly interval95: readonly [number, number];
}
/** Distance of the truth from the estimate in half-widths of the interval: up to 1 it is inside. */
function miss({ value, interval95: [low, high] }: Interval, truth: number): number {
  return truth > value ? (truth - value) / (high - value) : (value - truth) / (value - low);
}

describe("reducing the demonstration logs", () => {
  test.each(RUNS.map(({ file }) => ({ file })))("$file gives a result that fits its schema", ({ file }) => {
    expect(Reduction.safeParse(REDUCED.get(file)).error?.issues ?? []).toEqual([]);
  });

  test("finds the true thrust coefficient within its 95 % interval in all runs but one at most", () => {
    const misses = RUNS.map(({ file }) =>
      miss(REDUCED.get(file)!.thrustCoefficient, TRUTH.get(file)!.thrustCoefficient),
    );
    expect(misses.filter((distance) => distance > 1).length).toBeLessThanOrEqual(1);
    expect(Math.max(...misses)).toBeLessThan(1.5);
  });

  test.each(RUNS.map(({ file }) => ({ file })))("$file is known to better than 4 % at 95 %", ({ file }) => {
    // An interval that is wide enough finds anything; diameter and calibration alone come to about 1.6 % here.
    const { value, interval95 } = REDUCED.get(file)!.thrustCoefficient;
    expect((interval95[1] - interval95[0]) / 2 / value).toBeLessThan(0.04);
  });

  test("finds the true torque coefficient from the torque cell within its 95 % interval", () => {
    const reduction = REDUCED.get("torque-motor-b.tsv")!;
    expect(reduction.powerSource).toBe("torque");
    expect(miss(reduction.torqueCoefficient!, TRUTH.get("torque-motor-b.tsv")!.torqueCoefficient)).toBeLessThan(1);
  });

  test.each(RUNS.filter(({ motor }) => motor === "a").map(({ file }) => ({ file })))(
    "$file gives the torque coefficient from the motor constants to 3 %",
    ({ file }) => {
      // Kv, resistance and idle current of the data sheet are up to 2 % from those of the simulated motor; together with
      // the meters (0.2 % and 0.4 %) and the diameter (five times 0.05 %) they move K_Q by about 1.5 %.
      const reduction = REDUCED.get(file)!;
      expect(reduction.powerSource).toBe("motorConstants");
      const ratio = reduction.torqueCoefficient!.value / TRUTH.get(file)!.torqueCoefficient;
      expect(Math.abs(ratio - 1)).toBeLessThan(0.03);
    },
  );

  test("tells sanded from as printed by the true ratio of the two propellers", () => {
    const comparison = compareVariants({
      baseline: { name: "as printed", reductions: reductionsOf("as printed") },
      variant: { name: "sanded", reductions: reductionsOf("sanded") },
    });
    const ratio = comparison.thrustCoefficientRatio;
    expect(miss(ratio, TRUE_RATIO)).toBeLessThan(1);
    expect(ratio.basis).toBe("replicates");
    expect(ratio.interval95[1], "sanding does not double the thrust").toBeLessThan(2);
  });

  test("covers the true ratio with the stated 95 % in other draws of mountings and noise", () => {
    // Twelve draws: at 95 % coverage fewer than ten hits come up in 2 of 100 such dozens (binomial distribution).
    const hits = Array.from({ length: 12 }, (_, i) => {
      const texts = new Map(sampleLogs(i + 1).map(({ fileName, text }) => [fileName, new TextEncoder().encode(text)]));
      const drawn = (variant: string) =>
        RUNS.filter((run) => run.variant === variant).map((run) => reduce(run, texts.get(run.file)!));
      const { thrustCoefficientRatio } = compareVariants({
        baseline: { name: "as printed", reductions: drawn("as printed") },
        variant: { name: "sanded", reductions: drawn("sanded") },
      });
      return miss(thrustCoefficientRatio, TRUE_RATIO) < 1;
    });
    expect(hits.filter(Boolean).length).toBeGreaterThanOrEqual(10);
  });

  test("names no point above the momentum limit", () => {
    for (const { plateaus } of REDUCED.values()) {
      for (const { thrust, momentumLimit } of plateaus) {
        if (momentumLimit !== null) expect(thrust.value).toBeLessThan(momentumLimit);
      }
    }
  });
});

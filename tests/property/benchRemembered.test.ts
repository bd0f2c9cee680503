import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reduceInSteps, reduceRun, runFactsOf } from "../../shared/bench/reduceRun.ts";
import type { LogTable } from "../../shared/log/logTable.ts";
import type { UsedInstruments } from "../../shared/model/instrument.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem, sentence } from "../../shared/quantity/problem.ts";
import { propellerOf, recipeOf, reduce, SOURCE, tableOf } from "../unit/benchTable.ts";
import { quietColumns } from "./benchSimulatedRun.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["command", "us"],
  ["torque", "N m"],
  ["voltage", "V"],
  ["current", "A"],
] as const;

/** A log with every channel, a spike in three of them, a missing cell and a scale that counts pulls as negative. */
function fullColumns(): Record<string, Float64Array> {
  const columns = quietColumns();
  const [thrust, rate] = [columns["thrust"]!, columns["rate"]!];
  const made: Record<string, Float64Array> = {
    ...Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, Float64Array.from(values)])),
    torque: Float64Array.from(thrust, (T, i) => 0.012 * T + 1e-4 * Math.sin(7 * i)),
    voltage: Float64Array.from(rate, (n, i) => 15.2 - 0.004 * n + 0.01 * Math.sin(3 * i)),
    current: Float64Array.from(rate, (n, i) => 2e-3 * n * n + 0.3 + 0.01 * Math.cos(5 * i)),
  };
  const middle = thrust.length >> 1;
  made["thrust"]![middle] = 99;
  made["voltage"]![middle + 40] = 0;
  made["torque"]![middle + 90] = -5;
  made["current"]![middle + 7] = Number.NaN;
  return made;
}

const COLUMNS = fullColumns();

/** The same log that nothing was ever worked out of. */
const untouched = (): LogTable => tableOf(COLUMNS);

interface Asked {
  readonly recipe: ReturnType<typeof recipeOf>;
  readonly diameter: number;
  readonly motor: Motor | undefined;
  readonly instruments: UsedInstruments;
}

const motorOf = (resistance: number) =>
  Motor.parse({ name: "m", speedConstant: 60, resistance, noLoadCurrent: 0.4, polePairs: 7 });

const START: Asked = { recipe: recipeOf(USES), diameter: 0.076, motor: undefined, instruments: {} };

const corrected = (role: string) =>
  fc
    .record({
      factor: fc.double({ min: 0.5, max: 2, noNaN: true }).chain((f) => fc.constantFrom(f, -f)),
      offset: fc.double({ min: -2, max: 2, noNaN: true }),
      relativeUncertainty: fc.constantFrom(0, 0.01),
    })
    .map((correction) => ({ [role]: correction }));

/** One thing that a person edits. */
const EDIT: fc.Arbitrary<(asked: Asked) => Asked> = fc.oneof(
  fc
    .oneof(...["thrust", "torque", "voltage", "current", "rotationRate"].map(corrected))
    .map(
      (one) => (asked: Asked) =>
        withRecipe(asked, { corrections: { ...asked.recipe.corrections, ...(one as object) } }),
    ),
  fc
    .double({ min: 275, max: 300, noNaN: true })
    .map((temperature) => (asked: Asked) => withRecipe(asked, { fluid: { kind: "fresh" as const, temperature } })),
  fc.constantFrom("torque" as const, "ignore" as const).map((role) => (asked: Asked) => {
    const columns = asked.recipe.columns.map((use) => (use.column === 4 ? { ...use, role } : use));
    return withRecipe(asked, { columns });
  }),
  fc.double({ min: 0.05, max: 0.1, noNaN: true }).map((diameter) => (asked: Asked) => ({ ...asked, diameter })),
  fc.constantFrom(0.1, 0.2).map((resistance) => (asked: Asked) => ({ ...asked, motor: motorOf(resistance) })),
  fc
    .constantFrom(
      { mode: "none" as const },
      { mode: "zeroThrottle" as const, shape: "line" as const },
      { mode: "zeroThrottle" as const, shape: "piecewise" as const },
    )
    .map((tare) => (asked: Asked) => withRecipe(asked, { tare })),
  fc
    .double({ min: 0, max: 0.6, noNaN: true })
    .map((later) => (asked: Asked) => withRecipe(asked, { plateaus: { mode: "spans", spans: spansFrom(later) } })),
);

function withRecipe(asked: Asked, more: Partial<Asked["recipe"]>): Asked {
  return { ...asked, recipe: { ...asked.recipe, ...more } };
}

/** Plateaus of the clean log, the second begun `later`, s. */
function spansFrom(later: number) {
  return FOUND.map(({ start, end }, i) => ({ start: start! + (i === 1 ? later : 0), end: end! }));
}

const FOUND = reduce({ table: untouched(), recipe: START.recipe }).plateaus;

function outcome(table: LogTable, { diameter, ...asked }: Asked): Reduction | string {
  try {
    return reduceRun({ ...asked, table, propeller: propellerOf({ diameter }), source: SOURCE });
  } catch (problem) {
    if (problem instanceof InputProblem) return sentence(problem.problem);
    throw problem;
  }
}

describe("after any edits", () => {
  test("a reduction is to the last bit what it is from a log that nothing was remembered of", () => {
    let reduced = 0;
    fc.assert(
      fc.property(fc.array(EDIT, { minLength: 1, maxLength: 6 }), (edits) => {
        const table = untouched();
        outcome(table, START);
        let asked = START;
        for (const edit of edits) {
          asked = edit(asked);
          const anew = outcome(untouched(), asked);
          expect(outcome(table, asked)).toStrictEqual(anew);
          if (typeof anew !== "string") reduced++;
        }
      }),
      { numRuns: 20 },
    );
    expect(reduced).toBeGreaterThan(25);
  });
});

describe("what was measured is not measured again", () => {
  const table = untouched();
  const measured = (asked: Asked) => {
    const facts = runFactsOf({ ...asked, table, propeller: propellerOf({ diameter: asked.diameter }), source: SOURCE });
    return facts.plateaus.map(({ measured: { written } }) => written);
  };
  const corrections = { factor: -1.25, offset: 0.3, relativeUncertainty: 0.02 };

  test.each([
    ["factor and zero of the thrust", withRecipe(START, { corrections: { thrust: corrections } })],
    ["factor and zero of the torque", withRecipe(START, { corrections: { torque: corrections } })],
    [
      "factor of the rotation rate",
      withRecipe(START, { corrections: { rotationRate: { ...corrections, offset: 0 } } }),
    ],
    ["fluid", withRecipe(START, { fluid: { kind: "fresh", temperature: 280 } })],
    ["diameter", { ...START, diameter: 0.08 }],
    ["motor", { ...START, motor: motorOf(0.2) }],
  ])("after an edit of the %s", (_, asked) => {
    const before = measured(START);
    const after = measured(asked);
    expect(before).toHaveLength(FOUND.length);
    for (const [i, written] of after.entries()) expect(written).toBe(before[i]);
  });

  test("after an edit of one plateau's edge, but for that plateau", () => {
    const edited = (later: number) => withRecipe(START, { plateaus: { mode: "spans", spans: spansFrom(later) } });
    const before = measured(edited(0));
    const same = measured(edited(0.4)).map((written, i) => written === before[i]);
    expect(same).toEqual(FOUND.map((_, i) => i !== 1));
  });
});

describe("a reduction in steps", () => {
  const request = () => ({ ...START, table: untouched(), propeller: propellerOf(), source: SOURCE });

  test("tells a share that never falls, from nothing to all, and ends with the same result", () => {
    const shares: number[] = [];
    const steps = reduceInSteps(request());
    let step = steps.next();
    for (; !step.done; step = steps.next()) shares.push(step.value);
    expect(shares.length).toBeGreaterThan(FOUND.length + 12);
    expect(shares.toSorted((a, b) => a - b)).toEqual(shares);
    expect(shares.at(-1)).toBeCloseTo(1, 12);
    expect(step.value).toStrictEqual(reduceRun(request()));
  });

  test("can be given up after any step, and the next one is the same", () => {
    const asked = request();
    const whole = reduceRun(request());
    for (const given of [1, 3, 6, 10, 20]) {
      const steps = reduceInSteps(asked);
      for (let i = 0; i < given; i++) steps.next();
      expect(reduceRun(asked)).toStrictEqual(whole);
    }
  });
});

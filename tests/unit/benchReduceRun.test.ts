import { describe, expect, test } from "vitest";
import { Controller, Motor } from "../../shared/model/parts.ts";
import { Reduction } from "../../shared/model/reduction.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { quietColumns } from "../property/benchSimulatedRun.ts";
import { propellerOf, recipeOf, reduce, tableOf } from "./benchTable.ts";

const USES = [
  ["time", "s"],
  ["thrust", "N"],
  ["rotationRate", "rev/s"],
  ["command", "us"],
] as const;

const codes = ({ warnings }: Reduction) => warnings.map(({ code }) => code);
const messageOf = ({ warnings }: Reduction, code: string) =>
  warnings.find((found) => found.code === code)?.message ?? "";

function problemOf(action: () => unknown): InputProblem["problem"] {
  try {
    action();
  } catch (error) {
    if (error instanceof InputProblem) return error.problem;
    throw error;
  }
  throw new Error("nothing was refused");
}

describe("a clean log", () => {
  const reduction = reduce({ table: tableOf(quietColumns()), recipe: recipeOf(USES) });

  test("gives the thrust coefficient that made it, within its interval, from every step", () => {
    const [low, high] = reduction.thrustCoefficient.interval95;
    expect(low).toBeLessThan(0.2);
    expect(high).toBeGreaterThan(0.2);
    expect(high - low).toBeLessThan(0.002);
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.plateaus.every(({ used }) => used)).toBe(true);
  });

  test("is a document of the model, and stays one through JSON", () => {
    expect(Reduction.parse(JSON.parse(JSON.stringify(reduction)))).toEqual(reduction);
  });

  test("takes its zero from the rests at both ends and reports the drift", () => {
    expect(reduction.tare.windows).toHaveLength(2);
    expect(reduction.tare.windows[0]!.thrust.value).toBeCloseTo(0.8, 1);
    const [low, high] = reduction.tare.drift!.interval95;
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(0);
  });

  test("raises no warning but that the scale was not calibrated", () => {
    expect(codes(reduction)).toEqual(["bench.no-calibration"]);
  });

  test("has no warning left when the calibration is stated, and a wider interval", () => {
    const recipe = recipeOf(USES, { corrections: { thrust: { relativeUncertainty: 0.01 } } });
    const calibrated = reduce({ table: tableOf(quietColumns()), recipe });
    expect(codes(calibrated)).toEqual([]);
    expect(calibrated.thrustCoefficient.standardUncertainty).toBeGreaterThan(0.002);
    expect(calibrated.thrustFit.independentUncertainty).toBeCloseTo(reduction.thrustFit.independentUncertainty, 12);
  });
});

describe("columns", () => {
  test("a missing thrust column is refused, naming the columns that are there", () => {
    const recipe = recipeOf([
      ["time", "s"],
      ["ignore", "1"],
      ["rotationRate", "rev/s"],
    ]);
    const problem = problemOf(() => reduce({ table: tableOf(quietColumns()), recipe }));
    expect(problem.code).toBe("bench.missing-role");
    expect(problem.found).toContain("time, thrust, rate, command");
  });

  test("a role on two columns is refused", () => {
    const recipe = recipeOf([
      ["time", "s"],
      ["thrust", "N"],
      ["rotationRate", "rev/s"],
      ["thrust", "N"],
    ]);
    expect(problemOf(() => reduce({ table: tableOf(quietColumns()), recipe })).code).toBe("bench.role-twice");
  });

  test("electrical turns without pole pairs are refused, naming the column", () => {
    const recipe = recipeOf([
      ["time", "s"],
      ["thrust", "N"],
      ["rotationRate", "erpm"],
    ]);
    const problem = problemOf(() => reduce({ table: tableOf(quietColumns()), recipe }));
    expect(problem.code).toBe("bench.no-pole-pairs");
    expect(problem.where).toContain("rate");
    expect(problem.mend).toContain("magnets");
  });

  test("grams of a scale on a lever, electrical rpm and milliseconds give the same as newton, rev/s and seconds", () => {
    const { time, thrust, rate, command } = quietColumns();
    const other = tableOf({
      time: time.map((seconds) => seconds * 1000),
      thrust: thrust.map((newton) => (newton / 9.80665e-3) * 2 + 150),
      rate: rate.map((n) => n * 60 * 7),
      command,
    });
    const recipe = recipeOf(
      [
        ["time", "ms"],
        ["thrust", "g"],
        ["rotationRate", "erpm"],
        ["command", "us"],
      ],
      {
        polePairs: 7,
        corrections: { thrust: { factor: 0.5, offset: 150 } },
      },
    );
    const plain = reduce({ table: tableOf(quietColumns()), recipe: recipeOf(USES) });
    const converted = reduce({ table: other, recipe });
    expect(converted.thrustCoefficient.value).toBeCloseTo(plain.thrustCoefficient.value, 9);
    expect(converted.tare.windows[0]!.thrust.value).toBeCloseTo(plain.tare.windows[0]!.thrust.value, 9);
  });

  test("missing cells are passed over", () => {
    const columns = quietColumns();
    columns.thrust = columns.thrust.map((value, row) => (row % 7 === 3 ? Number.NaN : value));
    columns.rate = columns.rate.map((value, row) => (row % 11 === 5 ? Number.NaN : value));
    columns.time[400] = Number.NaN;
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES) });
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(JSON.stringify(reduction)).not.toContain("null,null,null");
  });
});

describe("the zero of the scale", () => {
  test("is followed as it drifts in a straight line", () => {
    const reduction = reduce({ table: tableOf(quietColumns({ drift: 1.5 })), recipe: recipeOf(USES) });
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(reduction.tare.drift!.value).toBeCloseTo(1.3, 1);
  });

  test("is not known without a rest: told, and computed all the same", () => {
    const columns = quietColumns({ rest: 5, zero: 0 });
    const turning = columns.time.map((t) => t > 5.5 && t < 34.8);
    const cut = Object.fromEntries(
      Object.entries(columns).map(([name, values]) => [name, values.filter((_, row) => turning[row])]),
    );
    const reduction = reduce({ table: tableOf(cut), recipe: recipeOf(USES) });
    expect(codes(reduction)).toContain("bench.no-tare");
    expect(reduction.tare.windows).toEqual([]);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  });

  test("of one rest only is told to hide a drift", () => {
    const columns = quietColumns();
    const cut = Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, values.slice(0, 34.5 * 50)]));
    expect(codes(reduce({ table: tableOf(cut), recipe: recipeOf(USES) }))).toContain("bench.one-tare");
  });

  test("can be set by windows, and one in which the propeller turns is told", () => {
    const windows = (start: number, end: number) =>
      recipeOf(USES, { tare: { mode: "windows", windows: [{ start, end }] } });
    const table = tableOf(quietColumns());
    expect(reduce({ table, recipe: windows(1, 4) }).thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(codes(reduce({ table, recipe: windows(3, 8) }))).toContain("bench.tare-while-turning");
    expect(problemOf(() => reduce({ table, recipe: windows(500, 510) })).code).toBe("bench.empty-tare-window");
  });

  test("is taken on each side of a restart for itself, and no plateau reaches across", () => {
    const first = quietColumns({ zero: 0.8 });
    const second = quietColumns({ zero: -2.5 });
    const joined = Object.fromEntries(
      Object.keys(first).map((name) => [name, [...first[name as "time"], ...second[name as "time"]]]),
    );
    const reduction = reduce({ table: tableOf(joined), recipe: recipeOf(USES) });
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(reduction.plateaus).toHaveLength(10);
    expect(codes(reduction)).toContain("bench.time-restart");
  });

  test("of another part is borrowed after a restart in the middle of a plateau, and that is told", () => {
    const columns = quietColumns();
    const middle = 20 * 50;
    columns.time = columns.time.map((t, row) => (row >= middle ? t - columns.time[middle]! : t));
    columns.thrust = columns.thrust.slice(0, 34 * 50);
    const cut = Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, values.slice(0, 34 * 50)]));
    const reduction = reduce({ table: tableOf(cut), recipe: recipeOf(USES) });
    expect(codes(reduction)).toContain("bench.tare-borrowed");
    const line = middle + 2;
    expect(reduction.plateaus.some(({ firstLine, lastLine }) => firstLine < line && lastLine >= line)).toBe(false);
  });
});

describe("plateaus", () => {
  test("are found by rotation rate alone as well as by command", () => {
    const { command: _, ...columns } = quietColumns();
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES.slice(0, 3)) });
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  });

  test("start only when a slow stand has settled", () => {
    const reduction = reduce({
      table: tableOf(quietColumns({ settlingTime: 0.6, dwell: 12 })),
      recipe: recipeOf(USES),
    });
    const waits = reduction.plateaus.map(({ start }, i) => start! - (5 + 12 * i));
    expect(Math.min(...waits)).toBeGreaterThan(1.2);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  });

  test("need no time column: a long log counts rows and has no times", () => {
    const { time: _, ...columns } = quietColumns();
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES.slice(1)) });
    expect(codes(reduction)).toContain("bench.no-time");
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.plateaus[0]!.start).toBeNull();
  });

  test("can be given as spans", () => {
    const recipe = recipeOf(USES, {
      plateaus: {
        mode: "spans",
        spans: [
          { start: 18, end: 22 },
          { start: 24, end: 28 },
        ],
      },
    });
    const reduction = reduce({ table: tableOf(quietColumns()), recipe });
    expect(reduction.plateaus.map(({ start, end }) => [start, end].map((t) => Math.round(t!)))).toEqual([
      [18, 22],
      [24, 28],
    ]);
  });

  test("that a person left out stay in the list with the reason", () => {
    const recipe = recipeOf(USES, { leftOut: [{ start: 11, end: 17, reason: "a fish" }] });
    const { plateaus, thrustFit } = reduce({ table: tableOf(quietColumns()), recipe });
    expect(plateaus.map(({ used }) => used)).toEqual([true, false, true, true, true]);
    expect(plateaus[1]!.leftOutBecause).toBe("a fish");
    expect(thrustFit.points).toBe(4);
  });

  test("are not made of a slow ramp, and too few of them is a refusal that says why", () => {
    const rows = 3000;
    const rate = Array.from({ length: rows }, (_, i) => (i < 250 || i > 2750 ? 0 : ((i - 250) * 45) / 2500));
    const time = rate.map((_, i) => i / 50);
    const thrust = rate.map((n, i) => 0.2 * 998.6 * n * n * 0.076 ** 4 + 0.02 * Math.sin(i * 1.7));
    const problem = problemOf(() =>
      reduce({ table: tableOf({ time, thrust, rate }), recipe: recipeOf(USES.slice(0, 3)) }),
    );
    expect(problem.code).toBe("bench.ramp-without-plateaus");
    expect(problem.found).toMatch(/^[01] usable plateaus? w/);
    expect(problem.found).toContain("ramp");
    expect(problem.mend).toContain("sweep");
  });

  test("of a propeller that never turned is a refusal that points at the rotation rate", () => {
    const { time, thrust } = quietColumns();
    const table = tableOf({ time, thrust, rate: time.map(() => 0) });
    const problem = problemOf(() => reduce({ table, recipe: recipeOf(USES.slice(0, 3)) }));
    expect(problem.code).toBe("bench.too-few-plateaus");
    expect(problem.found).toContain("at rest");
    expect(problem.mend).toContain("rotation rate");
  });

  test("are not made of a step that still moves when half of it is over, and that is told", () => {
    const columns = quietColumns();
    const creeping = columns.thrust.map((T, row) => {
      const within = columns.time[row]! - 17;
      return within > 0 && within < 6 ? T + 2 * Math.exp(-within / 2) : T;
    });
    const reduction = reduce({ table: tableOf({ ...columns, thrust: creeping }), recipe: recipeOf(USES) });
    expect(reduction.plateaus).toHaveLength(4);
    expect(messageOf(reduction, "bench.unsettled")).toContain("1 held step was");
  });

  test("lose single wild readings, counted, with the line of the first", () => {
    const columns = quietColumns();
    columns.thrust[420] = 400;
    columns.thrust[900] = -77;
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES) });
    expect(messageOf(reduction, "bench.glitches")).toMatch(
      /line 422.*2 readings in 2 plateaus.*the first is 400(\.\d+)? N/,
    );
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
  });

  test("of a propeller that turns the other way are shown, not fitted", () => {
    const columns = quietColumns();
    const idle = 1500;
    columns.command = columns.command.map((_, row) => idle + 8 * Math.round(columns.rate[row]!));
    const back = quietColumns({ thrustCoefficient: -0.12, steps: [20, 30] });
    const command = back.rate.map((n) => idle - 8 * Math.round(n));
    const last = columns.time.at(-1)! + 0.02;
    const table = tableOf({
      time: [...columns.time, ...back.time.map((t) => t + last)],
      thrust: [...columns.thrust, ...back.thrust],
      rate: [...columns.rate, ...back.rate],
      command: [...columns.command, ...command],
    });
    const reduction = reduce({ table, recipe: recipeOf(USES) });
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(reduction.plateaus.filter(({ leftOutBecause }) => leftOutBecause?.includes("other way"))).toHaveLength(2);
  });

  test("do not count a command inside the dead band, which is told", () => {
    const columns = quietColumns({ rest: 8 });
    columns.command = columns.command.map((value, row) =>
      columns.time[row]! > 4 && columns.time[row]! < 8 ? 1200 : value,
    );
    const reduction = reduce({ table: tableOf(columns), recipe: recipeOf(USES) });
    expect(codes(reduction)).toContain("bench.dead-band");
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.tare.windows[0]!.end).toBeLessThan(4);
  });
});

describe("a scale and a notebook", () => {
  const rpm = [0, 1000, 1500, 2000, 2500, 3000, 0];
  const grams = rpm.map((n) => 12 + Math.round((0.2 * 998.6 * (n / 60) ** 2 * 0.076 ** 4) / 9.80665e-3));
  const table = tableOf({ rpm, grams }, { resolutions: [10, 1] });
  const reduction = reduce({
    table,
    recipe: recipeOf([
      ["rotationRate", "rpm"],
      ["thrust", "g"],
    ]),
  });

  test("each row that turns is a plateau without time, rows at rest are the zero", () => {
    expect(reduction.plateaus).toHaveLength(5);
    expect(reduction.plateaus[0]).toMatchObject({ start: null, end: null, samples: 1, firstLine: 3 });
    expect(reduction.plateaus[0]!.thrustTare).toBeCloseTo(12 * 9.80665e-3, 9);
  });

  test("doubt comes from the step of the instruments and the scatter of the rows; no spread is made up", () => {
    const step = 9.80665e-3 / Math.sqrt(12);
    // Rounding of the reading and of the zero.
    expect(reduction.plateaus[0]!.thrust.standardUncertainty).toBeCloseTo(step * Math.SQRT2, 6);
    expect(reduction.thrustCoefficient.value).toBeCloseTo(0.2, 2);
    expect(reduction.thrustFit.degreesOfFreedom).toBeGreaterThanOrEqual(4);
    expect(codes(reduction)).toContain("bench.single-readings");
  });
});

describe("power", () => {
  const torqueOf = (n: number) => 0.03 * 998.598 * n * n * 0.076 ** 5;
  const columns = quietColumns();
  const torque = columns.rate.map((n, i) => torqueOf(n) + 0.02 + 1e-4 * Math.sin(i * 2.3));
  const uses = [...USES, ["torque", "N·m"], ["voltage", "V"], ["current", "A"]] as const;
  const electrical = (n: number) => ({ U: 15 - 0.02 * n, P: (2 * Math.PI * n * torqueOf(n)) / 0.7 });
  const voltage = columns.rate.map((n) => electrical(n).U);
  const current = columns.rate.map((n) => 0.02 + electrical(n).P / electrical(n).U);
  const whole = { ...columns, torque, voltage, current };
  const reduction = reduce({
    table: tableOf(whole),
    recipe: recipeOf(uses),
    propeller: propellerOf({ diameterUncertainty: 3e-4 }),
  });

  test("from a torque cell, tared as the thrust is, gives C_P, K_Q and static merit", () => {
    expect(reduction.powerSource).toBe("torque");
    expect(reduction.torqueCoefficient!.value).toBeCloseTo(0.03, 4);
    expect(reduction.powerCoefficient!.value).toBeCloseTo(2 * Math.PI * 0.03, 3);
    expect(reduction.staticMerit!.value).toBeCloseTo(0.2 ** 1.5 / (2 * Math.PI * 0.03 * Math.sqrt(Math.PI / 2)), 3);
  });

  test("the diameter's doubt reaches the merit once, not four and five times", () => {
    const relative = 3e-4 / 0.076;
    const { staticMerit, thrustCoefficient, powerCoefficient } = reduction;
    expect(thrustCoefficient.standardUncertainty / thrustCoefficient.value).toBeGreaterThan(3.9 * relative);
    expect(powerCoefficient!.standardUncertainty / powerCoefficient!.value).toBeGreaterThan(4.9 * relative);
    expect(staticMerit!.standardUncertainty / staticMerit!.value).toBeLessThan(1.5 * relative);
  });

  test("from a motor's constants is marked, and told to lack their doubt", () => {
    const motor = Motor.parse({ name: "m", speedConstant: 50, resistance: 0.1, noLoadCurrent: 0.4 });
    const controller = Controller.parse({ name: "c", resistance: 0.01 });
    // Electrical side made from the motor equations: I_m = Q K_v + I_0, U I = I_m (ω/K_v + I_m R).
    const power = columns.rate.map((n) => {
      const Im = torqueOf(n) * 50 + (n > 0 ? 0.4 : 0);
      return Im * ((2 * Math.PI * n) / 50 + Im * 0.11);
    });
    const table = tableOf({ ...columns, power });
    const recipe = recipeOf([...USES, ["electricalPower", "W"]]);
    const { powerSource, torqueCoefficient, warnings } = reduce({ table, recipe, motor, controller });
    expect(powerSource).toBe("motorConstants");
    expect(torqueCoefficient!.value).toBeCloseTo(0.03, 4);
    expect(warnings.map(({ code }) => code)).toContain("bench.motor-constants");
    expect(reduce({ table, recipe }).powerSource).toBeNull();
  });

  test("is positive where the log counts turns and torque as negative", () => {
    const negative = { ...whole, rate: columns.rate.map((n) => -n), torque: torque.map((Q) => -Q) };
    const turned = reduce({ table: tableOf(negative), recipe: recipeOf(uses) });
    expect(turned.powerCoefficient!.value).toBeCloseTo(reduction.powerCoefficient!.value, 9);
    expect(turned.thrustCoefficient.value).toBeCloseTo(0.2, 3);
    expect(turned.plateaus[0]!.torque!.value).toBeLessThan(0);
  });

  test("shaft power above electrical power is told", () => {
    const low = { ...whole, current: current.map((I) => I / 3) };
    expect(codes(reduce({ table: tableOf(low), recipe: recipeOf(uses) }))).toContain("bench.shaft-above-electrical");
  });

  test("pound-force read as newton leaves a merit that no working propeller has, and is named", () => {
    const low = { ...whole, thrust: whole.thrust.map((T) => T / 4.448) };
    const told = reduce({ table: tableOf(low), recipe: recipeOf(uses) });
    expect(messageOf(told, "bench.merit-below-usual")).toContain("pound-force read as newton");
    expect(codes(reduction)).not.toContain("bench.merit-below-usual");
  });

  test("current at rest is told and not taken off", () => {
    const more = { ...whole, current: current.map((I) => I + 0.3) };
    const shifted = reduce({ table: tableOf(more), recipe: recipeOf(uses) });
    expect(messageOf(shifted, "bench.rest-current")).toContain("0.320");
    expect(shifted.plateaus[0]!.current!.value - reduction.plateaus[0]!.current!.value).toBeCloseTo(0.3, 6);
  });

  test("exchanged voltage and current are told", () => {
    const recipe = recipeOf([...USES, ["torque", "N·m"], ["current", "A"], ["voltage", "V"]]);
    const swapped = reduce({ table: tableOf(whole), recipe });
    expect(codes(swapped)).toContain("bench.voltage-current-swapped");
  });
});

describe("points that can not be", () => {
  const reduceChanged = (thrust: (value: number) => number, rate = (value: number) => value, more: object = {}) => {
    const columns = quietColumns();
    const changed = { ...columns, thrust: columns.thrust.map(thrust), rate: columns.rate.map(rate), ...more };
    return reduce({ table: tableOf(changed), recipe: recipeOf(USES) });
  };

  test("gram-force read as newton is named, with the coefficient it would be", () => {
    const reduction = reduceChanged((newton) => newton / 9.80665e-3);
    expect(messageOf(reduction, "bench.impossible-coefficient")).toContain(
      "gram-force read as newton (K_T would be 0.20)",
    );
  });

  test("electrical rpm read as shaft rpm is named with the pole pairs that would do", () => {
    const reduction = reduceChanged(
      (newton) => newton,
      (n) => n * 7,
    );
    expect(messageOf(reduction, "bench.impossible-coefficient")).toMatch(
      /electrical rpm read as shaft rpm \(5 to 12 pole pairs/,
    );
  });

  test("a reversed load cell is told with its mend; the exponent is still found", () => {
    const reduction = reduceChanged((newton) => -newton);
    expect(messageOf(reduction, "bench.negative-thrust")).toContain("turn the sign round");
    expect(reduction.thrustCoefficient.value).toBeCloseTo(-0.2, 3);
    expect(reduction.exponent!.value).toBeCloseTo(2, 1);
  });

  test("thrust above the momentum limit is told with power, limit and likely causes", () => {
    const columns = quietColumns();
    const voltage = columns.time.map(() => 12);
    const current = columns.rate.map((n) => (n / 45) ** 3 * 0.5);
    const table = tableOf({ ...columns, voltage, current });
    const recipe = recipeOf([...USES, ["voltage", "V"], ["current", "A"]]);
    const open = reduce({ table, recipe });
    const message = messageOf(open, "bench.above-momentum-limit");
    expect(message).toMatch(/Plateau \d \(lines \d+ to \d+\): .* N from .* W of electrical power can not be/);
    expect(message).toContain("Likely:");
    const nozzle = reduce({ table, recipe, propeller: propellerOf({ nozzle: true }) });
    expect(nozzle.plateaus[0]!.momentumLimit! / open.plateaus[0]!.momentumLimit!).toBeCloseTo(Math.cbrt(2), 9);
  });

  test("thrust that falls as the propeller speeds up is told", () => {
    const columns = quietColumns();
    const ventilated = columns.thrust.map((T, row) => (columns.rate[row]! > 41 ? 0.8 + (T - 0.8) * 0.5 : T));
    const reduction = reduce({ table: tableOf({ ...columns, thrust: ventilated }), recipe: recipeOf(USES) });
    expect(messageOf(reduction, "bench.thrust-falls")).toContain("ventilation");
  });

  test("a thrust that is no square of the rotation rate is told by exponent", () => {
    const columns = quietColumns({ zero: 0 });
    const bent = columns.thrust.map((T, row) => T * Math.max(columns.rate[row]! / 30, 0.01) ** 0.15);
    const reduction = reduce({ table: tableOf({ ...columns, thrust: bent }), recipe: recipeOf(USES) });
    expect(reduction.exponent!.value).toBeCloseTo(2.15, 2);
    expect(messageOf(reduction, "bench.exponent")).toMatch(/2\.1\d.*rises by 1[678] %/);
  });

  test("friction that makes up and down differ is told with both coefficients", () => {
    const columns = quietColumns({ steps: [15, 22, 30, 37, 45, 37, 30, 22, 15] });
    const down = columns.time.map((t) => t > 5 + 5 * 6);
    const sticky = columns.thrust.map((T, row) => (down[row] ? 0.8 + (T - 0.8) * 1.03 : T));
    const reduction = reduce({ table: tableOf({ ...columns, thrust: sticky }), recipe: recipeOf(USES) });
    expect(messageOf(reduction, "bench.up-down")).toMatch(/way up .*0\.20.*way down.*0\.206/);
  });

  test("one plateau that does not belong is named with its lines, and still counts", () => {
    const columns = quietColumns({ steps: [15, 20, 25, 30, 35, 40, 45] });
    const off = columns.thrust.map((T, row) => (Math.abs(columns.rate[row]! - 30) < 2 ? T * 1.04 : T));
    const reduction = reduce({ table: tableOf({ ...columns, thrust: off }), recipe: recipeOf(USES) });
    expect(messageOf(reduction, "bench.outlier")).toMatch(/Plateau 4 \(lines \d+ to \d+\)/);
    expect(reduction.plateaus[3]!.used).toBe(true);
  });

  test("low blade Reynolds numbers are told where the chord is known", () => {
    const table = tableOf(quietColumns());
    const propeller = propellerOf({ chordAt07: 0.02 });
    expect(codes(reduce({ table, recipe: recipeOf(USES), propeller }))).toContain("bench.low-reynolds");
  });
});

describe("what runs share", () => {
  const keysOf = (sha: string, factor: number) => {
    const recipe = recipeOf(USES, { corrections: { thrust: { factor, relativeUncertainty: 0.01 } } });
    const reduction = reduce({
      ...{ table: tableOf(quietColumns()), recipe, propeller: propellerOf({ diameterUncertainty: 1e-4 }) },
      source: { sha256: sha, program: "test" },
    });
    return reduction.thrustFit.components.map(({ key }) => key);
  };
  const keyLike = (keys: string[], start: string) => keys.find((key) => key.startsWith(start));

  test("calibration and diameter have the same key in two runs, the zero has not", () => {
    const [a, b, c] = [keysOf("a".repeat(64), 1), keysOf("b".repeat(64), 1), keysOf("b".repeat(64), 1.1)];
    expect(keyLike(a, "thrust-calibration")).toBe(keyLike(b, "thrust-calibration"));
    expect(keyLike(c, "thrust-calibration")).not.toBe(keyLike(b, "thrust-calibration"));
    expect(keyLike(a, "diameter")).toBe(keyLike(b, "diameter"));
    expect(keyLike(a, "thrust-tare")).not.toBe(keyLike(b, "thrust-tare"));
  });
});

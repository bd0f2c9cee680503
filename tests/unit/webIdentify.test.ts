import { describe, expect, test } from "vitest";
import { MotorIdentificationRequest } from "../../shared/model/motorIdentification.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { identifyMotor } from "../../shared/motor/identifyMotor.ts";
import { ApiProblem } from "../../web/api/apiProblem.ts";
import { benchAnswer, runRows } from "../../web/views/bench/benchModel.ts";
import {
  candidateRuns,
  constantRows,
  identifyChart,
  polePairText,
  refusalOf,
  runChoices,
  runsToBeginWith,
  throttleSentence,
  withConstants,
} from "../../web/views/parts/identifyModel.ts";
import { documentOf, draftOf } from "../../web/views/parts/partDraft.ts";
import { fieldsOf } from "../../web/views/parts/partFields.ts";
import { partsModel } from "../../web/views/parts/partsModel.ts";
import { variantGroups } from "../../web/views/variants/variantGroups.ts";
import { runOf } from "./webBenchReduction.fixture.ts";

const WORTH = { voltageUncertainty: 0.01, currentUncertainty: 0.01, rotationRateUncertainty: 0.02 };
const point = (load: "noLoadDry" | "loaded", omega: number, current: number) => ({
  ...{ load, voltage: omega / 50 + 0.1 * current, current, rotationRate: omega / (2 * Math.PI), ...WORTH },
});
const POINTS = [point("noLoadDry", 200, 0.7), point("noLoadDry", 500, 1), point("loaded", 350, 12)];
const RESULT = identifyMotor(MotorIdentificationRequest.parse({ points: POINTS }));
const MOTOR = Motor.parse({ name: "Motor", speedConstant: 52, resistance: 0.1, noLoadCurrent: 0.5 });

const COLUMNS = (["command", "rotationRate", "voltage", "current"] as const).map((role, column) => ({
  ...{
    column,
    role,
    unit: role === "command" ? "µs" : role === "rotationRate" ? "rpm" : role === "voltage" ? "V" : "A",
  },
}));
function motorRun(id: string, purpose: "propeller" | "noLoadDry" | "noLoadWet", columns = COLUMNS) {
  const { document, ...rest } = runOf(id);
  return { ...rest, document: { ...document, purpose, recipe: { ...document.recipe, columns, motorId: "m" } } };
}

describe("the runs offered", () => {
  const runs = [
    motorRun("loaded 10", "propeller"),
    motorRun("loaded 9", "propeller"),
    motorRun("loaded 8", "propeller"),
    motorRun("loaded 7", "propeller"),
    motorRun("by eye", "propeller", COLUMNS.slice(1)),
    motorRun("wet", "noLoadWet"),
    motorRun("dry", "noLoadDry"),
    motorRun("without current", "noLoadDry", COLUMNS.slice(0, 3)),
    runOf("another motor"),
  ];
  const candidates = candidateRuns(runs, "m");

  test("are those of this motor that log voltage, current and speed, free running first", () => {
    expect(candidates.map(({ id }) => id)).toEqual([
      "dry",
      "wet",
      "by eye",
      "loaded 7",
      "loaded 8",
      "loaded 9",
      "loaded 10",
    ]);
  });

  test("begin with the free ones and three whose throttle is logged", () => {
    expect([...runsToBeginWith(candidates)]).toEqual(["dry", "wet", "loaded 7", "loaded 8", "loaded 9"]);
  });

  test("say what was on the shaft, and why one is of no use", () => {
    const [dry] = runChoices(candidates, new Set(["dry"]), () => "no plateau was found.");
    expect(dry).toMatchObject({ chosen: true, facts: "without propeller, in air; not usable: no plateau was found." });
  });
});

describe("the constants found", () => {
  test("stand beside those entered, with a verdict", () => {
    const rows = constantRows(RESULT.constants!, MOTOR);
    expect(rows.map(({ verdict }) => verdict)).toEqual([
      "3.8 % below what is entered",
      "agrees",
      "agrees",
      "was not entered",
    ]);
    expect(rows[0]!.found).toMatch(/^477\.\d+ ± [\d.]+\srpm\/V$/);
  });

  test("replace those of the motor, with their uncertainty and correlations, and agree with themselves afterwards", () => {
    const used = Motor.parse(withConstants(MOTOR, RESULT.constants!));
    expect(used.speedConstant).toBeCloseTo(50, 6);
    expect(used.uncertainties!.resistance).toBeCloseTo(RESULT.constants!.resistance.standardUncertainty, 12);
    expect(used.uncertainties!.correlations!.length).toBe(6);
    expect(constantRows(RESULT.constants!, used).map(({ verdict }) => verdict)).toEqual(Array(4).fill("agrees"));
  });

  test("leave losses that the runs do not tell as they were", () => {
    const loaded = identifyMotor(
      MotorIdentificationRequest.parse({ points: [point("loaded", 300, 5), point("loaded", 300, 20)] }),
    );
    const used = withConstants({ ...MOTOR, uncertainties: { noLoadCurrent: 0.1 } }, loaded.constants!);
    expect(used).toMatchObject({ noLoadCurrent: 0.5, uncertainties: { noLoadCurrent: 0.1 } });
  });

  test("can not be kept where the resistance is below zero", () => {
    const { constants } = RESULT;
    expect(refusalOf(constants!)).toBe("");
    expect(refusalOf({ ...constants!, resistance: { ...constants!.resistance, value: -0.1 } })).toContain("below zero");
  });

  test("are drawn with every balance of every point once", () => {
    const chart = identifyChart(RESULT);
    const measured = chart.series.filter(({ kind }) => kind === "measured");
    expect(measured.map(({ id, points }) => [id, points.length])).toEqual([
      ["voltage", 3],
      ["current", 2],
    ]);
  });
});

test("the throttle is told in a sentence, with its dead band", () => {
  const of = (value: number) => ({ value, standardUncertainty: 1, interval95: [value - 2, value + 2] as const });
  const throttleMap = {
    commandAtZero: of(1050),
    commandAtFull: of(1850),
    deadBand: 50,
    lowestTurning: 1080,
    linearity: 0.012,
    points: [],
  };
  const text = throttleSentence({ ...RESULT, throttleMap }, "µs");
  expect(text).toContain("after a dead band of 50\u202fµs");
  expect(text).toContain("within 1.2 % of a straight line");
  expect(throttleSentence({ ...RESULT, throttleMap: null }, "µs")).toBe("");
});

test("pole pairs are told with how far the ratio is off", () => {
  const ratio = { value: 7.07, standardUncertainty: 0.035, interval95: [7, 7.14] as const };
  expect(polePairText({ polePairs: 7, ratio, off: 0.07 })).toContain("1.0 % from a whole number");
});

describe("a run without propeller", () => {
  const run = motorRun("dry", "noLoadDry");

  test("is not shown as a propeller run that failed", () => {
    const problem = new ApiProblem({ status: 422, code: "run.without-propeller", detail: "none" });
    const [row] = runRows([run], () => ({ state: "refused", reduction: null, problem, basis: "1" }));
    expect(row).toMatchObject({ variant: "without propeller", thrustCoefficient: "" });
    expect(row!.flags).not.toContain("no result");
    expect(benchAnswer(run.document, undefined)).toContain("in air without propeller");
  });

  test("is in no variant, even if it carries a variant's name", () => {
    const named = { ...run, document: { ...run.document, variant: "sanded" } };
    expect(variantGroups([named], () => null)).toEqual([]);
  });
});

describe("the form of an identified motor", () => {
  const fields = fieldsOf("motors");
  const used = Motor.parse(withConstants(MOTOR, RESULT.constants!));

  test("gives the same motor back, correlations and all", () => {
    expect(Motor.parse(documentOf(fields, draftOf(fields, used), used))).toEqual(used);
  });

  test("drops the correlations once a constant is typed anew, and keeps the uncertainties", () => {
    const changed = documentOf<"motors">(fields, { ...draftOf(fields, used), resistance: 0.11 }, used);
    expect(changed.uncertainties).not.toHaveProperty("correlations");
    expect(changed.uncertainties!.resistance).toBe(used.uncertainties!.resistance);
  });

  test("is listed with ± at its constants", () => {
    const stored = { id: "m", version: 1, updatedAt: "2026-11-25T12:00:00Z", document: used };
    const parts = {
      propellers: [],
      motors: [stored],
      controllers: [],
      packs: [],
      tethers: [],
      gears: [],
      instruments: [],
    };
    const motors = partsModel(parts, []).lists.find(({ kind }) => kind === "motors")!;
    expect(motors.rows[0]!.cells[0]).toMatch(/^477\.\d+ ± [\d.]+\srpm\/V$/);
    expect(motors.columns.map(({ key }) => key)).not.toContain("uncertainties.resistance");
  });
});

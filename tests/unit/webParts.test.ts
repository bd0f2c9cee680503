import { describe, expect, test } from "vitest";
import { Controller } from "../../shared/model/parts/controller.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { Pack } from "../../shared/model/parts/pack.ts";
import { PART_SCHEMAS } from "../../shared/model/parts/partKinds.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { TetherCable } from "../../shared/model/parts/tetherCable.ts";
import { groupsOf } from "../../web/views/parts/fieldGroups.ts";
import { motorQuestion } from "../../web/views/parts/motorQuestion.ts";
import { documentOf, draftOf, draftProblems, numberFrom, numberText } from "../../web/views/parts/partDraft.ts";
import { fieldsOf, KEPT_ASIDE } from "../../web/views/parts/partFields.ts";
import { KINDS, partsModel } from "../../web/views/parts/partsModel.ts";

const ID = "5c2b6ad0-3a8e-4f57-9d10-0f6f4f1f1a01";
const stored = <T>(document: T) => ({ id: ID, version: 1, updatedAt: "2026-11-25T00:00:00.000Z", document });
const MOTOR = Motor.parse({ name: "A", speedConstant: 47.6, resistance: 0.12, noLoadCurrent: 0.5 });
const PROPELLER = Propeller.parse({ name: "Printed", diameter: 0.076, diameterUncertainty: 0.0001, bladeCount: 3 });
const EMPTY = { propellers: [], motors: [], controllers: [], packs: [], tethers: [], gears: [], instruments: [] };

test("the forms have a field for everything a part can hold, each with a label, but for what has a panel of its own", () => {
  for (const kind of KINDS) {
    const fields = fieldsOf(kind);
    const held = new Set(fields.map(({ key }) => key.split(".")[0]));
    expect([...held]).toEqual(Object.keys(PART_SCHEMAS[kind].shape).filter((key) => !KEPT_ASIDE.includes(key)));
    expect(fields.filter(({ label }) => label === "")).toEqual([]);
  }
});

test("a label leaves out the SI unit, because the field is typed with a unit of its own", () => {
  const diameter = fieldsOf("propellers").find(({ key }) => key === "diameter");
  expect(diameter).toMatchObject({
    kind: "quantity",
    label: "Diameter over the blade tips",
    symbol: "D",
    unit: "mm",
    optional: false,
  });
});

describe("a draft", () => {
  const fields = fieldsOf("motors");

  test("of a stored part gives the same part back", () => {
    expect(Motor.parse(documentOf(fields, draftOf(fields, MOTOR)))).toEqual(MOTOR);
  });
  test("of a propeller with a blade shape, which the form has no field for, keeps the shape", () => {
    const [form, geometry] = [fieldsOf("propellers"), { stations: "as drawn" }];
    const held = { ...PROPELLER, geometry } as unknown as Propeller;
    expect(form.some(({ key }) => key.startsWith("geometry"))).toBe(false);
    expect(documentOf<"propellers">(form, draftOf(form, held), held)).toMatchObject({ geometry });
  });
  test("that is empty lacks what the schema needs, and only that", () => {
    expect(Object.keys(draftProblems(fields, draftOf(fields, null)))).toEqual([
      "name",
      "speedConstant",
      "resistance",
      "noLoadCurrent",
    ]);
  });
  test.each([
    { change: { speedConstant: 0 }, key: "speedConstant", says: "more than 0" },
    { change: { resistance: -1 }, key: "resistance", says: "at least 0 Ω" },
    { change: { polePairs: 6.5 }, key: "polePairs", says: "whole number" },
    { change: { polePairs: 61 }, key: "polePairs", says: "at most 60" },
    { change: { name: " " }, key: "name", says: "a name" },
  ])("with $change is told what is needed: $says", ({ change, key, says }) => {
    expect(draftProblems(fields, { ...draftOf(fields, MOTOR), ...change })[key]).toContain(says);
  });
  test("leaves an emptied optional field away", () => {
    const draft = { ...draftOf(fields, { ...MOTOR, currentLimit: 20 }), currentLimit: null };
    expect(documentOf(fields, draft)).not.toHaveProperty("currentLimit");
  });
});

test.each([
  { text: "0,5", factor: 1, value: 0.5 },
  { text: " 7 ", factor: 1, value: 7 },
  { text: "", factor: 1, value: null },
  { text: "seven", factor: 1, value: null },
])("$text is read as $value", ({ text, factor, value }) => {
  expect(numberFrom(text, factor)).toBe(value);
});

test("1 A per 1000 rpm is 1 A per 104.72 rad/s, and is shown as typed", () => {
  const slope = fieldsOf("motors").find(({ key }) => key === "noLoadCurrentSlope");
  if (slope?.kind !== "scaled") throw new Error("The slope is no scaled field.");
  // 1000 rpm = 1000 · 2π/60 rad/s; BIPM, The International System of Units, 9th ed. (2019), table 8 (minute) and 2.3.4 (radian).
  expect(numberFrom("1", slope.factor)).toBeCloseTo(1 / 104.719755, 9);
  expect(numberText(numberFrom("0.25", slope.factor), slope.factor)).toBe("0.25");
});

describe("the parts screen", () => {
  test("asks for the propeller first when there is nothing", () => {
    expect(partsModel(EMPTY, [])).toMatchObject({ tone: "open", answer: expect.stringContaining("No parts yet") });
  });
  test("names what an operating point still needs", () => {
    const { answer } = partsModel({ ...EMPTY, propellers: [stored(PROPELLER)], motors: [stored(MOTOR)] }, []);
    expect(answer).toBe("1 propeller and 1 motor on the shelf. Add a pack to see bollard thrust and current.");
  });
  test("shows quantities in the units people write, and no column that nothing fills", () => {
    const [propellers] = partsModel({ ...EMPTY, propellers: [stored(PROPELLER)] }, []).lists;
    expect(propellers?.columns.map(({ key }) => key)).toEqual(["diameter", "diameterUncertainty", "bladeCount"]);
    expect(propellers?.rows[0]?.cells).toEqual(["76 mm", "0.1 mm", "3"]);
  });
  test("doubts a speed constant that looks like rpm/V taken for rad/(V·s)", () => {
    const motors = partsModel({ ...EMPTY, motors: [stored({ ...MOTOR, speedConstant: 455 })] }, []).lists[1];
    expect(motors?.rows[0]?.doubts.map(({ code }) => code)).toEqual(["motor.speed-constant-unit"]);
  });
});

describe("fields of documents inside a part", () => {
  const PACK = Pack.parse({
    name: "Four cells",
    openCircuitVoltage: 14.8,
    resistance: 0.035,
    cells: {
      series: 4,
      curve: [
        { charge: 0, voltage: 3 },
        { charge: 1, voltage: 4.2 },
      ],
    },
    lead: { length: 0.4, size: { given: "gauge", gauge: 12 } },
  });
  const TETHER = TetherCable.parse({
    name: "Tether",
    diameter: 0.01,
    conductor: { length: 40, size: { given: "resistance", resistancePerLength: 0.012 } },
  });
  const ONE_WAY = Controller.parse({ name: "One way", resistance: 0.006, command: { fullReverse: null } });
  test.each([
    { kind: "packs", part: PACK },
    { kind: "tethers", part: TETHER },
    { kind: "controllers", part: ONE_WAY },
  ] as const)("of $kind give the same part back", ({ kind, part }) => {
    const fields = fieldsOf(kind);
    const draft = draftOf(fields, part);
    expect(draftProblems(fields, draft)).toEqual({});
    expect(PART_SCHEMAS[kind].parse(documentOf(fields, draft, part))).toEqual(part);
  });
  test("are left away together when all of them are empty", () => {
    const fields = fieldsOf("packs");
    const emptied = Object.fromEntries(fields.filter(({ key }) => key.includes(".")).map(({ key }) => [key, null]));
    const draft = { ...draftOf(fields, PACK), ...emptied };
    expect(draftProblems(fields, draft)).toEqual({});
    expect(documentOf(fields, draft, PACK)).not.toHaveProperty("cells");
  });
  test.each([
    { kind: "packs", change: { "cells.parallel": 2 }, key: "cells.series", says: "goes with the other values" },
    { kind: "packs", change: { "lead.length": 0.4 }, key: "lead.size.area", says: "one of section" },
    { kind: "packs", change: { "cells.series": 4, "cells.curve": "0:3; 1" }, key: "cells.curve", says: "pairs as in" },
    { kind: "motors", change: { "wetTorque.exponent": 1.8 }, key: "wetTorque.coefficient", says: "goes with" },
    {
      kind: "tethers",
      change: { "conductor.length": 40, "conductor.size.gauge": 16, "conductor.size.area": 1e-6 },
      key: "conductor.size.gauge",
      says: "Only one of",
    },
  ] as const)("of $kind with $change say what is missing: $says", ({ kind, change, key, says }) => {
    const fields = fieldsOf(kind);
    expect(draftProblems(fields, { ...draftOf(fields, null), ...change })[key]).toContain(says);
  });
});

test("the usual fields come first and every field stands in one group", () => {
  for (const kind of KINDS) {
    const groups = groupsOf(kind);
    expect(groups[0]).toMatchObject({
      title: "",
      fields: expect.arrayContaining([expect.objectContaining({ key: "name" })]),
    });
    const keys = groups.flatMap(({ fields }) => fields.map(({ key }) => key));
    expect([...keys].sort()).toEqual(
      fieldsOf(kind)
        .map(({ key }) => key)
        .sort(),
    );
    expect(groups.slice(1).every(({ title, fields }) => title !== "" && fields.length > 0)).toBe(true);
  }
});

describe("a motor with implausible constants", () => {
  test("is asked for with its other readings, the likeliest first", () => {
    const asked = motorQuestion({ ...MOTOR, speedConstant: 470 }, null, 14.8);
    expect(asked?.doubts.map(({ code }) => code)).toEqual(["motor.speed-constant-unit"]);
    expect(asked?.readings[0]).toMatchObject({
      label: "It is 470 rpm/V",
      // 470 rpm/V = 470 · 2π/60 rad/(V·s); BIPM, The International System of Units, 9th ed. (2019), table 8 and 2.3.4.
      document: { speedConstant: expect.closeTo(49.2183, 4) },
    });
  });
  test.each([
    { change: { resistance: 0 }, code: "motor.zero-resistance" },
    { change: { resistance: 85 }, code: "motor.no-load-above-stall" },
  ])("$change: $code, without another reading", ({ change, code }) => {
    const asked = motorQuestion({ ...MOTOR, ...change }, null, 14.8);
    expect(asked?.doubts.map((doubt) => doubt.code)).toEqual([code]);
    expect(asked?.readings).toEqual([]);
  });
  test("is not asked for again when something else of it changes", () => {
    const motor = { ...MOTOR, speedConstant: 470 };
    expect(motorQuestion({ ...motor, note: "kept" }, motor, 14.8)).toBeNull();
    expect(motorQuestion(MOTOR, null, 14.8)).toBeNull();
  });
});

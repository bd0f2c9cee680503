import { describe, expect, test } from "vitest";
import { Motor } from "../../shared/model/parts/motor.ts";
import { PART_SCHEMAS } from "../../shared/model/parts/partKinds.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
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

import { expect, test } from "vitest";
import type { z } from "zod";
import { fieldProblem } from "../../server/problems/fieldProblem.ts";
import { DriveRequest } from "../../shared/model/drive.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { Project } from "../../shared/model/project.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import { sentence } from "../../shared/quantity/problem.ts";

/** The sentences about `data` as `schema`. */
function told(schema: z.ZodType, data: unknown): string[] {
  const parsed = schema.safeParse(data);
  return parsed.success ? [] : parsed.error.issues.map((issue) => sentence(fieldProblem(issue, schema, data)));
}

const propeller = { name: "Net propeller", diameter: 0.076, diameterUncertainty: 0.0001 };
const recipe = { columns: [], fluid: { kind: "fresh", temperature: 291.15 } };

test.each([
  {
    about: "a diameter in millimetres",
    schema: Propeller,
    data: { ...propeller, diameter: 76 },
    says: "diameter: 76 m is too large. Needed: at most 1 m. If you meant millimetres, send 0.076.",
  },
  {
    about: "a diameter of zero",
    schema: Propeller,
    data: { ...propeller, diameter: 0 },
    says: "diameter: 0 m is too small. Needed: more than 0 m.",
  },
  {
    about: "a number as text",
    schema: Propeller,
    data: { ...propeller, diameter: "76 mm" },
    says: 'diameter: "76 mm" is not a number. Needed: a number in m (Diameter over the blade tips, m). Numbers are sent in SI, without quotes or unit.',
  },
  {
    about: "a missing field",
    schema: Propeller,
    data: { name: "Net propeller", diameterUncertainty: 0 },
    says: "diameter: This field is missing. Needed: a number in m (Diameter over the blade tips, m).",
  },
  {
    about: "a misspelt field",
    schema: Propeller,
    data: { ...propeller, diametre: 0.076 },
    says: 'There is no field called "diametre" here. Needed: only the fields that /api/docs lists. Check the spelling or leave it out.',
  },
  {
    about: "an empty name",
    schema: Propeller,
    data: { ...propeller, name: "  " },
    says: "name: A text of 0 characters is too short. Needed: at least 1 character.",
  },
  {
    about: "half a blade",
    schema: Propeller,
    data: { ...propeller, bladeCount: 2.5 },
    says: "bladeCount: 2.5 is not a whole number. Needed: a whole number (Number of blades).",
  },
  {
    about: "an unknown kind of water",
    schema: Project,
    data: { name: "Dabchick", water: { kind: "brackish", temperature: 285.15 } },
    says: 'water.kind: "brackish" is not one of the choices. Needed: fresh, sea, air.',
  },
  {
    about: "humidity in per cent",
    schema: Project,
    data: { name: "Dabchick", water: { kind: "air", temperature: 285.15, pressure: 101325, humidity: 50 } },
    says: "water.humidity: 50 is too large. Needed: at most 1. If you meant per cent, send 0.5.",
  },
  {
    about: "an unknown role of a column",
    schema: Recipe,
    data: { ...recipe, columns: [{ column: 0, role: "push", unit: "N" }] },
    says: 'columns[0].role: "push" is not one of the choices. Needed: time, command, thrust, torque, rotationRate, voltage, current, electricalPower, temperature, advanceSpeed, ignore.',
  },
  {
    about: "a span without an end, deep in a choice",
    schema: Recipe,
    data: { ...recipe, tare: { mode: "windows", windows: [{ start: 0 }] } },
    says: "tare.windows[0].end: This field is missing. Needed: a number in s (End, time in the log, s).",
  },
  {
    about: "a motor id that is none",
    schema: Recipe,
    data: { ...recipe, motorId: "motor A" },
    says: 'motorId: "motor A" has another form. Needed: an id as the store gave it, like 123e4567-e89b-42d3-a456-426614174000.',
  },
])("$about is told with value, unit and what to do", ({ schema, data, says }) => {
  expect(told(schema, data)).toEqual([says]);
});

test("each of several fields is told", () => {
  expect(told(DriveRequest, {}).length).toBeGreaterThan(5);
});

test("no sentence calls anything invalid or an error", () => {
  const sentences = [told(Propeller, {}), told(Recipe, { columns: 3 }), told(DriveRequest, { limits: 3 })].flat();
  expect(sentences.join(" ")).not.toMatch(/invalid|error|expected|received/i);
});

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { sampleDocuments } from "../../samples/documents.ts";
import { MOUNTING_SCATTER, TRUE_PROPELLERS } from "../../samples/generator/truth.ts";
import { PartsBox, ShortlistRequirement } from "../../shared/model/shortlist.ts";
import { Vehicle } from "../../shared/model/vehicle/vehicle.ts";

const kept = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../samples/${name}`, import.meta.url), "utf8")) as unknown;

test.each(Object.entries(sampleDocuments()))("%s is as the demonstration makes it", (name, document) => {
  expect(kept(name)).toEqual(JSON.parse(JSON.stringify(document)));
});

test.each([
  { name: "requirement.json", schema: ShortlistRequirement },
  { name: "parts-box.json", schema: PartsBox },
  { name: "vehicle.json", schema: Vehicle },
])("$name is what the command line takes", ({ name, schema }) => {
  expect(schema.safeParse(kept(name)).error?.issues ?? []).toEqual([]);
});

test("the propeller of the vehicle is the one in the logs, as far as three mountings tell", () => {
  const { diameter, ahead } = (kept("vehicle.json") as Vehicle).drives[0]!.propeller;
  const { sanded } = TRUE_PROPELLERS;
  // The truth is told over its own diameter; K_T goes with D⁻⁴, K_Q with D⁻⁵. Three spreads of a mean of three.
  const size = sanded.diameter / diameter.value;
  const reach = (3 * MOUNTING_SCATTER) / Math.sqrt(3);
  expect(Math.abs(ahead.thrustCoefficient.value / (sanded.thrustCoefficient * size ** 4) - 1)).toBeLessThan(reach);
  expect(Math.abs(ahead.torqueCoefficient.value / (sanded.torqueCoefficient * size ** 5) - 1)).toBeLessThan(reach);
});

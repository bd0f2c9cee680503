import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { sampleDocuments } from "../../samples/documents.ts";
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

import fc from "fast-check";
import { expect, test } from "vitest";
import { PART_SCHEMAS } from "../../shared/model/parts/partKinds.ts";
import { leavesOf, type PartLeaf } from "../../shared/model/parts/partLeaves.ts";
import { documentWith } from "../../shared/model/parts/partValues.ts";
import { PartsTableChoices } from "../../shared/model/partsTable.ts";
import { decimalOfSi, siOfDecimal } from "../../shared/partsTable/exactNumber.ts";
import { exportTable } from "../../shared/partsTable/exportTable.ts";
import { guardedText, unguardedText } from "../../shared/partsTable/guardedText.ts";
import { previewTable } from "../../shared/partsTable/previewTable.ts";
import type { TableKind } from "../../shared/partsTable/tableFields.ts";
import { plainGeometry } from "../../shared/propeller/blade/plainGeometry.ts";
import { UNITS } from "../../shared/quantity/units.data.ts";

const KINDS: readonly TableKind[] = ["propellers", "motors", "controllers", "packs", "tethers", "gears"];
const GEOMETRY = plainGeometry({
  from: "outline",
  outline: "elliptic",
  bladeCount: 3,
  diameter: 0.076,
  hubDiameter: 0.016,
  pitchRatio: 1,
  areaRatio: 0.42,
  thicknessRatio: 0.09,
  camberRatio: 0,
});

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Any value that the schema of a leaf allows, however crooked. */
function anyValue({ key, type, schema, nullable }: PartLeaf): fc.Arbitrary<unknown> {
  const { minValue, maxValue } = schema as { minValue?: number | null; maxValue?: number | null };
  const [low, high] = [Math.max(minValue ?? 0, -1e3), Math.min(maxValue ?? 1e5, 1e5)];
  if (type === "yesNo") return fc.boolean();
  if (type === "text") return fc.string({ unit: "grapheme", minLength: 1, maxLength: 30 });
  if (type === "document") return fc.constant(GEOMETRY);
  if (type === "whole") return fc.integer({ min: low, max: Math.min(high, 60) });
  if (key === "cells.curve")
    return fc.array(fc.record({ charge: finite(0, 1), voltage: finite(0.1, 10) }), { minLength: 2, maxLength: 5 });
  if (type === "list")
    return fc.array(
      fc.record({
        of: fc.constantFrom("speedConstant", "resistance"),
        and: fc.constantFrom("noLoadCurrent", "noLoadCurrentSlope"),
        coefficient: finite(-1, 1),
      }),
      { minLength: 1, maxLength: 6 },
    );
  const number = finite(low, high);
  return nullable ? fc.option(number) : number;
}

/** Parts of a kind: each optional value there or not, each document inside whole or away, one way where there are several. */
function partOf(kind: TableKind): fc.Arbitrary<Record<string, unknown>> {
  const leaves = leavesOf(kind);
  const outers = [...new Set(leaves.filter(({ key }) => key.includes(".")).map(({ key }) => key.split(".")[0]!))];
  const ways = leaves.filter(({ way }) => way !== null);
  return fc
    .record({
      values: fc.tuple(...leaves.map(anyValue)),
      there: fc.tuple(...leaves.map(() => fc.boolean())),
      begun: fc.subarray(outers),
      way: ways.length > 0 ? fc.constantFrom(...ways) : fc.constant(null),
    })
    .map(({ values, there, begun, way }) => {
      const held = leaves.filter(({ key, optional, way: own }, i) => {
        const outer = key.includes(".") ? key.split(".")[0]! : null;
        if (outer !== null && !begun.includes(outer)) return false;
        if (own !== null) return way?.way?.given === own.given;
        return !optional || there[i]!;
      });
      return documentWith(held.map((leaf) => [leaf, values[leaves.indexOf(leaf)]] as const));
    })
    .map((document) => PART_SCHEMAS[kind].safeParse(document))
    .filter(({ success }) => success)
    .map(({ data }) => data as Record<string, unknown>);
}

const read = (kind: TableKind, text: string) =>
  previewTable(text, { kind, name: "parts.csv", choices: PartsTableChoices.parse({}), stored: [] });

test.each(KINDS)("%s written as a table are read again bit for bit", (kind) => {
  fc.assert(
    fc.property(
      fc.uniqueArray(partOf(kind), {
        minLength: 1,
        maxLength: 4,
        selector: ({ name }) => String(name).trim().toLowerCase().replace(/\s+/g, " "),
      }),
      (parts) => {
        const { rows, columns } = read(kind, exportTable(kind, parts));
        expect(columns.filter(({ open, field }) => open || field === "")).toEqual([]);
        expect(rows.flatMap(({ problems }) => problems)).toEqual([]);
        expect(rows.map(({ document }) => document)).toEqual(parts);
      },
    ),
    { numRuns: 40 },
  );
});

const FACTORS = Object.values(UNITS)
  .flat()
  .filter(({ offset, electrical }) => offset === undefined && !electrical);

test("every number can be written in every unit so that it is read as the same number", () => {
  const number = fc.double({ noNaN: true, noDefaultInfinity: true, min: 1e-9, max: 1e9 });
  fc.assert(
    fc.property(number, fc.constantFrom(...FACTORS), (si, unit) => {
      const text = decimalOfSi(si, unit);
      expect(text).not.toBeNull();
      expect(siOfDecimal(text!, unit)).toBe(si);
    }),
    { numRuns: 3000 },
  );
});

test("a guarded text comes back as it was, and no guarded text begins like a formula", () => {
  fc.assert(
    fc.property(fc.stringMatching(/^['=+\-@?–a\t1 ]{0,6}$/), (text) => {
      const guarded = guardedText(text);
      expect(unguardedText(guarded)).toBe(text);
      expect(guarded).not.toMatch(/^\s*[=+\-@]/);
    }),
  );
});

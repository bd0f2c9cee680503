import { signal } from "@preact/signals";
import { expect, test } from "vitest";
import { bound, boundCount, boundNumber } from "../../web/forms/bound.ts";
import { readText, takenFor, textOf, unitOfText } from "../../web/forms/quantityText.ts";

test.each([
  { si: 0.076, dimension: "length", unit: "mm", text: "76 mm" },
  { si: 0.0762, dimension: "length", unit: "in", text: "3 in" },
  { si: (2 * Math.PI * 455) / 60, dimension: "speedConstant", unit: "rpm/V", text: "455 rpm/V" },
  { si: 0.12, dimension: "resistance", unit: "mΩ", text: "120 mΩ" },
  { si: 0, dimension: "current", unit: "A", text: "0 A" },
  { si: 1.2, dimension: "number", unit: undefined, text: "1.2" },
  { si: 100, dimension: "length", unit: "m", text: "100 m" },
] as const)("$si as a $dimension is shown as $text and read back the same", ({ si, dimension, unit, text }) => {
  expect(textOf(si, dimension, unit)).toBe(text);
  const read = readText(text, dimension);
  expect(read.kind === "value" && read.si).toBeCloseTo(si, 9);
});

test.each([
  { text: "76", allowed: {}, says: "no unit" },
  { text: "76 kg", allowed: {}, says: "a unit of a mass" },
  { text: "0 mm", allowed: { positive: true }, says: "more than 0" },
  { text: "2 m", allowed: { max: 1 }, says: "at most 1 m" },
  { text: "2 mm", allowed: { min: 0.005 }, says: "at least 5 mm" },
  { text: "5 mm", allowed: { check: () => "Not that one." }, says: "Not that one." },
])("a length of $text is not taken: $says", ({ text, allowed, says }) => {
  const read = readText(text, "length", allowed);
  expect(read.kind === "problem" && read.message).toContain(says);
});

test.each([
  { text: "1", told: "Taken as 100\u202f%. Write 1\u202f% if that is what it is." },
  { text: "0,5", told: "Taken as 50\u202f%. Write 0,5\u202f% if that is what it is." },
  { text: "0.2", told: null },
  { text: "50 %", told: null },
])("a share typed as $text says what it is taken for where that is in doubt", ({ text, told }) => {
  const read = readText(text, "fraction");
  expect(read.kind === "value" && takenFor(text, "fraction", read.si)).toBe(told);
});

test("what a field needs is told by a value that fits it, and a share too large by its per cent", () => {
  expect(readText("abc", "number", { example: "2" })).toMatchObject({
    message: expect.stringContaining("For example 2"),
  });
  expect(readText("5", "fraction", { max: 1 })).toMatchObject({ message: expect.stringContaining("Write 5\u202f%") });
});

test("an empty field is empty, not zero", () => {
  expect(readText("  ", "length")).toEqual({ kind: "empty" });
});

test("the unit that was typed is known again", () => {
  expect(unitOfText("3.5 inch", "length")).toBe("in");
  expect(unitOfText("3.5", "length")).toBeUndefined();
});

test("a field that must hold something keeps its signal while it holds nothing, and a count is whole", () => {
  const [depth, speed, blades] = [signal<number | null>(2), signal(1.5), signal(3)];
  bound(depth).onChange(null);
  boundNumber(speed).onChange(null);
  boundCount(blades).onChange(null);
  expect([depth.value, speed.value, blades.value]).toEqual([null, 1.5, 3]);
  boundNumber(speed).onChange(0.5);
  boundCount(blades).onChange(3.6);
  expect([boundNumber(speed).value, boundCount(blades).value]).toEqual([0.5, 4]);
});

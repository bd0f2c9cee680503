import fc from "fast-check";
import { expect, test } from "vitest";
import { formatQuantity } from "../../shared/quantity/format.ts";
import { fromSi, parseQuantity, toSi } from "../../shared/quantity/parseQuantity.ts";
import { findUnit } from "../../shared/quantity/unit.ts";
import { type Dimension, UNITS, type Unit } from "../../shared/quantity/units.data.ts";

const POLE_PAIRS = { polePairs: 7 };

const everyUnit = (Object.entries(UNITS) as [Dimension, readonly Unit[]][]).flatMap(([dimension, units]) =>
  units.map((unit) => ({ dimension, unit, symbol: unit.symbol })),
);

/** Readings as they are written: a few digits, any size. */
const reading = fc
  .tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: -6, max: 3 }))
  .map(([digits, exponent]) => Number(`${digits}e${exponent}`));

test.each(everyUnit)("a reading in $symbol ($dimension) comes back from its text", ({ dimension, unit }) => {
  fc.assert(
    fc.property(reading, (value) => {
      const si = parseQuantity(`${value} ${unit.symbol}`, dimension, POLE_PAIRS);
      const back = fromSi(unit.electrical ? si * POLE_PAIRS.polePairs : si, unit);
      // An offset of some hundred degrees costs the small digits of a small reading.
      expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.max(Math.abs(value), unit.offset ?? 0));
    }),
  );
});

test.each(everyUnit.filter(({ unit }) => !unit.electrical))(
  "what is shown in $symbol ($dimension) reads back to the digits shown",
  ({ dimension, unit }) => {
    fc.assert(
      fc.property(reading, (value) => {
        const si = toSi(value, unit);
        const shown = formatQuantity(si, unit, 9);
        const written = Math.abs(fromSi(parseQuantity(shown, dimension), unit) - value);
        expect(written).toBeLessThanOrEqual(1e-8 * Math.abs(value) + 1e-11 * (1 + (unit.offset ?? 0)));
      }),
    );
  },
);

test.each(everyUnit)("every spelling of $symbol ($dimension) means it", ({ dimension, unit }) => {
  for (const spelling of [unit.symbol, ...unit.spellings]) {
    expect(findUnit(spelling, dimension)?.symbol, spelling).toBe(unit.symbol);
  }
});

test("a comma and a point mean the same in any number", () => {
  fc.assert(
    fc.property(reading, (value) => {
      const text = `${value} N`;
      expect(parseQuantity(text.replace(".", ","), "force")).toBe(parseQuantity(text, "force"));
    }),
  );
});

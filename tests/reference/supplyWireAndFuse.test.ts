import { expect, test } from "vitest";
import { WireAndFuseRequest } from "../../shared/model/wireAndFuse.ts";
import { wireAndFuse } from "../../shared/supply/wireAndFuse.ts";

const suggested = (input: Record<string, unknown>) => wireAndFuse(WireAndFuseRequest.parse(input));
const named = (answer: ReturnType<typeof suggested>) =>
  answer.wires.map(({ byDrop, byCurrent, byFuse, chosen }) =>
    [byDrop, byCurrent, byFuse, chosen].map((w) => w?.name ?? null),
  );

test("a short lead is ruled by the fuse, a tether by the drop", () => {
  // By hand. 20 A: fuse from 25 A up; 5 A/mm² asks 4 mm² for 20 A and, above 5 mm², 6 mm² for the fuse; AWG 10 has 5.26.
  // 0.5 m at 16 V may lose 0.48 V, 24 mΩ/m there and back: 1 mm² has 19.5 Ω/km, 0.75 mm² 26; AWG 18 20.9, AWG 20 33.3.
  const lead = suggested({ continuousCurrent: 20, length: 0.5, voltage: 16 });
  expect(named(lead)).toEqual([
    ["1 mm²", "4 mm²", "6 mm²", "6 mm²"],
    ["AWG 18", "AWG 10", "AWG 10", "AWG 10"],
  ]);
  expect(lead.fuse).toBe(25);
  expect(lead.warnings).toEqual([]);
  // 25 m, 10 A, 48 V, 3 %: 1.44 V, 144 mΩ over 50 m, 2.88 Ω/km: 10 mm² (1.91; 6 mm² has 3.30), AWG 8 (2.06; 10 has 3.28).
  const tether = suggested({ continuousCurrent: 10, length: 25, voltage: 48 });
  expect(named(tether).map(([byDrop]) => byDrop)).toEqual(["10 mm²", "AWG 8"]);
  // Above 32 V blade fuses are out; the next of 12.5 A among the preferred ratings of IEC 60269 is 16 A.
  expect(tether.fuse).toBe(16);
  expect(tether.fuseSeries).toContain("IEC 60269");
});

test("the drop is that of the lead worked by hand", () => {
  // 2 x 25 m of 1.5 mm² class 5 at 12 °C, 10 A: 6.440924 V, 64.40924 W (50 x 13.3e-3 x 0.96856 Ω).
  const asked = { continuousCurrent: 10, length: 25, voltage: 48, allowedDrop: 6.440925 / 48, temperature: 285.15 };
  const { byDrop } = suggested(asked).wires[0]!;
  expect(byDrop!.name).toBe("1.5 mm²");
  expect(byDrop!.drop).toBeCloseTo(6.440924, 9);
  expect(byDrop!.loss).toBeCloseTo(64.40924, 8);
  expect(suggested({ ...asked, allowedDrop: 6.440923 / 48 }).wires[0]!.byDrop!.name).toBe("2.5 mm²");
});

test.each([
  { what: "a pack below the fuse", more: { packCurrent: 22 }, code: "supply.fuse-above-pack" },
  { what: "a pack below the current", more: { packCurrent: 15 }, code: "supply.pack-below-current" },
  { what: "a current above every fuse", more: { continuousCurrent: 90 }, code: "supply.no-fuse" },
  { what: "a way too long for every wire", more: { length: 200 }, code: "supply.no-wire" },
])("$what is named as a contradiction", ({ more, code }) => {
  const { warnings } = suggested({ continuousCurrent: 20, length: 0.5, voltage: 16, ...more });
  expect(warnings.map((warning) => warning.code)).toContain(code);
});

test("a fuse of exactly 1.25 times the current is taken, and the next above it otherwise", () => {
  const fuse = (continuousCurrent: number) => suggested({ continuousCurrent, length: 0.5, voltage: 12 }).fuse;
  expect([fuse(20), fuse(20.01), fuse(6), fuse(3.9)]).toEqual([25, 30, 7.5, 5]);
});

test("wires are chosen no thinner for a longer way, a greater current or a lower voltage", () => {
  const base = { continuousCurrent: 8, length: 10, voltage: 24 };
  const area = (more: object) => suggested({ ...base, ...more }).wires[0]!.chosen!.area;
  const least = area({});
  for (const more of [{ length: 25 }, { continuousCurrent: 16 }, { voltage: 12 }, { allowedDrop: 0.015 }]) {
    expect(area(more)).toBeGreaterThan(least);
  }
});

test("every suggestion warns of short circuits and defers to local codes", () => {
  const text = suggested({ continuousCurrent: 20, length: 0.5, voltage: 16 }).sentences.join(" ");
  expect(text).toMatch(/short circuit/);
  expect(text).toMatch(/[Ll]ocal codes/);
  expect(text).toMatch(/qualified person/);
  expect(text).toMatch(/data sheets/);
});

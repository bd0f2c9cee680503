import { describe, expect, test } from "vitest";
import { readLog } from "../../shared/log/readLog.ts";
import { type BladeFrame, geometryOfTable } from "../../shared/sections/geometryTable.ts";

const geometryOfText = (text: string, name: string, frame: BladeFrame) =>
  geometryOfTable(readLog(new TextEncoder().encode(text), name), frame);

describe("a table of sections", () => {
  const ROWS = "8,11,40,3,0.5\n20,14,26,2,0.4\n38,2,14,1,0.1\n";
  const frame = { bladeCount: 3 };

  test("is read with the units of its header; diameter and hub are those of the outermost and innermost row", () => {
    const text = `radius (mm),chord (mm),pitch angle (deg),thickness (mm),camber (mm)\n${ROWS}`;
    const geometry = geometryOfText(text, "blade.csv", frame);
    expect(geometry.diameter).toBeCloseTo(0.076, 12);
    expect(geometry.hubDiameter).toBeCloseTo(0.016, 12);
    expect(geometry.stations[1]).toEqual({
      radius: 0.02,
      chord: 0.014,
      pitchAngle: (26 * Math.PI) / 180,
      thickness: 0.002,
      camber: 0.0004,
    });
  });

  test("may have semicolons and decimal commas, and quantities as their usual ratios", () => {
    const text = "r/R;c/D;P/D;t/c;f/c\n0,2;0,2;0,9;0,2;0,02\n0,6;0,25;0,9;0,1;0,02\n1,0;0,02;0,9;0,1;0,0\n";
    const { stations } = geometryOfText(text, "blade.csv", { ...frame, diameter: 0.08 });
    // θ = atan(0.9/(0.6 π)) = 25.52°, by hand.
    expect((stations[1]!.pitchAngle * 180) / Math.PI).toBeCloseTo(25.52, 2);
    expect(stations[1]!.chord).toBeCloseTo(0.02, 12);
    expect(stations[1]!.thickness).toBeCloseTo(0.002, 12);
    expect(stations[1]!.camber).toBeCloseTo(0.0004, 12);
  });

  test("may give the pitch in millimetres, and skew besides", () => {
    const text =
      "r [mm]\tc [mm]\tpitch [mm]\tt [mm]\tf [mm]\tskew [deg]\n8\t11\t60\t3\t0.5\t0\n38\t2\t60\t1\t0.1\t10\n";
    const { stations } = geometryOfText(text, "blade.tsv", frame);
    expect(stations[0]!.pitchAngle).toBeCloseTo(Math.atan(60 / (2 * Math.PI * 8)), 12);
    expect(stations[1]!.skew).toBeCloseTo(Math.PI / 18, 12);
  });

  test("calls a pitch in degrees what it is, an angle", () => {
    const text = `radius (mm),chord (mm),pitch (deg),thickness (mm),camber (mm)\n${ROWS}`;
    expect(geometryOfText(text, "blade.csv", frame).stations[0]!.pitchAngle).toBeCloseTo((40 * Math.PI) / 180, 12);
  });

  test.each([
    {
      head: "radius,chord (mm),pitch angle (deg),thickness (mm),camber (mm)",
      code: "sections.no-unit",
      where: 'column "radius"',
    },
    {
      head: "radius (mm),chord (mm),pitch angle (deg),thickness (mm),rake (mm)",
      code: "sections.no-column",
      where: "blade.csv",
    },
    {
      head: "radius (kg),chord (mm),pitch angle (deg),thickness (mm),camber (mm)",
      code: "quantity.wrong-dimension",
      where: 'column "radius (kg)"',
    },
    {
      head: "r/R,chord (mm),pitch angle (deg),thickness (mm),camber (mm)",
      code: "sections.no-diameter",
      where: "blade.csv",
    },
  ])("under $head is refused with $code", ({ head, code, where }) => {
    expect(() => geometryOfText(`${head}\n${ROWS}`, "blade.csv", frame)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code, where: expect.stringContaining(where) }) }),
    );
  });

  test("with an empty cell names line and column", () => {
    const text =
      "radius (mm),chord (mm),pitch angle (deg),thickness (mm),camber (mm)\n8,11,40,3,0.5\n20,,26,2,0.4\n38,2,14,1,0.1\n";
    expect(() => geometryOfText(text, "blade.csv", frame)).toThrow(/line 3, column "chord \(mm\)"/);
  });
});

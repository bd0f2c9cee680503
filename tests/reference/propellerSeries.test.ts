import { describe, expect, test } from "vitest";
import type { SeriesPropeller } from "../../shared/model/seriesPropeller.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { seriesCurve } from "../../shared/propeller/series/seriesCurve.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";
import { seriesReynolds } from "../../shared/propeller/series/seriesReynolds.ts";
import { B_SCREWS, KA_4_70, KA_5_75, REYNOLDS_CHANGES } from "./propellerSeries.data.ts";

/** Half of the last digit of a number printed with `decimals`. */
const half = (decimals: number) => 0.5001 * 10 ** -decimals;

const openScrew = ({ blades, areaRatio, pitchRatio }: { blades: number; areaRatio: number; pitchRatio: number }) =>
  ({ family: "wageningen-b", blades, areaRatio, pitchRatio }) as const;

const curveOf = (series: SeriesPropeller) => seriesCurve({ series, points: 3, outsideRange: false });

describe("Wageningen B screws", () => {
  test.each(B_SCREWS)(
    "B$blades-$areaRatio of pitch ratio $pitchRatio has the coefficients of the polynomials",
    (row) => {
      for (const [advanceRatio, thrust, tenTorque] of row.points) {
        const point = openWaterOfSeries({ series: openScrew(row), advanceRatio });
        expect(Math.abs(point.thrustCoefficient - thrust)).toBeLessThan(half(4));
        expect(Math.abs(10 * point.torqueCoefficient - tenTorque)).toBeLessThan(half(4));
      }
    },
  );

  test.each(B_SCREWS)(
    "B$blades-$areaRatio of pitch ratio $pitchRatio ends to push at J = $zeroThrust, best at $peak",
    (row) => {
      const { zeroThrust, peak } = curveOf(openScrew(row));
      expect(Math.abs(zeroThrust - row.zeroThrust)).toBeLessThan(half(4));
      expect(Math.abs(peak.efficiency - row.peak[0])).toBeLessThan(half(4));
      expect(Math.abs(peak.advanceRatio - row.peak[1])).toBeLessThan(0.0011);
    },
  );

  // Fossen, Handbook of Marine Craft Hydrodynamics and Motion Control, 2nd ed. 2021: torpedo-shaped vehicle, three
  // blades, A_E/A_0 0.718, P/D 1.0; printed with the open library that goes with the book.
  test.each([
    { J: 0, thrust: 0.4566, torque: 0.07 },
    { J: 0.6632, thrust: 0.1798, torque: 0.0312 },
  ])("the propeller of Fossen's torpedo-shaped vehicle has K_T $thrust and K_Q $torque at J = $J", (row) => {
    const series = openScrew({ blades: 3, areaRatio: 0.718, pitchRatio: 1 });
    const point = openWaterOfSeries({ series, advanceRatio: row.J });
    expect(Math.abs(point.thrustCoefficient - row.thrust)).toBeLessThan(half(4));
    expect(Math.abs(point.torqueCoefficient - row.torque)).toBeLessThan(half(4));
  });

  test.each(REYNOLDS_CHANGES)(
    "the Reynolds number changes B$blades-$areaRatio, P/D $pitchRatio, at J = $J as table 6 says",
    ({ J, changes, ...row }) => {
      const at = (reynolds: number) => openWaterOfSeries({ series: openScrew(row), advanceRatio: J, reynolds });
      const series = at(2e6);
      for (const [reynolds, thrust, torque] of changes) {
        const corrected = at(reynolds);
        expect(Math.abs(corrected.thrustCoefficient - series.thrustCoefficient - thrust)).toBeLessThan(half(5));
        expect(Math.abs(corrected.torqueCoefficient - series.torqueCoefficient - torque)).toBeLessThan(half(6));
      }
    },
  );
});

describe("Ka screws in nozzle 19A", () => {
  test.each(KA_4_70)("Ka 4-70 of pitch ratio $pitchRatio has the coefficients of the polynomials", (row) => {
    const series = { family: "ka-4-70-19a", pitchRatio: row.pitchRatio } as const;
    for (const [advanceRatio, thrust, nozzle, tenTorque] of row.points) {
      const point = openWaterOfSeries({ series, advanceRatio });
      expect(Math.abs(point.thrustCoefficient - thrust)).toBeLessThan(half(4));
      expect(Math.abs(point.nozzleThrustCoefficient! - nozzle)).toBeLessThan(half(4));
      expect(Math.abs(10 * point.torqueCoefficient - tenTorque)).toBeLessThan(half(4));
      expect(point.propellerThrustCoefficient! + point.nozzleThrustCoefficient!).toBeCloseTo(
        point.thrustCoefficient,
        12,
      );
    }
    const curve = curveOf(series);
    expect(Math.abs(curve.zeroThrust - row.zeroThrust)).toBeLessThan(half(4));
    expect(Math.abs(curve.peak.efficiency - row.peak[0])).toBeLessThan(half(4));
    // Series books print (K_T/π)^1.5/K_Q, sqrt(2) times the static merit.
    expect(Math.abs(curve.staticMerit * Math.SQRT2 - row.merit)).toBeLessThan(half(3));
    const [rest] = curve.points;
    expect(Math.abs(rest!.nozzleThrustCoefficient! / rest!.thrustCoefficient - row.share)).toBeLessThan(half(3));
  });

  test.each(KA_5_75)("Ka 5-75 of pitch ratio $pitchRatio has the bollard coefficients of the polynomials", (row) => {
    const curve = curveOf({ family: "ka-5-75-19a", pitchRatio: row.pitchRatio });
    const [rest] = curve.points;
    expect(Math.abs(rest!.thrustCoefficient - row.thrust)).toBeLessThan(half(4));
    expect(Math.abs(rest!.nozzleThrustCoefficient! - row.nozzleThrust)).toBeLessThan(half(4));
    expect(Math.abs(10 * rest!.torqueCoefficient - row.tenTorque)).toBeLessThan(half(4));
    expect(Math.abs(curve.staticMerit * Math.SQRT2 - row.merit)).toBeLessThan(half(3));
  });

  // "About half" of the bollard thrust is quoted for nozzle 19A: Oosterveld, publication 345 (1970).
  test("the nozzle carries about half of the bollard thrust, and drags before the propeller stops pushing", () => {
    const { points } = seriesCurve({
      series: { family: "ka-4-70-19a", pitchRatio: 1 },
      points: 100,
      outsideRange: false,
    });
    const share = points[0]!.nozzleThrustCoefficient! / points[0]!.thrustCoefficient;
    expect(share).toBeGreaterThan(0.45);
    expect(share).toBeLessThan(0.55);
    expect(points.findIndex((point) => point.nozzleThrustCoefficient! < 0)).toBeLessThan(90);
  });
});

describe("blades of the B series", () => {
  const series = openScrew({ blades: 4, areaRatio: 0.7, pitchRatio: 1 });

  // Holtrop & Mennen, An approximate power prediction method, International Shipbuilding Progress 29 (1982) 166, worked
  // example: D 8 m, Z 4, A_E/A_0 0.7393: c at 0.75 R is 3.065 m, t/c there 0.03524.
  test("chord at 0.75 of the radius is that of Holtrop & Mennen's example", () => {
    const ship = openScrew({ blades: 4, areaRatio: 0.7393, pitchRatio: 1 });
    const flow = { diameter: 8, rotationRate: 1, advanceSpeed: 0, kinematicViscosity: 1e-6 };
    const chord = seriesReynolds(ship, flow) / ((0.75 * Math.PI * 8) / 1e-6);
    expect(Math.abs(chord - 3.065)).toBeLessThan(half(3));
    const { stations } = seriesGeometry({ series: ship, diameter: 1, outsideRange: false });
    const [at07, at08] = [stations[5]!, stations[6]!];
    expect(Math.abs((at07.chord + at08.chord) / 2 / (chord / 8) - 1)).toBeLessThan(0.01);
    // t/c = (0.0185 - 0.00125 Z) D/c in the example: half-way between the rows of the table.
    expect(Math.abs(((at07.thickness + at08.thickness) / 2) * (8 / chord) - 0.03524)).toBeLessThan(1e-5);
  });

  // The definition of the expanded area, A_E = Z ∫ c dr from the hub, against the nominal one the table was made for.
  test.each([
    { blades: 3, areaRatio: 0.5 },
    { blades: 4, areaRatio: 0.7 },
  ])("$blades blades have the nominal expanded area within 1.5 %", ({ blades, areaRatio }) => {
    const screw = openScrew({ blades, areaRatio, pitchRatio: 1 });
    const { stations, hubDiameter } = seriesGeometry({ series: screw, diameter: 1, outsideRange: false });
    let area = blades * stations[0]!.chord * (stations[0]!.radius - hubDiameter / 2);
    for (let i = 1; i < stations.length; i++) {
      const [inner, outer] = [stations[i - 1]!, stations[i]!];
      area += (blades * (inner.chord + outer.chord) * (outer.radius - inner.radius)) / 2;
    }
    expect(Math.abs(area / (areaRatio * (Math.PI / 4)) - 1)).toBeLessThan(0.015);
  });

  test("the blade rises by its pitch in one turn, less near the root with four blades", () => {
    const { stations, hubDiameter } = seriesGeometry({ series, diameter: 0.1, outsideRange: false });
    const pitch = stations.map(({ radius, pitchAngle }) => 2 * Math.PI * radius * Math.tan(pitchAngle));
    expect(pitch[6]).toBeCloseTo(0.1, 12);
    expect(pitch[0]).toBeCloseTo(0.0822, 12);
    expect(hubDiameter).toBeCloseTo(0.0167, 12);
  });
});

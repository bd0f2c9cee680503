import { describe, expect, test } from "vitest";
import { ThrustAtSpeedRequest } from "../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../shared/propeller/atSpeed/thrustAtSpeed.ts";
import { relativeError } from "../relative.ts";

/**
 * Advancing points of the DA4002 propeller of 9 x 6.75 in (two blades, P/D 0.80 by its blade angle): J, C_T, C_P.
 * Deters, Ananda & Selig, AIAA 2014-2151; University of Illinois propeller data set, volume 2. C_T is K_T, C_P is 2π
 * K_Q.
 */
const RUNS = [
  {
    rpm: 5064,
    rest: { C_T: 0.1384, C_P: 0.0788 },
    points: [
      [0.124, 0.1302, 0.0766],
      [0.1864, 0.1249, 0.0747],
      [0.2505, 0.1196, 0.0742],
      [0.3121, 0.1115, 0.0728],
      [0.3744, 0.1025, 0.0706],
      [0.4367, 0.093, 0.0678],
      [0.5008, 0.0826, 0.0643],
      [0.5658, 0.0712, 0.0595],
      [0.6254, 0.0574, 0.0524],
      [0.6894, 0.0452, 0.0459],
      [0.751, 0.0325, 0.038],
      [0.8107, 0.0199, 0.0288],
    ],
  },
  {
    rpm: 3030,
    rest: { C_T: 0.1327, C_P: 0.0864 },
    points: [
      [0.2027, 0.1163, 0.0774],
      [0.3183, 0.1048, 0.0724],
      [0.4178, 0.0914, 0.0678],
      [0.5182, 0.0735, 0.0604],
      [0.6358, 0.0533, 0.0511],
      [0.7343, 0.0305, 0.0364],
      [0.8368, 0.0056, 0.0177],
    ],
  },
] as const;

/** The nearest screws of the B series: few blades, little area, the pitch ratio that was measured. */
const SCREWS = [
  { family: "wageningen-b", blades: 2, areaRatio: 0.3, pitchRatio: 0.8 },
  { family: "wageningen-b", blades: 3, areaRatio: 0.35, pitchRatio: 0.8 },
  { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.8 },
] as const;

const cases = RUNS.flatMap((run) => SCREWS.map((series) => ({ ...run, series })));

test.each(cases)(
  "from its point at rest at $rpm rpm, B$series.blades-$series.areaRatio and its band hold what was measured at speed",
  ({ rest, points, series }) => {
    const density = 1.2;
    const [diameter, rotationRate] = [0.2286, 50];
    const request = {
      bollard: {
        thrustCoefficient: { value: rest.C_T, standardUncertainty: 0.01 * rest.C_T },
        torqueCoefficient: { value: rest.C_P / (2 * Math.PI), standardUncertainty: (0.01 * rest.C_P) / (2 * Math.PI) },
      },
      ...{ diameter, density, series },
      fixed: { given: "rotationRate", rotationRate },
      speeds: points.map(([J]) => J * rotationRate * diameter),
    };
    const result = thrustAtSpeed(ThrustAtSpeedRequest.parse(request));
    for (const [i, [, C_T, C_P]] of points.entries()) {
      const point = result.points[i]!;
      if (point.state === "failed") throw new Error(point.reason);
      const K_T = point.thrust.interval95.map((T) => T / (density * rotationRate ** 2 * diameter ** 4)) as [
        number,
        number,
      ];
      expect(C_T).toBeGreaterThan(K_T[0]);
      expect(C_T).toBeLessThan(K_T[1]);
      const power = density * rotationRate ** 3 * diameter ** 5;
      const coefficient = point.shaftPower.interval95.map((P) => P / power) as [number, number];
      expect(C_P).toBeGreaterThan(coefficient[0]);
      expect(C_P).toBeLessThan(coefficient[1]);
    }
  },
);

test.each(cases)(
  "at the shaft power measured at $rpm rpm and each speed, the band of B$series.blades-$series.areaRatio holds the thrust that was measured",
  ({ rest, points, series }) => {
    // One unit of density and diameter, and V = 1: with n = 1/J the thrust is C_T/J² and the power C_P/J³.
    for (const [J, C_T, C_P] of points) {
      const result = thrustAtSpeed(
        ThrustAtSpeedRequest.parse({
          bollard: {
            thrustCoefficient: { value: rest.C_T, standardUncertainty: 0.01 * rest.C_T },
            torqueCoefficient: {
              value: rest.C_P / (2 * Math.PI),
              standardUncertainty: (0.01 * rest.C_P) / (2 * Math.PI),
            },
          },
          ...{ diameter: 1, density: 1, series, speeds: [1] },
          fixed: { given: "shaftPower", shaftPower: C_P / J ** 3 },
        }),
      );
      const [point] = result.points;
      if (point?.state !== "solved") throw new Error(point?.reason);
      const { value, standardUncertainty, interval95 } = point.thrust;
      expect(C_T / J ** 2).toBeGreaterThan(interval95[0]);
      expect(C_T / J ** 2).toBeLessThan(interval95[1]);
      // By numpy and scipy from the same published numbers, with the parts' correlation of 0.8: at most 1.49.
      expect(Math.abs(C_T / J ** 2 - value) / standardUncertainty).toBeLessThan(1.5);
    }
  },
);

/**
 * B4-70 of pitch ratio 1.0 scaled to K_T 0.3 and K_Q 0.04, D 0.1 m in 1000 kg/m³, solved apart from the project: Python
 * 3.11, numpy 2.4.6 for the published polynomials (Oosterveld & van Oossanen 1975, table 5), `scipy.optimize.brentq`
 * (scipy 1.17.1, xtol 1e-13) for n of 2π K_Q(V/(nD)) ρ n³ D⁵ = 100 W.
 */
const AT_100_W: readonly (readonly [number, number, number])[] = [
  [0.0, 34.13920316276478, 34.96455577765587],
  [1e-6, 34.13920487590122, 34.96455319780693],
  [0.5, 35.127894142252266, 33.518594077758856],
  [1.0, 36.37715488031634, 31.810166687527108],
  [2.0, 39.63557903805009, 27.878016252305247],
  [3.0, 43.866331730406344, 23.612440453427016],
];

describe("a scaled B screw at 100 W", () => {
  const request = {
    bollard: { thrustCoefficient: { value: 0.3 }, torqueCoefficient: { value: 0.04 } },
    diameter: 0.1,
    density: 1000,
    series: { family: "wageningen-b", blades: 4, areaRatio: 0.7, pitchRatio: 1 },
    fixed: { given: "shaftPower", shaftPower: 100 },
    speeds: AT_100_W.map(([V]) => V),
  };

  test.each(AT_100_W)("at %d m/s turns at %d rev/s and pushes %d N", (V, rotationRate, thrust) => {
    const { points } = thrustAtSpeed(ThrustAtSpeedRequest.parse({ ...request, speeds: [V] }));
    const [point] = points;
    if (point?.state !== "solved") throw new Error(point?.reason);
    expect(relativeError(point.rotationRate, rotationRate)).toBeLessThan(1e-9);
    expect(relativeError(point.thrust.value, thrust)).toBeLessThan(1e-9);
    expect(relativeError(point.shaftPower.value, 100)).toBeLessThan(1e-9);
  });
});

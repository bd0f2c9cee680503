import { describe, expect, test } from "vitest";
import { CoastDownData, TimedRunData, TowData } from "../../shared/model/vehicle/dragFit.ts";
import { correlatedRegression } from "../../shared/vehicle/drag/correlatedRegression.ts";
import { fitDrag } from "../../shared/vehicle/drag/fitDrag.ts";
import { slowed } from "../../shared/vehicle/motion/closedForms.ts";
import { relativeError } from "../relative.ts";

const TIME = Array.from({ length: 12 }, (_, i) => i / 2);
const SPEEDS = [1.5, 0.77, 0.507, 0.368, 0.3, 0.238, 0.222, 0.22, 0.162, 0.143, 0.151, 0.136];
const DISTANCES = [0.001, 0.516, 0.835, 1.064, 1.216, 1.366, 1.47, 1.58, 1.665, 1.763, 1.827, 1.91];
const independent = TIME.map(() => false);

// scipy 1.17.1: curve_fit(f, t, y, p0, xtol=1e-15, ftol=1e-15, gtol=1e-15), standard errors from the scatter.
describe("least squares of a coast-down, errors independent, agree with scipy curve_fit", () => {
  test("speeds: V0/(1 + V0 k t)", () => {
    const fit = correlatedRegression({
      ...{ measured: SPEEDS, follows: independent, start: [1.4, 1], scales: [1, 1] },
      model: ([V0, k]) => TIME.map((t) => slowed({ quadratic: k!, linear: 0 }, V0!, t).speed),
    });
    expect(relativeError(fit.solution[0]!, 1.5015115662335776)).toBeLessThan(1e-8);
    expect(relativeError(fit.solution[1]!, 1.3023742746313132)).toBeLessThan(1e-8);
    expect(relativeError(fit.standardErrors[0]!, 0.013352889242128956)).toBeLessThan(1e-5);
    expect(relativeError(fit.standardErrors[1]!, 0.023941922968450286)).toBeLessThan(1e-5);
  });

  test("distances: x0 + ln(1 + V0 k t)/k", () => {
    const fit = correlatedRegression({
      ...{ measured: DISTANCES, follows: independent, start: [1.4, 1, 0.1], scales: [1, 1, 1] },
      model: ([V0, k, x0]) => TIME.map((t) => x0! + slowed({ quadratic: k!, linear: 0 }, V0!, t).distance),
    });
    expect(relativeError(fit.solution[1]!, 1.2871167027038346)).toBeLessThan(1e-7);
    expect(relativeError(fit.standardErrors[1]!, 0.01766794954402242)).toBeLessThan(1e-5);
  });

  test("speeds with a linear term", () => {
    const fit = correlatedRegression({
      ...{ measured: SPEEDS, follows: independent, start: [1.4, 1, 0], scales: [1, 1, 1] },
      model: ([V0, k, r]) => TIME.map((t) => slowed({ quadratic: k!, linear: r! }, V0!, t).speed),
    });
    expect(relativeError(fit.solution[1]!, 1.317073821610487)).toBeLessThan(1e-7);
    expect(relativeError(fit.solution[2]!, -0.007714268363578263)).toBeLessThan(1e-5);
    expect(relativeError(fit.standardErrors[2]!, 0.02778655569392024)).toBeLessThan(1e-5);
  });
});

test("the fit of a coast-down log lies within a standard uncertainty of scipy's and carries the mass", () => {
  const base = {
    ...{ method: "coastDown", density: 1000, time: TIME, measured: "speed", values: SPEEDS },
    mass: { value: 12.5, standardUncertainty: 0.1 },
    addedMass: { value: 5, standardUncertainty: 1 },
  };
  const fit = fitDrag(CoastDownData.parse(base));
  const expected = (2 * 17.5 * 1.3023742746313132) / 1000;
  expect(Math.abs(fit.dragArea.value - expected)).toBeLessThan(fit.parts[0]!.standardUncertainty);
  // C_D A = 2 M k/ρ: 1 kg of 17.5 kg is 1/17.5 of it.
  expect(fit.parts.find(({ cause }) => cause === "added mass")!.standardUncertainty).toBeCloseTo(
    fit.dragArea.value / 17.5,
    12,
  );
  const distances = fitDrag(CoastDownData.parse({ ...base, measured: "distance", values: DISTANCES }));
  expect(Math.abs(distances.dragArea.value - fit.dragArea.value)).toBeLessThan(
    2 * Math.hypot(fit.parts[0]!.standardUncertainty, distances.parts[0]!.standardUncertainty),
  );
});

const TOW = {
  ...{ method: "tow", density: 1000, speed: [0.3, 0.3, 0.6, 0.6, 0.9, 0.9, 1.2, 1.2, 1.5, 1.5] },
  force: [2.09, 1.95, 7.09, 7.88, 18.21, 18.27, 31.79, 32.21, 50.23, 50.3],
};

// numpy 2.4.6 linalg.lstsq and scipy 1.17.1 stats.t, stats.f on the same table.
describe("a table of tow points agrees with numpy and scipy", () => {
  test("quadratic law: b, its standard error, interval, lack of fit and the test of the linear term", () => {
    const fit = fitDrag(TowData.parse(TOW));
    expect(relativeError(fit.dragArea.value * 500, 22.29877425944841)).toBeLessThan(1e-10);
    expect(relativeError(fit.dragArea.standardUncertainty * 500, 0.08811510502672794)).toBeLessThan(1e-8);
    const half = (fit.dragArea.interval95[1] - fit.dragArea.value) / fit.dragArea.standardUncertainty;
    expect(relativeError(half, 2.262157162798205)).toBeLessThan(1e-9);
    expect(fit.degreesOfFreedom).toBeCloseTo(9, 9);
    expect(relativeError(fit.lackOfFit!.ratio, 2.0937671120072263)).toBeLessThan(1e-8);
    expect(relativeError(fit.lackOfFit!.pValue, 0.21920192236219319)).toBeLessThan(1e-8);
    expect(relativeError(fit.linearTest!.linear.value, -0.522111801242239)).toBeLessThan(1e-8);
    expect(relativeError(fit.linearTest!.linear.standardUncertainty, 0.447123253712404)).toBeLessThan(1e-8);
    expect(relativeError(fit.linearTest!.pValue, 0.2765438988411544)).toBeLessThan(1e-8);
    expect(fit.warnings).toEqual([]);
  });

  test("a linear term below 0 is told and left out", () => {
    const fit = fitDrag(TowData.parse({ ...TOW, model: "quadraticLinear" }));
    expect(fit.linear.value).toBe(0);
    expect(fit.warnings.map(({ code }) => code)).toEqual(["vehicle.fit-linear-negative"]);
  });
});

// numpy 2.4.6 linalg.lstsq on columns √T and ±1.
test("timed runs both ways agree with numpy: slope, current taken out, interval of the speed carried over", () => {
  const speeds = [0.562, 0.383, 0.896, 0.745, 1.229, 1.074];
  const runs = speeds.map((speed, i) => ({
    ...{ speed, thrust: [5, 5, 15, 15, 30, 30][i]! },
    way: i % 2 === 0 ? ("there" as const) : ("back" as const),
  }));
  const fit = fitDrag(TimedRunData.parse({ method: "timedRuns", density: 1000, runs }));
  const [q, u, t] = [0.21082700409207647, 0.0008430122912657663, 2.7764451051977934];
  expect(relativeError(fit.dragArea.value, 2 / (1000 * q * q))).toBeLessThan(1e-9);
  expect(relativeError(fit.dragArea.standardUncertainty, (2 * (2 * u)) / (1000 * q ** 3))).toBeLessThan(1e-7);
  expect(relativeError(fit.dragArea.interval95[0], 2 / (1000 * (q + t * u) ** 2))).toBeLessThan(1e-8);
  expect(relativeError(fit.dragArea.interval95[1], 2 / (1000 * (q - t * u) ** 2))).toBeLessThan(1e-8);
});

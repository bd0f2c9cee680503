import { describe, expect, test } from "vitest";
import { CavitationRequest } from "../../shared/model/cavitation.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";
import { codesOf } from "./propellerProblems.ts";

describe("cavitation", () => {
  const thruster = {
    thrust: 20,
    rotationRate: 45,
    diameter: 0.076,
    blades: 3,
    areaRatio: 0.5,
    pitchRatio: 0.8,
    shaftImmersion: 0.5,
    fluid: { kind: "fresh", temperature: 288.15 },
  };
  const judged = (changes: object = {}) => cavitation(CavitationRequest.parse({ ...thruster, ...changes }));

  test("a small thruster lies off the chart to the safe side, where no line is read", () => {
    const result = judged();
    expect(result.cavitationNumber).toBeGreaterThan(2);
    expect(codesOf(result)).toContain("propeller.off-burrill-chart");
    expect(result.lines.every(({ limit }) => limit === null)).toBe(true);
    expect(result.answer).toContain("beyond the chart");
    expect(result.lines[0]).toMatchObject({ line: "light", state: "unjudged", depthNeeded: null });
  });

  test("a lightly loaded one off the chart is judged by the chart's end, which is stricter", () => {
    const result = judged({ thrust: 3 });
    expect(result.lines.map(({ state }) => state)).toEqual(["below", "below", "below", "below", "below"]);
    expect(result.depthFreeOfCavitation).toBe(0);
    expect(result.answer).toContain("Under all limit lines");
  });

  test("a loading within a tenth of a line is near it, because the line is known no better", () => {
    const onChart = { rotationRate: 80, shaftImmersion: 0.1 };
    const limit = judged(onChart).lines[1]!.limit!;
    const { loading } = judged(onChart);
    const states = [0.85, 0.95, 1.05, 1.15].map(
      (factor) => judged({ ...onChart, thrust: (20 * factor * limit) / loading }).lines[1]!.state,
    );
    expect(states).toEqual(["below", "near", "near", "above"]);
  });

  test("sea water is heavier and boils later than fresh water: its cavitation number is its own", () => {
    const sea = judged({ fluid: { kind: "sea", temperature: 288.15, salinity: 35 } });
    expect(sea.cavitationNumber).not.toBe(judged().cavitationNumber);
  });

  test.each([
    { depth: 0.03, verdict: "likely" },
    { depth: 0.2, verdict: "possible" },
    { depth: 0.5, verdict: "unlikely" },
  ])("with the shaft $depth m deep air is $verdict", ({ depth, verdict }) => {
    const result = judged({ shaftImmersion: depth });
    expect(result.ventilation.verdict).toBe(verdict);
    expect(codesOf(result).includes("propeller.draws-air")).toBe(verdict === "likely");
  });

  test("a light propeller is not said to draw air only because it is shallow", () => {
    expect(judged({ thrust: 0.5, shaftImmersion: 0.06 }).ventilation.verdict).not.toBe("likely");
  });

  test("a nozzle that carries thrust makes the water move faster through the disc, so that air comes from deeper", () => {
    const open = judged().ventilation;
    const nozzle = judged({ thrust: 10, nozzleThrust: 10 }).ventilation;
    expect(nozzle.drawdown).toBeGreaterThan(open.drawdown);
  });
});

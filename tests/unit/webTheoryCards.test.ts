import { describe, expect, it } from "vitest";
import { BestPitchRequest } from "../../shared/model/bestPitch.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { areaRatioOf } from "../../shared/propeller/series/areaRatioOf.ts";
import { bestPitch } from "../../shared/propeller/series/bestPitch.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import {
  carried,
  carriedSentence,
  factorRows,
  missingOf as missingForCarry,
} from "../../web/views/theory/carryOver/carryOverModel.ts";
import { evidenceRows, evidenceSentence } from "../../web/views/theory/methods/evidenceModel.ts";
import { METHODS } from "../../web/views/theory/methods/methods.data.ts";
import { pitchPicture, pitchRows, pitchSentence, predictionOfPitch } from "../../web/views/theory/pitch/pitchModel.ts";
import type { Subject } from "../../web/views/theory/subject.ts";
import {
  depthPicture,
  missingOf,
  nozzleNote,
  waterAnswer,
  waterLimits,
  waterRows,
} from "../../web/views/theory/water/waterModel.ts";
import { reductionOf } from "./webBenchReduction.fixture.ts";

const PROPELLER = Propeller.parse({
  name: "Net propeller",
  diameter: 0.1,
  diameterUncertainty: 1e-4,
  bladeCount: 3,
  pitchRatio: 1,
  chordAt07: 0.04336,
});
const SUBJECT: Subject = {
  name: "sanded",
  propeller: PROPELLER,
  reductions: [reductionOf()],
  thrustCoefficient: uncertain(0.43, 0.004),
  torqueCoefficient: uncertain(0.065, 0.001),
  staticMerit: null,
  topRate: 75,
};
const FRESH_15 = { kind: "fresh", temperature: 288.15 } as const;
const SEA_12 = { kind: "sea", temperature: 285.15, salinity: 33 } as const;

describe("what the water allows", () => {
  it("says of a propeller in a nozzle that its blades carry less, and nothing of an open one", () => {
    expect(nozzleNote(SUBJECT)).toBe("");
    expect(nozzleNote({ propeller: { ...PROPELLER, nozzle: true } })).toContain("about half");
  });

  it("takes the area ratio from the chord at 0.7 R", () => {
    // c/D = K_r (A_E/A_0)/Z, K_r 2.168: Oosterveld & van Oossanen (1975), table 1.
    expect(areaRatioOf(PROPELLER)).toBeCloseTo(0.6, 9);
  });

  it("gives the cavitation number and loading of the worked B3-60 at bollard", () => {
    const working = { fluid: FRESH_15, depth: 0.5, rotationRate: 75 };
    // B3-60, P/D 1.0, D 0.10 m, 75 rev/s, 0.5 m deep, 15 °C, K_T 0.4300: σ 0.7691, τ_c 0.4503 by the formulas of Burrill and
    // Emerson in Molland, Turnock & Hudson, Ship Resistance and Propulsion, worked out with numpy 2.4.6.
    const limits = waterLimits(SUBJECT, working);
    expect(limits.cavitationNumber).toBeCloseTo(0.7691, 3);
    expect(limits.loading).toBeCloseTo(0.4503, 3);
    const rows = new Map(waterRows(limits).map(({ name, value }) => [name, value]));
    expect(rows.get("Cavitation number at 0.7 R")).toBe("0.769");
    expect(rows.get("Immersion over diameter")).toBe("5.00");
  });

  it("draws the depth needed as far as the chart goes, deeper for a faster propeller", () => {
    const spec = depthPicture(SUBJECT, { fluid: FRESH_15, depth: 0.5, rotationRate: 75 });
    const air = spec.series.find(({ id }) => id === "air")!.points;
    for (const [at, { y }] of air.entries()) if (at > 0) expect(y).toBeGreaterThanOrEqual(air[at - 1]!.y);
    // τ_c 0.45 needs σ = (0.4503/0.494)^(1/0.88) = 0.900 on the line of flat-faced sections (Blount & Fox 1978), on the chart, and
    // 2.3 on that of 5 % back cavitation, off it: that line has nothing to draw.
    const ids = spec.series.map(({ id }) => id);
    expect(ids).toContain("flatFaced");
    expect(ids).not.toContain("cavitation");
    const flat = spec.series.find(({ id }) => id === "flatFaced")!.points;
    const at4500 = flat.reduce((near, one) => (Math.abs(one.x - 4500) < Math.abs(near.x - 4500) ? one : near));
    const n = at4500.x / 60;
    const dynamic = 0.5 * 999.1 * (0.7 * Math.PI * n * 0.1) ** 2;
    expect(at4500.y).toBeCloseTo(Math.max(0, (0.9 * dynamic + 1705 - 101325) / (999.1 * 9.80665)), 1);
  });

  it("says where the depth is an example that nobody stated", () => {
    const stated = { fluid: FRESH_15, depth: 1, rotationRate: 75 };
    expect(waterAnswer({ answer: "It cavitates." }, stated)).toBe("It cavitates.");
    expect(waterAnswer({ answer: "It cavitates." }, { ...stated, isExample: true })).toBe(
      "At an example depth of 1.00\u202fm, as none is stated: It cavitates.",
    );
    const named = (isExample: boolean) => depthPicture(SUBJECT, { ...stated, isExample }).series.at(-1)!.name;
    expect([named(false), named(true)]).toEqual(["Depth stated", "Depth taken as an example"]);
  });

  it("names what is not known of the propeller", () => {
    const { bladeCount: _, chordAt07: __, ...bare } = PROPELLER;
    expect(missingOf({ ...SUBJECT, propeller: bare })).toContain("number of blades and chord at 0.7 R");
    expect(missingOf(SUBJECT)).toBe("");
  });
});

describe("carried to the working water", () => {
  const target = { fluid: SEA_12, rotationRate: 75, diameter: 0.1 };

  it("scales the thrust by the densities and the listed factors", () => {
    const result = carried(SUBJECT, FRESH_15, target);
    const product = result.factors.reduce((all, { thrust }) => all * thrust, 1);
    // T = K_T ρ n² D⁴ on the stand, ρ 999.10 kg/m³ of water at 15 °C (ITTC 7.5-02-01-03, 2011).
    expect(result.thrust.value / (0.43 * 999.1 * 75 ** 2 * 1e-4 * product)).toBeCloseTo(1, 4);
    expect(carriedSentence(SUBJECT, result, target)).toMatch(/^Sanded at 4500\u202frpm and 100\u202fmm pushes /);
    const rows = factorRows(result);
    expect(rows.find(({ cause }) => cause === "Density")!.thrust).toMatch(/^× 1\.02/);
    expect(rows.every(({ thrust, reason }) => thrust.startsWith("× ") && reason.length > 20)).toBe(true);
  });

  it("needs the shaft power", () => {
    expect(missingForCarry({ ...SUBJECT, torqueCoefficient: null })).toContain("shaft power");
    expect(missingForCarry(SUBJECT)).toBe("");
  });
});

describe("a good pitch", () => {
  const request = BestPitchRequest.parse({
    series: { family: "wageningen-b", blades: 3, areaRatio: 0.5 },
    duty: { given: "thrust", thrust: 20 },
    fixed: { given: "diameter", diameter: 0.076 },
    density: 1000,
    kinematicViscosity: 1e-6,
  });
  const result = bestPitch(request);
  if (result.state === "failed") throw new Error(result.reason);

  it("is told with what it takes, drawn with its neighbours, and can be laid over the measurements", () => {
    expect(pitchSentence(result, request)).toMatch(
      /P\/D 0\.\d+: a 76\.0\u202fmm propeller at \d+\u202frpm needs .* for 20\.0\u202fN\.$/,
    );
    const [line] = pitchPicture(result, request).series;
    expect(Math.min(...line!.points.map(({ y }) => y))).toBeGreaterThanOrEqual(result.best.shaftPower * (1 - 1e-6));
    expect(pitchRows(result).find(({ name }) => name === "Thrust")!.value).toBe("20.0\u202fN");
    const { source } = predictionOfPitch(result, request.series);
    expect(source).toMatchObject({ kind: "series", diameter: 0.076, series: { blades: 3, areaRatio: 0.5 } });
  });

  it("says why there is none", () => {
    const failed = { state: "failed", reason: "No pitch does it.", warnings: [] } as const;
    expect(pitchSentence({ ...failed, warnings: [] }, request)).toBe("No pitch does it.");
  });
});

describe("the method pages", () => {
  it("each have equations, a range, what is sure and a source", () => {
    expect(new Set(METHODS.map(({ id }) => id)).size).toBe(METHODS.length);
    for (const { idea, equations, range, sure, sources } of METHODS) {
      expect(equations.length).toBeGreaterThan(0);
      expect(sources.length).toBeGreaterThan(0);
      for (const text of [idea, range, sure]) expect(text.length).toBeGreaterThan(20);
    }
  });

  it("tell how far computed coefficients lie off the measured, in per cent, and give up a share of next to nothing", () => {
    const point = (measured: number, computed: number) => ({
      diameter: 0.2,
      rotationRate: 50,
      reynolds: 43600,
      advanceRatio: 0,
      measured: { thrustCoefficient: measured, torqueCoefficient: 0.01 },
      computed: { thrustCoefficient: computed, torqueCoefficient: 0.011 },
    });
    const evidence = { chosenOn: [point(0.1, 0.095), point(0.1, 0.102)], heldBack: [point(0.002, 0.004)] };
    expect(evidenceSentence(evidence)).toContain(
      "thrust is off by −5 to +2\u202f% and the torque by +10 to +10\u202f%",
    );
    expect(evidenceRows(evidence).map((cells) => cells[4])).toEqual(["−5\u202f%", "+2\u202f%", "near zero"]);
    expect(evidenceRows(evidence)[0]![1]).toBe("4.4e4");
  });
});

import { expect, test } from "vitest";
import { PRINTED_MATERIALS } from "../../shared/propeller/strength/printedMaterials.data.ts";
import { startedApp } from "./startedApp.ts";

const FRESH = { kind: "fresh", temperature: 291.15 };
const OUTLINE = { diameter: 0.076, bladeCount: 3, pitchRatio: 0.9, chordAt07: 0.02 };
const BLADE = { given: "outline", outline: OUTLINE };

/** Invented coefficients of a 76 mm propeller. */
const point = (thrust: number, torque: number) => ({
  thrustCoefficient: { value: thrust, standardUncertainty: 0.006, commonUncertainty: 0.004 },
  torqueCoefficient: { value: torque, standardUncertainty: 0.0008, commonUncertainty: 0.0005 },
});
const AS_PRINTED = { name: "as printed", measured: [point(0.28, 0.0475)] };
const SANDED = { name: "sanded", measured: [point(0.355, 0.0455)] };
const FIT = { blade: BLADE, fluid: FRESH, rotationRate: 50, finishes: [AS_PRINTED, SANDED], claimedFactor: 2 };

async function geometry(ask: Awaited<ReturnType<typeof startedApp>>["ask"]) {
  const series = { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.9 };
  return (await ask("POST", "/api/compute/series-geometry", { series, diameter: 0.076 })).body;
}

test("two finishes give section drag, their change, what is left to gain and a verdict on a claim", async () => {
  const { ask } = await startedApp();
  const { status, body } = await ask("POST", "/api/compute/finish-fit", FIT);
  expect(status).toBe(200);
  expect(body.finishes.map(({ state }: { state: string }) => state)).toEqual(["fitted", "fitted"]);
  expect(body.change.dragRatio.interval95[1]).toBeLessThan(1);
  expect(body.claim.verdict).toBe("refuted");
  expect(body.sentence).toContain(body.change.sentence);
  expect(body.warnings[0].code).toBe("propeller.generic-blade");
});

test("a thrust that no surface makes is told with what is most likely wrong", async () => {
  const { ask } = await startedApp();
  const finishes = [{ name: "sanded", measured: [point(0.6, 0.045)] }];
  const { status, body } = await ask("POST", "/api/compute/finish-fit", { ...FIT, finishes });
  expect(status).toBe(200);
  expect(body.finishes[0]).toMatchObject({ state: "outOfReach", bound: "liftTooHigh" });
  expect(body.sentence).toContain("thrust calibration");
});

test("an uncertainty of nothing is refused with its field", async () => {
  const { ask } = await startedApp();
  const exact = { ...point(0.3, 0.04), thrustCoefficient: { value: 0.3, standardUncertainty: 0 } };
  const finishes = [{ name: "sanded", measured: [exact] }];
  const answer = await ask("POST", "/api/compute/finish-fit", { ...FIT, finishes });
  expect(answer.status).toBe(400);
  expect(answer.body.where ?? answer.body.problems[0].where).toContain("standardUncertainty");
});

test("a loss report says the same numbers in words, and its losses and the ideal make the whole", async () => {
  const { ask } = await startedApp();
  const request = { name: "sanded", blade: BLADE, fluid: FRESH, rotationRate: 50, measured: point(0.355, 0.0455) };
  const { status, body } = await ask("POST", "/api/compute/loss-report", request);
  expect(status).toBe(200);
  expect(body.sharesFrom).toBe("fitted");
  const lost = body.shares.reduce((sum: number, { share }: { share: { value: number } }) => sum + share.value, 0);
  expect(lost + body.staticMerit.value).toBeCloseTo(1, 2);
  expect(body.long).toContain(body.short);
});

test("a blade of a stated print has a safety factor, and the cautions come with it", async () => {
  const { ask } = await startedApp();
  const request = {
    geometry: await geometry(ask),
    surface: { roughness: 1e-4 },
    fluid: FRESH,
    rotationRate: 50,
    material: PRINTED_MATERIALS[0],
  };
  const { status, body } = await ask("POST", "/api/compute/blade-strength", request);
  expect(status).toBe(200);
  expect(body.critical.safetyFactor).toBeGreaterThan(1);
  expect(body.cautions.join(" ")).toContain("guard");
  expect(body.sentence).toContain("polylactide");
});

test("a station without thickness is a refusal that names it", async () => {
  const { ask } = await startedApp();
  const whole = await geometry(ask);
  whole.stations[3].thickness = 0;
  const request = {
    geometry: whole,
    surface: { roughness: 0 },
    fluid: FRESH,
    rotationRate: 50,
    material: PRINTED_MATERIALS[0],
  };
  const answer = await ask("POST", "/api/compute/blade-strength", request);
  expect(answer.status).toBe(422);
  expect(answer.body.detail).toContain("station 4");
});

test("a surface as printed has the roughness of its steps; materials come with their source", async () => {
  const { ask } = await startedApp();
  const state = { state: "printed", layerHeight: 2e-4, flow: "acrossLayers", slope: 0 };
  const { body } = await ask("POST", "/api/compute/surface-state", state);
  expect(body.surface.roughness).toBeCloseTo(2e-4, 12);
  const materials = (await ask("GET", "/api/compute/printed-materials")).body;
  expect(materials).toHaveLength(PRINTED_MATERIALS.length);
});

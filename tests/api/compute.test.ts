import { expect, test } from "vitest";
import { startedApp } from "./startedApp.ts";

const FRESH_16 = { kind: "fresh", temperature: 289.15 };

test("the density of fresh water at 16 °C is the measured one", async () => {
  const { ask } = await startedApp();
  const { body } = await ask("POST", "/api/compute/fluid", FRESH_16);
  // Masui, Fujii & Takenaka, Metrologia 32 (1995/96) 333: 998.9468 kg/m³, combined standard uncertainty 0.0006 kg/m³ (abstract).
  // The formula adds its own 1e-6 of the density (IAPWS SR6-08, as stated with it).
  expect(Math.abs(body.density - 998.9468)).toBeLessThan(2 * Math.hypot(0.0006, 0.001));
});

test("a temperature outside the range of the formula is a 422 that says which is allowed", async () => {
  const { ask } = await startedApp();
  const answer = await ask("POST", "/api/compute/fluid", { kind: "fresh", temperature: 18 });
  expect(answer.status).toBe(422);
  expect(answer.body.detail).toContain("Needed: 0 to 60 °C");
});

const DISC = { diameter: 0.076, density: 998.9468, staticMerit: 0.5 };

test("the power that a thrust takes makes that thrust again", async () => {
  const { ask } = await startedApp();
  const estimate = async (duty: object) => (await ask("POST", "/api/compute/bollard-estimate", { ...DISC, duty })).body;
  const forward = await estimate({ given: "thrust", thrust: 20 });
  const back = await estimate({ given: "shaftPower", shaftPower: forward.shaftPower });
  expect(back.thrust).toBeCloseTo(20, 9);
  expect(forward.supplyCurrent).toBeNull();
});

test("a static merit of a half makes a half to the power two thirds of the ideal thrust, and doubles the power", async () => {
  const { ask } = await startedApp();
  const duty = { given: "shaftPower", shaftPower: 100 };
  const { body } = await ask("POST", "/api/compute/bollard-estimate", { ...DISC, duty });
  expect(body.thrust / body.idealThrust).toBeCloseTo(0.5 ** (2 / 3), 12);
  expect(body.shaftPower / body.idealShaftPower).toBeCloseTo(2, 12);
});

test("an estimate without a duty says what is missing", async () => {
  const { ask } = await startedApp();
  const answer = await ask("POST", "/api/compute/bollard-estimate", DISC);
  expect(answer.status).toBe(400);
  expect(answer.body.detail).toContain("duty");
});

test("an operating point balances: shaft power is torque times angular velocity, and no power is lost on the way", async () => {
  const { ask } = await startedApp();
  const { status, body } = await ask("POST", "/api/compute/operating-point", {
    speedConstant: 47.6,
    motorResistance: 0.12,
    noLoadCurrent: 0.55,
    supplyVoltage: 14.8,
    diameter: 0.076,
    thrustCoefficient: 0.35,
    torqueCoefficient: 0.045,
    density: 998.6,
    throttle: 0.7,
  });
  expect(status).toBe(200);
  expect(body.shaftPower).toBeCloseTo(body.torque * 2 * Math.PI * body.rotationRate, 6);
  const { controllerResistance, winding, friction } = body.losses;
  expect(body.shaftPower + controllerResistance + winding + friction).toBeCloseTo(body.electricalPower, 6);
});

import { describe, expect, test } from "vitest";
import { SpeedOverTether } from "../../shared/model/vehicle/speedOverTether.ts";
import type { VehicleInput } from "../../shared/model/vehicle/vehicle.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import { relative } from "../relative.ts";
import { SIX_THRUSTERS, TWO_THRUSTERS, vehicleFrom } from "../unit/vehicleExample.ts";

const [drive] = TWO_THRUSTERS.drives;
const { openWater: _, ...atRest } = drive!.propeller.ahead;

/** A thrust that does not fall with the speed, and a tether without weight and tangential drag right under its upper end. */
const PLAIN: VehicleInput = {
  ...TWO_THRUSTERS,
  drives: [{ ...drive!, propeller: { ...drive!.propeller, ahead: atRest } }],
  tether: { cable: { diameter: 0.006, normalDragCoefficient: 1.2, tangentialDragCoefficient: 0 } },
  scenario: { depth: 50, tetherLength: 60 },
};

const limitOf = (vehicle: VehicleInput) => vehicleAnswer(vehicleFrom(vehicle)).tetherLimit!;

/**
 * V = √(F/(½ ρ C_D A + R a tanh(h/2a))), L = 2 a sinh(h/2a): a drag body on a neutrally buoyant cable across uniform flow, the
 * catenary on its side of Pode, DTMB report 687 (1951); F by the equations of motor, propeller and supply. All by scipy
 * 1.17.1 `brentq`, xtol 1e-13: F 77.58666998782 N; 60 m pull 66.46589325287 N at 1 m/s.
 */
test.each([
  { length: 51, speed: 0.8745505793274695 },
  { length: 60, speed: 0.9760267194725096 },
  { length: 51 * (120 / 51) ** 0.2, speed: 0.9807363607393444 },
  { length: 120, speed: 1.23793532031341 },
])("with $length m of tether the speed is that of the closed form", ({ length, speed }) => {
  const { points } = limitOf(PLAIN);
  const at = points.find((one) => Math.abs(one.length - length) < 1e-9)!;
  expect(at.speed!.value).toSatisfy(relative(speed, 5e-4));
  expect(at.resistance).toSatisfy(relative(77.58666998781906 - 0.5 * 998.598 * 0.03 * speed ** 2, 2e-3));
});

test("without a tether it is that of the body alone", () => {
  // √(F/(½ ρ C_D A)), as above.
  expect(limitOf(PLAIN).without!.value).toSatisfy(relative(2.275896881347697, 1e-6));
});

describe("the limit curve of a vehicle in a current", () => {
  const tether = { ...SIX_THRUSTERS.tether!, motion: "upperEndFixed" as const };
  const requirement = { ...SIX_THRUSTERS.requirement!, tetherLength: 70, speed: 1.3 };
  const answer = vehicleAnswer(vehicleFrom({ ...SIX_THRUSTERS, tether, requirement }));
  const limit = answer.tetherLimit!;

  test("is a valid document that goes through the speed ahead of the answer, with its doubt", () => {
    expect(SpeedOverTether.safeParse(limit).error?.issues ?? []).toEqual([]);
    expect(limit.converged).toBe(true);
    expect(limit.scenario!.speed!.value).toSatisfy(relative(answer.motions[0]!.speed!.value, 1e-9));
    expect(limit.scenario!.speed!.standardUncertainty).toSatisfy(
      relative(answer.motions[0]!.speed!.standardUncertainty!, 1e-6),
    );
  });

  test("marks the length of the requirement and tells up to which its speed is kept", () => {
    const { at, needed, greatestLength } = limit.requirement!;
    expect(at.length).toBe(70);
    expect(needed).toBeCloseTo(1.6, 12);
    expect(limit.sentence).toMatch(/keeps the 1\.60 m\/s through the water that are asked for with up to \d+ m out/);
    // Solved anew with that length out, the speed is the one asked for.
    const there = limitOf({ ...SIX_THRUSTERS, tether, requirement: { ...requirement, tetherLength: greatestLength! } });
    expect(there.requirement!.at.speed!.value).toSatisfy(relative(1.6, 1e-3));
  });

  test("names the lengths that do not reach, in place of a refusal", () => {
    const short = { ...SIX_THRUSTERS, requirement: { speed: 0.5, tetherLength: 12 } };
    const { requirement: asked, sentence } = limitOf(short);
    expect(asked!.at).toMatchObject({ speed: null, reason: expect.stringContaining("does not reach") });
    expect(sentence).toMatch(/12\.0 m of tether that are asked for there is no speed/);
  });

  test("is not there without a tether", () => {
    const { tether: _tether, ...free } = SIX_THRUSTERS;
    expect(vehicleAnswer(vehicleFrom({ ...free, scenario: { depth: 10 } })).tetherLimit).toBeNull();
  });
});

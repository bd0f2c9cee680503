import { describe, expect, test } from "vitest";
import type { VehicleInput } from "../../shared/model/vehicle/vehicle.ts";
import { busDemand } from "../../shared/vehicle/propulsion/busDemand.ts";
import { propulsionModel } from "../../shared/vehicle/propulsion/propulsionModel.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import { relative } from "../relative.ts";
import { TWO_THRUSTERS, vehicleFrom } from "../unit/vehicleExample.ts";

const upright = (name: string, y: number) => ({
  ...{ name, drive: "stern", position: { x: 0, y, z: 0 }, direction: { x: 0, y: 0, z: 1 } },
});
/** Two thrusters that push ahead and two that push down, on one supply. */
const FOUR: VehicleInput = {
  ...TWO_THRUSTERS,
  drag: { ...TWO_THRUSTERS.drag, heave: { down: { drag: { from: "typed", dragArea: 0.05 } } } },
  thrusters: [...TWO_THRUSTERS.thrusters, upright("starboard upright", 0.1), upright("port upright", -0.1)],
};
const model = propulsionModel(vehicleFrom(FOUR));
/** Greatest force down with nothing else, N: motor, propeller and supply by their equations, scipy 1.17.1 `brentq`. */
const GREATEST = 77.58666998781906;

const ahead = (share: number) => busDemand(model, { direction: { surge: 1 }, aside: { heave: share * GREATEST } });

describe("force ahead beside a net buoyancy that takes a share of the greatest force down", () => {
  /**
   * Motor, propeller and supply by their equations, uprights at the throttle that the buoyancy needs, the others at full
   * throttle or, where that would pull the bus below what the uprights need, at what is left: scipy 1.17.1 `brentq`, xtol
   * 1e-13.
   */
  test.each([
    { share: 0.5, force: 63.80177579968317, voltage: 9.558051899980992 },
    { share: 0.6, force: 58.72685275365892, voltage: 9.114281684784961 },
    { share: 0.7, force: 52.18382615967613, voltage: 8.716508086512336 },
    { share: 0.8, force: 41.61863094118933, voltage: 9.408062077573707 },
    { share: 0.9, force: 27.054770633656776, voltage: 10.06867426095148 },
    { share: 0.99, force: 4.902654436792086, voltage: 10.640961260426492 },
    { share: 0.999, force: 0.27937543355833344, voltage: 10.697150275576774 },
  ])("$share of it leaves $force N", ({ share, force, voltage }) => {
    const solved = ahead(share);
    expect(solved.times).toSatisfy(relative(force, 1e-4));
    expect(solved.busVoltage).toSatisfy(relative(voltage, 1e-6));
    expect(solved.bound).toBe(share < 0.65 ? "thrusters" : "holding");
    expect(solved.converged).toBe(true);
  });

  test("falls without a jump, and more than the greatest is not held", () => {
    const shares = Array.from({ length: 60 }, (_, i) => 0.4 + 0.01 * i).filter((share) => share < 1);
    const forces = shares.map((share) => ahead(share).times);
    for (let i = 1; i < forces.length; i++) {
      expect(forces[i]!).toBeLessThan(forces[i - 1]!);
      expect(forces[i - 1]! - forces[i]!).toBeLessThan(4.7);
    }
    expect(ahead(1.001)).toMatchObject({ outcome: "notHeld", times: 0 });
  });
});

test("an answer that rests on the last of the vertical thrust says so", () => {
  const answer = (netBuoyancy: number) => vehicleAnswer(vehicleFrom({ ...FOUR, netBuoyancy: { value: netBuoyancy } }));
  const near = answer(0.97 * GREATEST);
  const told = near.warnings.find(({ code }) => code === "vehicle.little-reserve")!;
  expect(told.message).toMatch(/Holding its depth takes 97\.0 % of the vertical thrust/);
  expect(near.motions[0]!.atRest!.limitedBy).toMatchObject({ part: "pack", limit: "voltage for what is held" });
  expect(answer(0.3 * GREATEST).warnings.map(({ code }) => code)).not.toContain("vehicle.little-reserve");
});

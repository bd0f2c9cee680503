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
  // Nothing is doubtful here, so what is left is told as it is.
  expect(near.motions[0]!.force!.standardUncertainty).toBe(0);
  expect(answer(0.3 * GREATEST).warnings.map(({ code }) => code)).not.toContain("vehicle.little-reserve");
});

test.each([
  // The reserve is 2.3, -2.3 and 23 N beside a standard uncertainty of 3 N of the net buoyancy: 2 of them are asked for.
  { share: 0.97, stated: false },
  { share: 1.03, stated: false },
  { share: 0.7, stated: true },
])("at $share of the vertical thrust an interval of the force ahead is stated: $stated", ({ share, stated }) => {
  const netBuoyancy = { value: share * GREATEST, standardUncertainty: 3 };
  const { motions, requirement } = vehicleAnswer(vehicleFrom({ ...FOUR, netBuoyancy, requirement: { speed: 0.2 } }));
  const [ahead, up] = [motions[0]!, motions.find(({ way }) => way === "down")!];
  expect(ahead.force!.interval95 !== null).toBe(stated);
  if (!stated && ahead.speed) expect(ahead.sentence).toMatch(/no interval can be stated: its depth is hardly held/);
  // By first order nobody can say then how sure a speed is, so it is not called certain.
  expect(requirement!.demands[0]).toMatchObject(stated ? { certain: true } : { probability: null, certain: false });
  // What holds the depth does not stand behind it.
  expect(up.force!.interval95).not.toBeNull();
  for (const told of motions.flatMap(({ force, speed }) => [force, speed])) {
    if (told?.interval95) expect(told.interval95[0]).toBeGreaterThanOrEqual(0);
  }
});

// By hand: Φ(r/u), the reserve r = 1 % of 77.587 N, u = 1 N of the net buoyancy: 0.78; sunk as deep, 0.22 that it holds.
test.each([
  { share: 0.99, says: /; it holds its depth by the best estimate, 78\.1\s% sure\.$/ },
  { share: 1.01, says: /; it can not hold its depth, 78\.1\s% sure, and floats up/ },
  { share: 0.9, says: /none upwards with the other motions at zero\.$/ },
])(
  "with a thruster ahead lost, a net buoyancy of $share of the force down is held as surely as it is known",
  ({ share, says }) => {
    const netBuoyancy = { value: share * GREATEST, standardUncertainty: 1 };
    const { losses } = vehicleAnswer(vehicleFrom({ ...FOUR, netBuoyancy })).vertical;
    expect(losses.find(({ thruster }) => thruster === TWO_THRUSTERS.thrusters[0]!.name)!.sentence).toMatch(says);
  },
);

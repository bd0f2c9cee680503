import { describe, expect, test } from "vitest";
import type { VehicleInput } from "../../shared/model/vehicle/vehicle.ts";
import { tetherBook } from "../../shared/vehicle/motion/tetherBook.ts";
import { tetherModel } from "../../shared/vehicle/motion/tetherModel.ts";
import { type TetherOut, tetherOut, tetherPulls } from "../../shared/vehicle/motion/tetherPull.ts";
import { vehicleFacts } from "../../shared/vehicle/propulsion/vehicleNumbers.ts";
import { SIX_THRUSTERS, vehicleFrom } from "../unit/vehicleExample.ts";

const cases: Record<string, Partial<VehicleInput>> = {
  "both ends moving": {},
  "upper end at rest": { tether: { ...SIX_THRUSTERS.tether!, motion: "upperEndFixed" } },
  "without weight": { tether: { cable: { diameter: 0.006 } } },
};

const sizeOf = (force: readonly number[]) => Math.hypot(...force);
const apart = (a: readonly number[], b: readonly number[]) => sizeOf(a.map((part, k) => part - b[k]!));

describe.each(Object.entries(cases))("the quick model of a tether with %s", (_, change) => {
  const vehicle = vehicleFrom({ ...SIX_THRUSTERS, ...change });
  const { numbers } = vehicleFacts(vehicle);
  const out: TetherOut = tetherOut(vehicle, numbers)!;
  const exact = tetherPulls(out, 0);
  const quick = tetherModel(out, 0);

  test("is within 5e-4 of the solved shape from 0.9 m/s on, and within 0.02 N or 3 % below", () => {
    for (const V of [0.05, 0.11, 0.17, 0.33, 0.57, 0.93, 1.13, 1.51]) {
      const [solved, told] = [exact([V, 0, 0]), quick(numbers)([V, 0, 0])];
      const bound = V < 0.9 ? Math.max(0.02, 0.03 * sizeOf(solved.force)) : 5e-4 * sizeOf(solved.force);
      expect(apart(told.force, solved.force)).toBeLessThan(bound);
    }
  });

  test("follows 10 % more drag to 1 % of the force", () => {
    const more = { ...numbers, tether: { ...numbers.tether, normal: 1.1, tangential: 1.1 } };
    const solved = tetherPulls({ ...out, numbers: more }, 0)([1.2, 0, 0]).force;
    expect(apart(quick(more)([1.2, 0, 0]).force, solved)).toBeLessThan(0.01 * sizeOf(solved));
  });
});

test("a shape nearby to begin with changes nothing but the time", () => {
  const vehicle = vehicleFrom(SIX_THRUSTERS);
  const out = tetherOut(vehicle, vehicleFacts(vehicle).numbers)!;
  const warm = tetherPulls(out, 0);
  for (const V of [0.7, 0.8, 0.9]) warm([V, 0, 0]);
  const cold = tetherPulls(out, 0)([0.9, 0, 0]);
  expect(apart(warm([0.9, 0, 0]).force, cold.force)).toBeLessThan(1e-4 * sizeOf(cold.force));
});

test("a current from port pulls as the mirror image of one from starboard", () => {
  const vehicle = vehicleFrom(SIX_THRUSTERS);
  const { numbers } = vehicleFacts(vehicle);
  const book = tetherBook(vehicle, numbers);
  const solved = tetherPulls(
    { ...tetherOut(vehicle, numbers)!, numbers: { ...numbers, currentSpeed: 1 } },
    -1,
  )([Math.cos(-1), Math.sin(-1), 0]).force;
  expect(apart(book.atOne(numbers)(-1).force, solved)).toBeLessThan(1e-5 * sizeOf(solved));
  const { force } = book.atOne(numbers)(1);
  expect(apart(book.atOne(numbers)(-1).force, [force[0], -force[1], force[2]])).toBeLessThan(1e-12);
});

test("the mission takes the tether up and down as at rest, as the speeds do", () => {
  const vehicle = vehicleFrom(SIX_THRUSTERS);
  const { numbers } = vehicleFacts(vehicle);
  const pull = tetherBook(vehicle, numbers).in({ speed: 0.3, from: 0 })(numbers);
  expect(pull([0, 0, -0.4]).force).toEqual(pull([0, 0, 0]).force);
});

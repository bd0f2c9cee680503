import { expect, test } from "vitest";
import { emptyChain, fillChain } from "../../shared/drive/chain.ts";
import { emptyLimits, fillLimits } from "../../shared/drive/limitNumbers.ts";
import { emptyState, thrustOf } from "../../shared/drive/shaftState.ts";
import { solveFull } from "../../shared/drive/solveFull.ts";
import { LIMIT_NAMES } from "../../shared/model/drive.ts";
import { driveCases } from "../bench/driveCases.ts";
import { relative } from "../relative.ts";

/**
 * Greatest thrust within all limits of invented thrusters with every effect at work (tests/bench/driveCases.ts), found
 * outside this project by tests/bench/driveOutside.py with numpy 2.4.6: each limit by itself a bisection of 52 steps
 * over the motor speed, the least of them taken. scipy 1.17.1 `brentq(f, 1e-6, top, xtol=1e-12, rtol=1e-14)` one after
 * another agrees with it to 1e-14. `npm run bench` does both again for 2000 cases.
 */
const GREATEST_THRUST = [
  // case, limit that governs, N
  [0, "winding temperature", 9.239506662057638],
  [1, "none", 14.903223056337326],
  [2, "controller current", 23.367497448133626],
  [3, "motor current", 14.936540287738863],
  [4, "supply current", 14.286028985411011],
  [5, "motor current", 15.768334647173624],
  [6, "none", 64.55159703046412],
  [7, "ventilation", 20.670134752337386],
  [9, "motor power", 61.6686979060868],
  [10, "winding temperature", 25.639925272776736],
  [11, "cavitation", 16.293627674690484],
  [18, "controller current", 17.647417625628442],
  [25, "fuse current", 18.34832990492601],
  [28, "cavitation", 5.185801733241779],
  [34, "ventilation", 9.007125524093025],
  [39, "fuse current", 25.44565755484613],
  [48, "motor power", 52.89487323033665],
  [64, "least supply voltage", 16.583972837956132],
  [90, "supply current", 38.25985770703712],
  [129, "least supply voltage", 4.268943761868635],
  [151, "supply voltage", 13.06245264394407],
  [186, "tether current", 26.68777031155892],
  [223, "tether current", 29.465756082910286],
] as const;

const cases = driveCases(400);

test.each(GREATEST_THRUST)("case %i, bounded by %s, gives at most %d N", (index, limit, thrust) => {
  const one = cases[index]!;
  const chain = fillChain(emptyChain(), one, null);
  const state = solveFull(chain, fillLimits(emptyLimits(), one, chain), 1, emptyState());
  expect(LIMIT_NAMES[state.limit] ?? "none").toBe(limit);
  expect(thrustOf(chain, state)).toSatisfy(relative(thrust, 1e-12));
  expect(state.converged).toBe(true);
});

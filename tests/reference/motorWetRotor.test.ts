import { expect, test } from "vitest";
import { cylinderTorque, faceTorque, floodedRotorDrag } from "../../shared/motor/wetRotor.ts";
import { relative } from "../relative.ts";

/**
 * Rotor of radius 14 mm and length 12 mm, radial gap 0.3 mm, in water of 998.6 kg/m³ and 1.0527e-3 Pa·s. Formulas of
 * Bilgen & Boulos, J. Fluids Engineering 95 (1973) 122, and Daily & Nece, J. Basic Engineering 82 (1960) 217, both from
 * memory, evaluated outside this project. rpm, torque on the cylinder, torque on both faces at 1 mm.
 */
const ROTOR = {
  radius: 0.014,
  length: 0.012,
  radialGap: 0.0003,
  density: 998.6,
  kinematicViscosity: 1.0527e-3 / 998.6,
};
const WORKED = [
  [500, 5.080765170878e-5, 2.120396571515e-5],
  [1000, 1.34082196715e-4, 5.997387178092e-5],
  [3000, 6.559892347876e-4, 3.116333791535e-4],
  [5000, 1.411464100902e-3, 6.705282708799e-4],
  [8000, 2.856602492424e-3, 1.35705380577e-3],
] as const;

test.each(WORKED)(
  "at %d rpm cylinder and faces of a flooded rotor have the torques worked elsewhere",
  (rpm, cylinder, faces) => {
    const rotationRate = rpm / 60;
    expect(cylinderTorque({ ...ROTOR, rotationRate })).toSatisfy(relative(cylinder, 1e-9));
    expect(faceTorque({ ...ROTOR, rotationRate, axialGap: 0.001 })).toSatisfy(relative(faces, 1e-9));
  },
);

test.each([
  [5000, 6.256249984891e-4],
  [8000, 1.322533077374e-3],
])("at %d rpm and 0.5 mm axial gap the faces have the torque worked elsewhere", (rpm, faces) => {
  expect(faceTorque({ ...ROTOR, rotationRate: rpm / 60, axialGap: 0.0005 })).toSatisfy(relative(faces, 1e-9));
});

test("cylinder and faces together cost the power worked elsewhere, flagged as an estimate", () => {
  const drag = floodedRotorDrag({ ...ROTOR, rotationRate: 5000 / 60, axialGap: 0.001 });
  expect(drag.torque.value).toSatisfy(relative(2.081992371782e-3, 1e-9));
  expect(drag.power.value).toSatisfy(relative(1.0901286566, 1e-9));
  expect(drag.warnings.map(({ code }) => code)).toEqual(["motor.wet-loss-estimated"]);
  expect(drag.power.interval95[0]).toBeLessThan(0.6 * drag.power.value);
});

/**
 * Exact laminar flow between concentric cylinders, M = 4 π μ L ω R² R_o²/(R_o² − R²): any text on viscous flow. Thin gap:
 * 2 π μ ω R³ L/t, whose next term is 1.5 t/R. At 100 rpm Re √(t/R) is 6, below the vortices.
 */
test("in a gap without vortices the torque is that of exact laminar flow", () => {
  const omega = (100 * 2 * Math.PI) / 60;
  const thin = (2 * Math.PI * 1.0527e-3 * omega * 0.014 ** 3 * 0.012) / 0.0003;
  const torque = cylinderTorque({ ...ROTOR, rotationRate: 100 / 60 });
  expect(torque / thin).toBeCloseTo(1 + 1.5 * (0.0003 / 0.014), 2);
  // The worked table has 3.923871814508e-5 N·m at 500 rpm for the same exact flow, which grows as the speed.
  expect(torque).toSatisfy(relative(3.923871814508e-5 / 5, 1e-9));
});

test("lengths of zero are refused by name", () => {
  expect(() => cylinderTorque({ ...ROTOR, radialGap: 0, rotationRate: 10 })).toThrow(/radial gap/);
  expect(() => faceTorque({ ...ROTOR, rotationRate: 10, axialGap: -1 })).toThrow(/axial gap/);
});

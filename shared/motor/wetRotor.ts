import type { FloodedRotorDrag, FloodedRotorRequest } from "../model/floodedRotor.ts";
import { positive } from "../quantity/domain.ts";
import { formatNumber } from "../quantity/format.ts";
import { uncertain } from "../quantity/uncertain.ts";
import { type Warning, warning } from "../quantity/warning.ts";

/** Close housing: coefficient C in C_M = C (t/R)^0.3 Re^power below each limit of Re. */
const CYLINDER_PIECES = [
  { below: 64, factor: 10, power: -1 },
  { below: 500, factor: 2, power: -0.6 },
  { below: 1e4, factor: 1.03, power: -0.5 },
  { below: Infinity, factor: 0.065, power: -0.2 },
] as const;

/** Vortices set in above this Re √(t/R): Taylor, Philosophical Transactions A 223 (1923) 289. From memory. */
const VORTICES = 41.2;
/** What such formulas are worth on a motor with teeth, magnets and slots, relative. Common practice, no source. */
const WORTH = 0.3;

type Gap = Omit<FloodedRotorRequest, "axialGap">;

/**
 * Torque on a cylinder that turns in a close housing full of fluid, N·m.
 *
 *   M = ½ C_M π ρ ω² R⁴ L,   C_M = 10, 2, 1.03, 0.065 × (t/R)^0.3 Re^(−1, −0.6, −0.5, −0.2),   Re = ω R t/ν
 *
 * In a gap without vortices the exact flow between cylinders takes the place of the first piece.
 *
 * Source   Bilgen & Boulos, Journal of Fluids Engineering 95 (1973) 122. From memory.
 * Error    the pieces do not meet exactly: steps up to 6 % at their limits.
 * Throws   OutOfDomain for sizes that are not positive.
 */
export function cylinderTorque({ radius, length, radialGap, density, kinematicViscosity, rotationRate }: Gap): number {
  const [R, L, t] = [
    positive(radius, "rotor radius", "m"),
    positive(length, "rotor length", "m"),
    positive(radialGap, "radial gap", "m"),
  ];
  const nu = positive(kinematicViscosity, "kinematic viscosity", "m²/s");
  const rho = positive(density, "density", "kg/m³");
  const omega = 2 * Math.PI * positive(rotationRate, "rotation rate", "rev/s");
  const Re = (omega * R * t) / nu;
  if (Re < CYLINDER_PIECES[0].below && Re * Math.sqrt(t / R) < VORTICES) {
    const outer = (R + t) ** 2;
    return (4 * Math.PI * rho * nu * L * omega * R ** 2 * outer) / (outer - R ** 2);
  }
  const { factor, power } = CYLINDER_PIECES.find(({ below }) => Re < below)!;
  const C_M = factor * (t / R) ** 0.3 * Re ** power;
  return 0.5 * C_M * Math.PI * rho * omega ** 2 * R ** 4 * L;
}

/**
 * Torque on both faces of a disc that turns in a closed housing, N·m: M = ½ C_m ρ ω² R⁵, the largest of four regimes.
 *
 * Source   Daily & Nece, Journal of Basic Engineering 82 (1960) 217. From memory; the largest of the four regimes is
 *          taken: common practice, no source.
 * Throws   OutOfDomain for sizes that are not positive.
 */
export function faceTorque(
  rotor: Omit<FloodedRotorRequest, "length" | "radialGap" | "axialGap"> & { readonly axialGap: number },
): number {
  const R = positive(rotor.radius, "rotor radius", "m");
  const G = positive(rotor.axialGap, "axial gap", "m") / R;
  const omega = 2 * Math.PI * positive(rotor.rotationRate, "rotation rate", "rev/s");
  const Re = (omega * R * R) / positive(rotor.kinematicViscosity, "kinematic viscosity", "m²/s");
  const C_m = Math.max(
    (2 * Math.PI) / (G * Re),
    3.7 * G ** 0.1 * Re ** -0.5,
    0.08 * G ** (-1 / 6) * Re ** -0.25,
    0.102 * G ** 0.1 * Re ** -0.2,
  );
  return 0.5 * C_m * positive(rotor.density, "density", "kg/m³") * omega ** 2 * R ** 5;
}

/**
 * Estimate of what water in the gaps of a flooded motor costs, where no wet run was made.
 *
 * Source   `cylinderTorque` for the mantle and `faceTorque` for both faces, added: common practice, no source.
 * Error    taken as 30 %, standard uncertainty: the formulas hold for smooth cylinders and discs. A wet run is better.
 * Throws   OutOfDomain as its parts.
 */
export function floodedRotorDrag(rotor: FloodedRotorRequest): FloodedRotorDrag {
  const cylinder = cylinderTorque(rotor);
  const faces = rotor.axialGap === null ? 0 : faceTorque({ ...rotor, axialGap: rotor.axialGap });
  const omega = 2 * Math.PI * rotor.rotationRate;
  const torque = cylinder + faces;
  return {
    torque: uncertain(torque, WORTH * torque),
    power: uncertain(torque * omega, WORTH * torque * omega),
    cylinderTorque: cylinder,
    faceTorque: faces,
    gapReynolds: (omega * rotor.radius * rotor.radialGap) / rotor.kinematicViscosity,
    discReynolds: (omega * rotor.radius ** 2) / rotor.kinematicViscosity,
    warnings: [estimateOnly(torque * omega)],
  };
}

function estimateOnly(power: number): Warning {
  return warning({
    code: "motor.wet-loss-estimated",
    where: "flooded rotor",
    found: `About ${formatNumber(power, 2)} W is an estimate from gap sizes, for smooth surfaces; magnets, slots and grit in the gap add to it`,
    needed: "a run of the flooded motor without propeller",
    mend: "Run it wet and dry at the same throttles, and the difference is measured",
  });
}

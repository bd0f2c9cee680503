import type { AddedMass } from "../../model/vehicle/drag.ts";
import { positive } from "../../quantity/domain.ts";
import { InputProblem, OutOfDomain } from "../../quantity/problem.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";

/** Parts of the displaced mass (and of its moment of inertia) that a moving spheroid drags along. */
export interface SpheroidCoefficients {
  /** k_1, along the long axis. */ readonly axial: number;
  /** k_2, across it. */ readonly lateral: number;
  /** k', turning about a short axis, of the moment of inertia of the displaced water. */ readonly turning: number;
}

/** Where atanh(e) − e loses more than two digits the series takes over; it then needs some 15 terms. */
const SERIES_BELOW = 0.1;
const SERIES_TERMS = 24;

/**
 * Added mass coefficients of a prolate spheroid with half axes a ≥ b in deep water.
 *
 *   e² = 1 − (b/a)²,  S = (artanh e − e)/e³,  α = 2 (1 − e²) S,  β = 1 − (1 − e²) S
 *   k_1 = α/(2 − α),  k_2 = β/(2 − β),  k' = e⁴ (β − α)² / {(2 − e²) [2 e² − (2 − e²)(β − α)]}
 *
 * S and (β − α)/e² = Σ e^2k [3/(2k+3) − 3/(2k+5)] are summed as series near the sphere, where the formulas cancel.
 *
 * Source   Lamb, Hydrodynamics, 6th ed. (1932), art. 114, 115, 373 (article of the moment from memory).
 * Assumes  no walls, no free surface, no viscosity.
 * Range    a/b from 1; 1 is the sphere: ½, ½, 0.
 * Error    none within the assumptions; a real hull with frames and holes differs by some 20 %.
 * Throws   OutOfDomain for a/b below 1.
 *
 * @example spheroidCoefficients(2).axial // 0.21002
 */
export function spheroidCoefficients(ratio: number): SpheroidCoefficients {
  if (!(ratio >= 1 && Number.isFinite(ratio))) {
    throw new OutOfDomain({ found: `a/b is ${ratio}`, needed: "1 or more, finite", mend: "Swap length and diameter" });
  }
  const ee = 1 - 1 / ratio ** 2;
  const { S, T } = ee < SERIES_BELOW ? bySeries(ee) : closed(ee);
  const alpha = 2 * (1 - ee) * S;
  const beta = 1 - (1 - ee) * S;
  return {
    axial: alpha / (2 - alpha),
    lateral: beta / (2 - beta),
    turning: (ee ** 3 * T * T) / ((2 - ee) * (2 - (2 - ee) * T)),
  };
}

/** S and T = (β − α)/e². */
function closed(ee: number) {
  const e = Math.sqrt(ee);
  const S = (Math.atanh(e) - e) / e ** 3;
  return { S, T: (1 - 3 * (1 - ee) * S) / ee };
}

function bySeries(ee: number) {
  let [S, T, power] = [0, 0, 1];
  for (let k = 0; k < SERIES_TERMS; k++) {
    S += power / (2 * k + 3);
    T += power * (3 / (2 * k + 3) - 3 / (2 * k + 5));
    power *= ee;
  }
  return { S, T };
}

export interface Spheroid {
  /** Length along its axis, m. */ readonly length: number;
  /** Greatest diameter, m. */ readonly diameter: number;
  /** Density of the water, kg/m³. */ readonly density: number;
  /** Along the axis or across it. */ readonly motion: "axial" | "lateral";
}

/**
 * Added mass of a prolate spheroid, kg; of a sphere where length and diameter are equal.
 *
 *   m_a = k ρ π l d²/6
 *
 * Source   Lamb, Hydrodynamics, 6th ed. (1932), art. 92 (sphere: half the displaced mass), 114.
 * Throws   OutOfDomain for sizes or density not greater than 0; InputProblem `vehicle.added-mass-oblate` for a body
 *          shorter than wide.
 *
 * @example spheroidAddedMass({ length: 0.2, diameter: 0.2, density: 1000, motion: "axial" }) // 2.0944 kg
 */
export function spheroidAddedMass({ length, diameter, density, motion }: Spheroid): number {
  const l = positive(length, "length", "m");
  const d = positive(diameter, "diameter", "m");
  const rho = positive(density, "density", "kg/m³");
  if (l < d) {
    throw new InputProblem({
      code: "vehicle.added-mass-oblate",
      where: "added mass",
      found: `the spheroid is ${l} m long and ${d} m wide`,
      needed: "a length of at least the diameter: flattened bodies are not in the formula",
      mend: "Give the added mass in kg, or the sizes of a body that is longer than wide",
    });
  }
  return (spheroidCoefficients(l / d)[motion] * rho * Math.PI * l * d * d) / 6;
}

/** Added mass of a document, kg, in water of `density` (kg/m³). Throws as `spheroidAddedMass`. */
export function resolvedAddedMass(given: AddedMass, density: number): Uncertain {
  if (given.from === "typed") return uncertain(given.mass, given.standardUncertainty);
  const mass = spheroidAddedMass({ ...given, density });
  return uncertain(mass, mass * given.relativeUncertainty);
}

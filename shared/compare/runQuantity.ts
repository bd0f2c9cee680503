import type { CoefficientFit, Reduction } from "../model/reduction.ts";
import { combined } from "../numeric/combined.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";

/** Stands for "without limit" in results, as JSON has no infinity; the Student factor is the normal one long before. */
export const UNLIMITED_DEGREES_OF_FREEDOM = 1e9;

/** A run's value of the quantity under comparison, with its doubt split by whether another run can share it. */
export interface RunQuantity {
  readonly value: number;
  /** Relative standard uncertainty from what differs between the points of the run. */
  readonly independent: number;
  readonly degreesOfFreedom: number;
  /** Relative, signed effect of one standard uncertainty of each cause that all points share, by its key. */
  readonly common: ReadonlyMap<string, number>;
}

/** Exponents of K_T, C_P and diameter in a quantity that is compared; the last counts only as built. */
interface Exponents {
  readonly thrust: number;
  readonly power: number;
  readonly diameter: number;
}

/** K_T: thrust at equal rotation rate, diameter and density; as built T ~ K_T D⁴. */
const EQUAL_RATE: Exponents = { thrust: 1, power: 0, diameter: 4 };
/** C_P: shaft power at equal rotation rate. */
const EQUAL_RATE_POWER: Exponents = { thrust: 0, power: 1, diameter: 5 };
/** K_T C_P^(−2/3): thrust at equal shaft power, diameter and density, since T ~ K_T n² D⁴, P ~ C_P n³ D⁵. */
const EQUAL_SHAFT_POWER: Exponents = { thrust: 1, power: -2 / 3, diameter: 2 / 3 };
/** C_P K_T^(−3/2): shaft power at equal thrust; the inverse of the static merit. */
const EQUAL_THRUST: Exponents = { thrust: -3 / 2, power: 1, diameter: -1 };
/** K_T^(3/2)/C_P: static merit but for its constant, which cancels in a ratio; it does not know the diameter. */
const STATIC_MERIT: Exponents = { thrust: 3 / 2, power: -1, diameter: 0 };

export const thrustCoefficientOf = (run: Reduction): RunQuantity => quantityOf(run, EQUAL_RATE);
export const powerCoefficientOf = (run: Reduction): RunQuantity => quantityOf(run, EQUAL_RATE_POWER);
export const equalShaftPowerThrustOf = (run: Reduction): RunQuantity => quantityOf(run, EQUAL_SHAFT_POWER);
export const equalThrustPowerOf = (run: Reduction): RunQuantity => quantityOf(run, EQUAL_THRUST);
export const staticMeritOf = (run: Reduction): RunQuantity => quantityOf(run, STATIC_MERIT);

/**
 * The same with the diameters as they are. What the diameter is off by cancels: thrust and power were measured, and the
 * coefficients carry the diameter with the opposite power.
 */
export const asBuilt = {
  equalRate: (run: Reduction) => withDiameter(run, EQUAL_RATE),
  equalShaftPower: (run: Reduction) => withDiameter(run, EQUAL_SHAFT_POWER),
  equalThrust: (run: Reduction) => withDiameter(run, EQUAL_THRUST),
};

function withDiameter(run: Reduction, exponents: Exponents): RunQuantity {
  const quantity = quantityOf(run, exponents);
  const common = new Map([...quantity.common].filter(([key]) => !key.startsWith(DIAMETER_KEY)));
  return { ...quantity, value: quantity.value * run.diameter.value ** exponents.diameter, common };
}

/** How the key of a diameter as a cause of doubt begins. */
export const DIAMETER_KEY = "diameter:";

/**
 * K_T^a C_P^b of a run. Scatter of the thrust and of the power points is taken as independent. A cause that reaches
 * both coefficients under one key is taken to move them the same way, as diameter, density and rotation rate do, so it
 * partly cancels.
 */
function quantityOf({ source, thrustFit, powerFit }: Reduction, exponents: Exponents): RunQuantity {
  const fits = [
    ...(exponents.thrust === 0 ? [] : [{ fit: thrustFit, exponent: exponents.thrust, name: "thrust coefficient" }]),
    ...(exponents.power === 0 || powerFit === null
      ? []
      : [{ fit: powerFit, exponent: exponents.power, name: "power coefficient" }]),
  ];
  let value = 1;
  const common = new Map<string, number>();
  const parts: { standardUncertainty: number; degreesOfFreedom: number }[] = [];
  for (const { fit, exponent, name } of fits) {
    const coefficient = fit.coefficient.value;
    if (!(coefficient > 0)) throw notPositive(source.fileName, name, coefficient);
    value *= coefficient ** exponent;
    parts.push({
      standardUncertainty: Math.abs(exponent) * (fit.independentUncertainty / coefficient),
      degreesOfFreedom: independentDegreesOfFreedom(fit),
    });
    for (const { key, standardUncertainty } of fit.components) {
      common.set(key, (common.get(key) ?? 0) + (exponent * standardUncertainty) / coefficient);
    }
  }
  const own = combined(parts);
  return {
    value,
    independent: own.standardUncertainty,
    degreesOfFreedom: own.degreesOfFreedom,
    common,
  };
}

/**
 * Degrees of freedom of the independent part alone. A fit states them for the whole, ν = u⁴/(u_ind⁴/ν_ind) where the
 * common causes are well known; where those are not, this errs on the low side, but a spread has one at least.
 */
function independentDegreesOfFreedom(fit: CoefficientFit): number {
  const { independentUncertainty, commonUncertainty, degreesOfFreedom } = fit;
  if (independentUncertainty === 0 || degreesOfFreedom >= UNLIMITED_DEGREES_OF_FREEDOM) return Infinity;
  const share = independentUncertainty / Math.hypot(independentUncertainty, commonUncertainty);
  return Math.max(1, degreesOfFreedom * share ** 4);
}

function notPositive(fileName: string, name: string, value: number): OutOfDomain {
  return new OutOfDomain({
    code: "compare.not-positive",
    where: fileName,
    found: `The ${name} of this run is ${formatNumber(value)}`,
    needed: "a coefficient greater than 0, or no ratio can be formed",
    mend: "Check the direction of thrust and the tare of the run, or leave it out",
  });
}

import type { BladeSection, CarryOver, CarryOverFactor, CarryOverShape } from "../model/carryOver.ts";
import type { Doubtful, DrivePropeller, OpenWater, PropellerCurve } from "../model/drivePropeller.ts";
import type { FluidState } from "../model/fluid.ts";
import { reynoldsFactor } from "../propeller/carryOver/reynoldsFactor.ts";

/** Where coefficients hold: fluid and a typical rotation rate. */
export interface TurningIn {
  readonly fluid: FluidState;
  /** rev/s. */ readonly rotationRate: number;
}

export interface Carriage {
  /** Where the coefficients were measured, at the greatest rotation rate. */ readonly from: TurningIn;
  /** Where the propeller is to work. */ readonly to: TurningIn;
  readonly blade?: BladeSection;
  readonly shape?: CarryOverShape;
}

export interface CarriedPropeller {
  /** With the factor applied. */ readonly propeller: DrivePropeller;
  readonly factor: CarryOverFactor;
  readonly reynolds: CarryOver["reynolds"];
}

/**
 * A propeller with its coefficients carried to the Reynolds number at work; the propeller that was given is the one
 * without, so that both can be shown.
 *
 *   K = f K_measured,   (u/K)² = (u/K)²_measured + u_f²,   r K_T K_Q u_T u_Q unchanged
 *
 * Source   `reynoldsFactor`.
 * Assumes  one factor for all advance ratios and, turning astern, the same as ahead, for which nothing is measured; the
 *          errors of the two factors independent. The factor hangs on the logarithm of the rotation rate: that of an
 *          operating point found without it is near enough.
 * Throws   as `reynoldsFactor`.
 */
export function carriedPropeller(propeller: DrivePropeller, carriage: Carriage): CarriedPropeller {
  return carriedTo(propeller, propeller.diameter, carriage);
}

/**
 * The same propeller in another size: exact copies have the same coefficients at the same advance ratio, but for the
 * Reynolds number. Without a rotation rate of its own, the copy turns at the tip speed of the first.
 *
 * Source, assumes, throws as `carriedPropeller`; similarity, e.g. Carlton, Marine Propellers and Propulsion, ch. 6. The
 *          finish is no copy: layer steps and edges stay as thick as the printer makes them, a doubt that is not counted.
 */
export function scaledPropeller(
  propeller: DrivePropeller,
  diameter: Doubtful,
  { to, ...carriage }: Omit<Carriage, "to"> & { readonly to: Omit<TurningIn, "rotationRate"> & Partial<TurningIn> },
): CarriedPropeller {
  const atTipSpeed = (carriage.from.rotationRate * propeller.diameter.value) / diameter.value;
  const carried = carriedTo(propeller, diameter, { ...carriage, to: { rotationRate: atTipSpeed, ...to } });
  // The copy is another thing to make: what the first weighs and costs says nothing of it.
  const { mass: _mass, price: _price, ...copy } = carried.propeller;
  const millimetres = Number((1000 * propeller.diameter.value).toPrecision(4));
  return {
    ...carried,
    propeller: { ...copy, source: "scaled", from: `scaled from ${millimetres} mm; ${copy.from}`.slice(0, 300) },
  };
}

function carriedTo(propeller: DrivePropeller, diameter: Doubtful, { from, to, ...blade }: Carriage): CarriedPropeller {
  const { ahead, astern, nozzle } = propeller;
  const { thrustCoefficient, torqueCoefficient } = ahead;
  const { factor, reynolds } = reynoldsFactor({
    measured: {
      ...{ ...from, nozzle, advanceRatio: 0, diameter: propeller.diameter.value },
      ...{ thrustCoefficient, torqueCoefficient },
    },
    target: { ...to, nozzle, diameter: diameter.value },
    ...blade,
  });
  return {
    ...{ factor, reynolds },
    propeller: {
      ...propeller,
      diameter,
      ahead: times(ahead, factor),
      ...(astern !== undefined && { astern: times(astern, factor) }),
    },
  };
}

function times(curve: PropellerCurve, factor: CarryOverFactor): PropellerCurve {
  const thrustCoefficient = timesOne(curve.thrustCoefficient, factor.thrust, factor.thrustUncertainty);
  const torqueCoefficient = timesOne(curve.torqueCoefficient, factor.torque, factor.torqueUncertainty);
  const before = relative(curve.thrustCoefficient) * relative(curve.torqueCoefficient);
  const after = relative(thrustCoefficient) * relative(torqueCoefficient);
  return {
    ...{ thrustCoefficient, torqueCoefficient },
    correlation: after > 0 ? (curve.correlation * before) / after : curve.correlation,
    ...(curve.openWater && { openWater: timesOpenWater(curve.openWater, factor) }),
  };
}

function timesOne({ value, standardUncertainty }: Doubtful, factor: number, relativeDoubt: number): Doubtful {
  return {
    value: factor * value,
    standardUncertainty: factor * Math.hypot(standardUncertainty, relativeDoubt * value),
  };
}

const relative = ({ value, standardUncertainty }: Doubtful) => standardUncertainty / value;

function timesOpenWater({ thrust, torque, greatestAdvanceRatio }: OpenWater, factor: CarryOverFactor): OpenWater {
  return {
    thrust: thrust.map((c) => c * factor.thrust),
    torque: torque.map((c) => c * factor.torque),
    greatestAdvanceRatio,
  };
}

import { formatNumber } from "../../quantity/format.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { type JudgedPlateau, plateauName } from "../judgedPlateau.ts";
import type { RunFacts } from "../runFacts.ts";
import { likelyCauses } from "./likelyCauses.ts";

/** Points that no propeller or motor can reach. Standard uncertainties that a point must lie beyond the limit. */
const BEYOND = 2;

/** Thrust above the momentum limit, shaft power above electrical power, shaft power below zero, merit above the ideal. */
export function powerChecks(facts: RunFacts): Warning[] {
  return [aboveMomentumLimit(facts), shaftAboveElectrical(facts), noShaftPower(facts), meritAboveIdeal(facts)].filter(
    (found) => found !== null,
  );
}

function aboveMomentumLimit(facts: RunFacts): Warning | null {
  const { used, propeller, fluid, powerSource, channels } = facts;
  const above = used.filter(({ measured, momentumLimit, thrustPoint }) => {
    const doubt = Math.hypot(
      thrustPoint.scatter,
      thrustPoint.tareUncertainty,
      channels.thrust.relativeUncertainty * measured.thrust.mean,
    );
    return momentumLimit !== null && Math.abs(measured.thrust.mean) - BEYOND * doubt > momentumLimit;
  });
  const worst = mostBeyond(above, ({ measured, momentumLimit }) => Math.abs(measured.thrust.mean) / momentumLimit!);
  if (!worst) return null;
  const kind = propeller.nozzle ? "propeller in a nozzle" : "open propeller";
  const power = powerSource === "torque" ? "shaft power" : "electrical power";
  const causes = likelyCauses(facts.thrust.fit.coefficient);
  return warning({
    code: "bench.above-momentum-limit",
    where: plateauName(worst),
    found: `${formatNumber(Math.abs(worst.measured.thrust.mean))} N from ${formatNumber(worst.boundingPower!)} W of ${power} can not be${others(above)}`,
    needed: `at most ${formatNumber(worst.momentumLimit!)} N, what an ideal ${kind} of ${formatNumber(propeller.diameter * 1000)} mm makes of it in a fluid of ${formatNumber(fluid.density, 4)} kg/m³`,
    mend: `Likely: ${(causes.length > 0 ? causes : ["gram-force read as newton", "lever ratio", "diameter", "current or voltage scale"]).join("; ")}`,
  });
}

function shaftAboveElectrical({ used, channels }: RunFacts): Warning | null {
  const above = used.filter(({ shaftPower, measured }) => {
    if (!shaftPower || !measured.electricalPower) return false;
    const calibration = Math.hypot(
      channels.torque?.relativeUncertainty ?? 0,
      channels.current?.relativeUncertainty ?? 0,
    );
    const doubt = Math.hypot(shaftPower.scatter, measured.electricalPower.scatter, calibration * shaftPower.mean);
    return shaftPower.mean - BEYOND * doubt > measured.electricalPower.mean;
  });
  const worst = mostBeyond(above, ({ shaftPower, measured }) => shaftPower!.mean / measured.electricalPower!.mean);
  if (!worst) return null;
  return warning({
    code: "bench.shaft-above-electrical",
    where: plateauName(worst),
    found: `${formatNumber(worst.shaftPower!.mean)} W at the shaft from ${formatNumber(worst.measured.electricalPower!.mean)} W of electrical power can not be${others(above)}`,
    needed: "less shaft power than electrical power",
    mend: "Likely: unit or lever ratio of the torque; scale of the current sensor; electrical rpm read as shaft rpm",
  });
}

function noShaftPower({ used, powerSource, thrust }: RunFacts): Warning | null {
  if (powerSource === null) return null;
  // Beyond the advance ratio of zero thrust the water drives the propeller.
  const driven = used.filter(({ advance, thrustPoint }) => advance && thrustPoint.y * thrust.fit.coefficient <= 0);
  const without = used.filter(
    (plateau) => !driven.includes(plateau) && (!plateau.shaftPower || plateau.shaftPower.mean <= 0),
  );
  const first = without[0];
  if (!first) return null;
  const fromTorque = powerSource === "torque";
  return warning({
    code: "bench.no-shaft-power",
    where: plateauName(first),
    found: `the shaft power comes out as ${first.shaftPower ? `${formatNumber(first.shaftPower.mean)} W` : "unknown"}${others(without)}; such plateaus are not in the power fit`,
    needed: "a power greater than 0 W",
    mend: fromTorque
      ? "If the torque cell is mounted the other way, turn the sign round (correction factor -1); else check its tare"
      : "Check that the motor's speed constant, no-load current and pole pairs belong to the motor on the stand",
  });
}

function meritAboveIdeal({ merit, propeller, powerSource }: RunFacts): Warning | null {
  const ideal = propeller.nozzle ? Math.SQRT2 : 1;
  if (merit === null || merit.value < ideal) return null;
  return warning({
    code: "bench.merit-above-ideal",
    where: "static merit",
    found: `the static merit is ${formatNumber(merit.value)}, more than an ideal disc has`,
    needed: `less than ${formatNumber(ideal)}${propeller.nozzle ? " in a nozzle" : " for an open propeller"}; good ones reach 0.6 to 0.75 of the ideal`,
    mend:
      powerSource === "torque"
        ? "Check unit and lever of thrust and torque, and the diameter"
        : "Check the motor's constants, the current sensor, the unit of thrust and the diameter",
  });
}

function mostBeyond(
  plateaus: readonly JudgedPlateau[],
  excess: (plateau: JudgedPlateau) => number,
): JudgedPlateau | undefined {
  return plateaus.toSorted((a, b) => excess(b) - excess(a))[0];
}

function others(plateaus: readonly JudgedPlateau[]): string {
  return plateaus.length > 1 ? ` (the same in ${plateaus.length} plateaus)` : "";
}

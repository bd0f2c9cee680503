import type { Propeller } from "../model/parts/propeller.ts";
import type { Recipe } from "../model/recipe.ts";
import { discArea } from "../propeller/coefficients.ts";
import { idealBollardThrust, idealNozzleThrust } from "../propeller/momentum.ts";
import { type Advance, advanceOf } from "./advance/advanceSpeed.ts";
import { type Turning, turningOf } from "./advance/turning.ts";
import { type FitPoint, repeatabilityOf } from "./coefficientFit.ts";
import { thrustScatterOf } from "./jointScatter.ts";
import type { MeasuredPlateau } from "./measuredPlateau.ts";
import { type PooledScatter, pooledScatter } from "./pooledScatter.ts";
import { type PowerSource, powerFromMotor, powerFromTorque, type ShaftPower, type StandMotor } from "./shaftPowerOf.ts";
import { type TareLine, tareUncertainty } from "./tareLine.ts";

/** A plateau with its points for the fits, and whether it counts in them. */
export interface JudgedPlateau {
  /** From 1, in the order of the log. */
  readonly number: number;
  readonly measured: MeasuredPlateau;
  readonly used: boolean;
  readonly leftOutBecause: string | null;
  /** Left out for no other reason than that it turns against the main direction. */
  readonly turnsOtherWay: boolean;
  /** How it moves through the water; null in a run without advance speed. */
  readonly advance: Advance | null;
  readonly thrustPoint: FitPoint;
  readonly shaftPower: ShaftPower | null;
  readonly powerPoint: FitPoint | null;
  /** Power that bounds the thrust: shaft power where a torque cell gave it, else electrical power. W */
  readonly boundingPower: number | null;
  /** Greatest thrust for it by momentum theory, N. */
  readonly momentumLimit: number | null;
}

export interface JudgeSetting {
  readonly recipe: Recipe;
  readonly propeller: Propeller;
  readonly density: number;
  readonly thrustTare: TareLine;
  readonly torqueTare: TareLine | null;
  readonly powerSource: PowerSource | null;
  readonly standMotor: StandMotor | null;
  readonly idleCommand: number | null;
}

/** Beyond this relative standard deviation the propeller hunts or stutters, as in the dead band; no steady running. */
const UNEVEN = 0.1;

/** What the search takes needs this look; what a person set by hand was looked at. */
const FOUND_BY_SEARCH: ReadonlySet<string> = new Set(["command", "rotationRate"]);

const TURNS_OTHER_WAY = "the propeller turns the other way";

/** Decides for each plateau whether it counts, and prepares its points. `turning`: how the senses of rotation were told. */
export function judged(
  plateaus: readonly MeasuredPlateau[],
  setting: JudgeSetting,
): { plateaus: JudgedPlateau[]; turning: Turning } {
  const greatest = Math.max(...plateaus.map(({ thrust }) => Math.abs(thrust.mean)));
  const scatters = pooledScatter(plateaus.map(thrustScatterOf));
  const seen = plateaus.map((measured, i) => ({
    measured,
    thrustPoint: thrustPointOf(measured, setting, { greatest, own: scatters[i]! }),
    advance: advanceOf(measured, setting.recipe, setting.propeller.diameter),
  }));
  const turning = turningOf(seen, setting.idleCommand);
  const powers = pooledPowers(plateaus.map((measured) => shaftPowerOf(measured, setting)));
  const judgedOnes = seen.map(({ measured, thrustPoint, advance: moving }, i) => {
    const direction = turning.directions[i]!;
    // Ahead is where the propeller pushes to: one that turns astern advances when it is towed astern.
    const advance = moving && { ...moving, ratio: direction * moving.ratio };
    const leftOutBecause = reasonAgainst(measured, setting, { otherWay: direction !== turning.main, advance });
    const shaftPower = powers[i]!;
    const boundingPower = boundOf(measured, shaftPower, setting.powerSource);
    return {
      number: i + 1,
      measured,
      used: leftOutBecause === null,
      leftOutBecause,
      turnsOtherWay: leftOutBecause === TURNS_OTHER_WAY,
      advance,
      thrustPoint,
      shaftPower,
      powerPoint: shaftPower ? powerPointOf(measured, shaftPower, setting) : null,
      boundingPower,
      momentumLimit: boundingPower === null ? null : momentumLimit(boundingPower, setting),
    };
  });
  return { plateaus: judgedOnes, turning };
}

/** Shaft powers with the scatter of each judged by that of all. */
function pooledPowers(powers: readonly (ShaftPower | null)[]): (ShaftPower | null)[] {
  const known = powers.filter((power) => power !== null);
  const scatters = new Map(pooledScatter(known.map(({ joint }) => joint)).map((own, i) => [known[i]!, own]));
  return powers.map((power) => power && { ...power, ...scatters.get(power)! });
}

/** Plateau in words: "Plateau 3 (lines 812 to 1024)". */
export function plateauName({ number, measured: { firstLine, lastLine } }: JudgedPlateau): string {
  return `Plateau ${number} (${firstLine === lastLine ? `line ${firstLine}` : `lines ${firstLine} to ${lastLine}`})`;
}

function reasonAgainst(
  plateau: MeasuredPlateau,
  setting: JudgeSetting,
  { otherWay, advance }: { readonly otherWay: boolean; readonly advance: Advance | null },
): string | null {
  const out = setting.recipe.leftOut.find((entry) =>
    "line" in entry
      ? entry.line >= plateau.firstLine && entry.line <= plateau.lastLine
      : plateau.middle >= entry.start && plateau.middle <= entry.end,
  );
  if (out) return out.reason;
  const { standardDeviation, mean } = plateau.rotationRate;
  if (FOUND_BY_SEARCH.has(plateau.span.foundBy) && standardDeviation > UNEVEN * mean) {
    return `the rotation rate varies by ${((100 * standardDeviation) / mean).toFixed(0)} % within it, as in a dead band`;
  }
  if (otherWay) return TURNS_OTHER_WAY;
  if (advance && !advance.isAtRest && advance.ratio < 0) {
    return `the water comes from behind (advance ratio ${advance.ratio.toFixed(2)})`;
  }
  return null;
}

function thrustPointOf(
  plateau: MeasuredPlateau,
  setting: JudgeSetting,
  { greatest, own }: { readonly greatest: number; readonly own: PooledScatter },
): FitPoint {
  const { rotationRate, thrust, thrustTare } = plateau;
  const n = rotationRate.mean;
  const x = setting.density * n ** 2 * setting.propeller.diameter ** 4;
  return {
    x,
    y: thrust.mean,
    scatter: own.scatter,
    scatterDegreesOfFreedom: own.degreesOfFreedom,
    scatterCommonDegreesOfFreedom: own.commonDegreesOfFreedom,
    rounding: thrust.rounding,
    repeatability: repeatabilityOf(thrust.mean, greatest),
    roundingX: (2 * x * rotationRate.rounding) / n,
    tare: thrustTare,
    perTare: -1,
    tareUncertainty: tareUncertainty(setting.thrustTare, thrustTare),
  };
}

function powerPointOf(plateau: MeasuredPlateau, power: ShaftPower, setting: JudgeSetting): FitPoint {
  const { rotationRate, torqueTare } = plateau;
  const n = rotationRate.mean;
  const x = setting.density * n ** 3 * setting.propeller.diameter ** 5;
  const tare = power.perTorque !== 0 ? torqueTare : null;
  return {
    x,
    y: power.mean,
    scatter: power.scatter,
    scatterDegreesOfFreedom: power.degreesOfFreedom,
    scatterCommonDegreesOfFreedom: power.commonDegreesOfFreedom,
    rounding: power.rounding,
    repeatability: repeatabilityOf(power.mean, power.mean),
    // Shaft power itself hangs on the rotation rate that was read, so that only the rest of the cube is left.
    roundingX: (Math.abs(3 - power.byRate) * x * rotationRate.rounding) / n,
    tare,
    perTare: -power.perTorque,
    tareUncertainty:
      tare && setting.torqueTare ? Math.abs(power.perTorque) * tareUncertainty(setting.torqueTare, tare) : 0,
  };
}

function shaftPowerOf(plateau: MeasuredPlateau, { powerSource, standMotor }: JudgeSetting): ShaftPower | null {
  if (powerSource === "torque") return powerFromTorque(plateau);
  return powerSource === "motorConstants" && standMotor ? powerFromMotor(plateau, standMotor) : null;
}

/** A torque cell measures the shaft; the motor's constants only infer it, so there the electrical power is the bound. */
function boundOf(plateau: MeasuredPlateau, shaft: ShaftPower | null, source: PowerSource | null): number | null {
  const power = source === "torque" ? shaft?.mean : plateau.electricalPower?.mean;
  return power !== undefined && power > 0 ? power : null;
}

function momentumLimit(shaftPower: number, { propeller, density }: JudgeSetting): number {
  const disc = { shaftPower, discArea: discArea(propeller.diameter), density };
  return propeller.nozzle ? idealNozzleThrust(disc) : idealBollardThrust(disc);
}

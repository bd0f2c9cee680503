import { median } from "../../numeric/median.ts";
import type { FitPoint } from "../coefficientFit.ts";
import { weighingUncertainty } from "../coefficientFit.ts";
import type { MeasuredPlateau } from "../measuredPlateau.ts";
import type { Advance } from "./advanceSpeed.ts";

/** Which way each plateau turns: 1 ahead, -1 astern. */
export interface Turning {
  readonly directions: readonly (1 | -1)[];
  /** What tells them apart; null where all turn one way. */
  readonly foundBy: "rotationRate" | "command" | "thrust" | null;
  /** The way whose plateaus make the coefficients of the run. */
  readonly main: 1 | -1;
}

export interface TurningPlateau {
  readonly measured: MeasuredPlateau;
  readonly thrustPoint: FitPoint;
  readonly advance: Advance | null;
}

/** Plateaus that a fit takes at least. */
const ENOUGH = 2;

/**
 * Sense of rotation of each plateau: from the sign of the rotation rate; where the log counts turns without a sign, from
 * the command against its idle value; where all commands lie on one side, from the sign of the thrust.
 */
export function turningOf(plateaus: readonly TurningPlateau[], idleCommand: number | null): Turning {
  const found = [byRotationRate(plateaus), byCommand(plateaus, idleCommand), byThrust(plateaus)] as const;
  const foundBy = (["rotationRate", "command", "thrust"] as const).find((_, i) => new Set(found[i]).size > 1) ?? null;
  const directions =
    foundBy === null
      ? byEither(found[0], found[1])
      : found[foundBy === "rotationRate" ? 0 : foundBy === "command" ? 1 : 2];
  const ahead = directions.filter((direction) => direction > 0).length;
  return { directions, foundBy, main: ahead >= Math.min(ENOUGH, directions.length) ? 1 : -1 };
}

/** All turn one way: astern if either the rotation rate or the command says so. */
function byEither(rates: readonly (1 | -1)[], commands: readonly (1 | -1)[]): (1 | -1)[] {
  return rates.map((rate, i) => (rate < 0 || commands[i]! < 0 ? -1 : 1));
}

function byRotationRate(plateaus: readonly TurningPlateau[]): (1 | -1)[] {
  return plateaus.map(({ measured }) => measured.turnSign);
}

function byCommand(plateaus: readonly TurningPlateau[], idle: number | null): (1 | -1)[] {
  return plateaus.map(({ measured: { command } }) => (idle !== null && command !== null && command < idle ? -1 : 1));
}

/** Standard uncertainties by which a thrust must be below zero, and part of the usual coefficient it must have. */
const CLEAR = 4;
const COMPARABLE = 0.3;

/**
 * A plateau at rest that pushes astern turns astern. One at speed may push astern while it turns ahead, as a propeller
 * does that is towed beyond the advance ratio of zero thrust; and a little thrust below zero is a tare that is off.
 */
function byThrust(plateaus: readonly TurningPlateau[]): (1 | -1)[] {
  const still = plateaus.filter(({ advance }) => advance === null || advance.isAtRest);
  const coefficients = still.map(({ thrustPoint: { x, y } }) => y / x).filter((K) => K > 0);
  if (coefficients.length < ENOUGH) return plateaus.map(() => 1);
  const usual = median(Float64Array.from(coefficients));
  return plateaus.map(({ thrustPoint, advance }) => {
    const { x, y } = thrustPoint;
    const atRest = advance === null || advance.isAtRest;
    return atRest && y < -CLEAR * weighingUncertainty(thrustPoint) && y / x < -COMPARABLE * usual ? -1 : 1;
  });
}

import { InputProblem } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import type { JudgedPlateau } from "../judgedPlateau.ts";
import { type MovingPlateau, makeCurves } from "./advanceFit.ts";

/** Which plateau serves which result. */
export interface Grouping {
  readonly plateaus: readonly JudgedPlateau[];
  /** At rest in the water, turning ahead. */
  readonly bollard: readonly JudgedPlateau[];
  /** Those of the curves against the advance ratio, at rest or not; null in a bollard run. */
  readonly curve: readonly MovingPlateau[] | null;
  /** At rest, turning the other way. */
  readonly reverse: readonly JudgedPlateau[];
  readonly warnings: readonly Warning[];
}

/** Plateaus that a coefficient is reduced from at least. */
const FEWEST = 2;

const movesOf = (plateau: JudgedPlateau): plateau is MovingPlateau => plateau.advance !== null;
const isAtRest = ({ advance }: JudgedPlateau) => advance === null || advance.isAtRest;

/**
 * Sorts the plateaus by their sense of rotation and their speed through the water.
 * Throws InputProblem `bench.too-few-advance` where plateaus at speed make no curve and there is no bollard to go by.
 */
export function groupingOf(plateaus: readonly JudgedPlateau[], fileName: string): Grouping {
  const used = plateaus.filter((plateau) => plateau.used);
  const reverse = plateaus.filter((plateau) => plateau.turnsOtherWay && isAtRest(plateau));
  const bollard = used.filter(isAtRest);
  const groups = { bollard, reverse: reverse.length >= FEWEST ? reverse : [], warnings: [] };
  if (bollard.length === used.length) return { ...groups, plateaus, curve: null };
  const moving = used.filter(movesOf);
  if (makeCurves(moving)) return { ...groups, plateaus, curve: moving };
  if (bollard.length < FEWEST) throw tooFew(moving, fileName);
  const leftOutBecause = "it moves through the water, and there are too few such plateaus for a curve";
  return {
    ...groups,
    plateaus: plateaus.map((plateau) =>
      plateau.used && !isAtRest(plateau) ? { ...plateau, used: false, leftOutBecause } : plateau,
    ),
    curve: null,
    warnings: [onlyBollard(used.length - bollard.length)],
  };
}

function tooFew(moving: readonly MovingPlateau[], fileName: string): InputProblem {
  const ratios = moving.map(({ advance }) => advance.ratio.toFixed(3)).join(", ");
  return new InputProblem({
    code: "bench.too-few-advance",
    where: fileName,
    found: `the plateaus lie at the advance ratios ${ratios}`,
    needed: "at least three plateaus whose advance ratios differ by 0.05 or more, or two at rest",
    mend: "Tow or run at more speeds, or with more throttle steps at one speed; check unit and column of the advance speed",
  });
}

function onlyBollard(count: number): Warning {
  return warning({
    code: "bench.advance-left-out",
    where: "plateaus",
    found: `${count} ${count === 1 ? "plateau moves" : "plateaus move"} through the water, too few for a curve against the advance ratio`,
    needed: "at least three plateaus whose advance ratios differ by 0.05 or more",
    mend: "The coefficients are those of the plateaus at rest",
  });
}

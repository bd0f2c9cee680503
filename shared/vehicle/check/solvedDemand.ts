import type { LimitingPart } from "../../model/vehicle/motionAnswer.ts";
import type { DemandName } from "../../model/vehicle/requirementAnswer.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import { InputProblem } from "../../quantity/problem.ts";
import type { Told } from "../../quantity/told.ts";
import type { PullFor } from "../motion/linearMotion.ts";
import type { TetherBook } from "../motion/tetherBook.ts";
import type { VehicleDoubts } from "../propulsion/doubt.ts";
import type { Linear } from "../propulsion/firstOrder.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import type { VehicleNumbers } from "../propulsion/vehicleNumbers.ts";

/** A demand worked out, and a quick way to see whether other numbers meet it. */
export interface SolvedDemand {
  readonly demand: DemandName;
  readonly name: string;
  readonly unit: string;
  readonly needed: number;
  readonly better: "more" | "less";
  /** Null: it can not, or it is not known. */ readonly found: Linear | null;
  /** Force left at the speed that is needed, N, which says more surely whether it is met; absent: there is none. */
  readonly left?: Linear | null;
  /** What is known without a number; null: told by the number. */ readonly fixed: {
    readonly met: boolean;
    readonly text: string;
  } | null;
  readonly limitedBy: LimitingPart | null;
  /** Its speed rests on coefficients known at rest only: it is an upper bound. */ readonly atMost?: boolean;
  /** It is done while the depth is held, and has only what that leaves. */ readonly besideDepth?: boolean;
  /** Whether a draw meets it. */ readonly meets: (numbers: VehicleNumbers) => boolean;
}

export interface DemandQuestion {
  readonly vehicle: Vehicle;
  readonly model: PropulsionModel;
  readonly doubts: VehicleDoubts;
  /** The tether of the scenario, in its current and in any. */ readonly pullFor: PullFor;
  readonly tether: TetherBook;
  /** Why no interval can be stated of what is done while the depth is held; null: one can. */
  readonly why: string | null;
  /** How long it works, s, by first order. */ readonly endurance: EnduranceFound | EnduranceUnknown;
}

/** What the endurance room found for the time asked for. */
export interface EnduranceFound {
  readonly time: Told;
  readonly text: string;
  readonly limitedBy: LimitingPart;
}

/** Why it is not known how long it works, as the end of a sentence. */
export interface EnduranceUnknown {
  readonly unknown: string;
  readonly limitedBy: LimitingPart | null;
}

const never = () => false;

/** What can not be done at all, or is not known. */
export function lacking(
  base: Pick<SolvedDemand, "demand" | "name" | "unit" | "needed" | "better">,
  text: string,
  limitedBy: LimitingPart | null = null,
): SolvedDemand {
  return { ...base, found: null, fixed: { met: false, text }, limitedBy, meets: never };
}

/** What no thruster of the layout does. */
export function notPushed(base: Parameters<typeof lacking>[0], text: string): SolvedDemand {
  return lacking(base, text, { part: "layout", drive: null, limit: "layout", text });
}

/** Of a tether that does not reach. */
export const TOO_SHORT: LimitingPart = {
  ...{ part: "tether", drive: null, limit: "tether length" },
  text: "The length of the tether limits it: a longer one, or an upper end that is nearer.",
};

/** What comes out of a tether that does not reach is a demand that is not met, not a refusal of the whole answer. */
export function orShort(base: Parameters<typeof lacking>[0], solve: () => SolvedDemand): SolvedDemand {
  try {
    return solve();
  } catch (error) {
    if (error instanceof InputProblem && error.problem.code === "vehicle.tether-too-short")
      return lacking(base, `${error.problem.found}: ${error.problem.needed} is needed.`, TOO_SHORT);
    throw error;
  }
}

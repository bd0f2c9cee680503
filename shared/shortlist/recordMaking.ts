import { driveRequestOf } from "../drive/driveRequestOf.ts";
import type { DriveRequest } from "../model/drive.ts";
import type { DriveTrain } from "../model/driveTrain.ts";
import type { DriveRunning } from "../model/driveTrainPoint.ts";
import type { ShortlistRequirement } from "../model/shortlist.ts";
import { InputProblem, OutOfDomain } from "../quantity/problem.ts";
import { type DemandTable, demandTable } from "./demandSlots.ts";
import type { DoubtfulInput, Doubts, InputDoubt } from "./inputs.ts";

/** What records are made with. */
export interface Making {
  readonly requirement: ShortlistRequirement;
  readonly table: DemandTable;
  /** A drive of the first of each kind; a part is put in its place to see what it brings. */
  readonly first: DriveTrain;
}

export const AT_REST: DriveRunning = { throttle: 1, direction: "ahead", advanceSpeed: 0 };

/** What records of parts are made with; `parts` are put beside each. */
export function makingOf(requirement: ShortlistRequirement, parts: Chosen): Making {
  return { requirement, table: demandTable(requirement), first: drive(requirement, parts) };
}

type Chosen = Pick<DriveTrain, "motor" | "supply" | "propeller"> & Partial<Pick<DriveTrain, "controller" | "gear">>;

/** The drive train of some parts in the water of a requirement. */
export function drive(requirement: ShortlistRequirement, parts: Chosen): DriveTrain {
  const { thrusters, hotelPower, hotelPowerUncertainty, water, depth } = requirement;
  return {
    ...parts,
    ...{ thrusters, hotelPower, hotelPowerUncertainty, water },
    ...(depth !== undefined && { depth }),
  };
}

/** What the drive is asked at rest with `part` in its place; a refusal names that part. */
export function requestWith({ first }: Making, part: Partial<DriveTrain>, kind: string, name: string): DriveRequest {
  return toldFrom(`${kind} ${name}`, () => driveRequestOf({ ...first, ...part }, AT_REST).request);
}

/** The result of `action`; what it refuses is told from the part that it is about. */
export function toldFrom<T>(where: string, action: () => T): T {
  try {
    return action();
  } catch (reason) {
    if (reason instanceof InputProblem) throw reason.at(where);
    if (!(reason instanceof OutOfDomain)) throw reason;
    const { problem } = reason;
    throw new OutOfDomain({ ...problem, where: problem.where === "" ? where : `${where}, ${problem.where}` });
  }
}

/** Doubts of a request in these of its inputs, which have the same names here. */
export function doubtsOf({ uncertainties, correlations }: DriveRequest, names: readonly string[]): Doubts {
  const inputs = Object.entries(uncertainties).flatMap(([name, u]) =>
    names.includes(name) ? doubt(name as DoubtfulInput, u!) : [],
  );
  const within = correlations.filter(({ of, and }) => names.includes(of) && names.includes(and));
  return { inputs, correlations: within as Doubts["correlations"] };
}

/** The doubt of one input, in its unit; none where it is exact. */
export function doubt(input: DoubtfulInput, standardUncertainty: number): InputDoubt[] {
  return standardUncertainty > 0 ? [{ input, standardUncertainty }] : [];
}

interface Stated {
  readonly name: string;
  readonly mass?: number;
  readonly price?: number;
}

/** Name, mass (kg) and price of a part, with what counts where they are not stated. */
export function bought(making: Making, { name, mass, price }: Stated) {
  const unknown = unknownAmount(making);
  return { name, mass: mass ?? unknown, price: price ?? unknown };
}

/** What a mass or price that is not stated counts as. */
export function unknownAmount({ requirement }: Making): number {
  return requirement.notStated === "nothing" ? 0 : Number.NaN;
}

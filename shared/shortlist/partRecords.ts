import type { DrivePropeller } from "../model/drivePropeller.ts";
import type { SupplyAssembly } from "../model/driveTrain.ts";
import type { Controller } from "../model/parts/controller.ts";
import type { Gear } from "../model/parts/gear.ts";
import type { Motor } from "../model/parts/motor.ts";
import type { Warning } from "../quantity/warning.ts";
import type { Sizes } from "./combinations.ts";
import type { DemandTable } from "./demandSlots.ts";
import type {
  CommonInputs,
  ControllerInputs,
  CurveInputs,
  Doubts,
  GearInputs,
  MotorInputs,
  SupplyInputs,
} from "./inputs.ts";

/** What one part brings into every combination it is in. */
interface PartRecord<D> {
  readonly name: string;
  /** The part as it was given; absent: direct drive, or no controller. */ readonly document: D;
  /** kg; NaN where not stated. */ readonly mass: number;
  /** NaN where not stated. */ readonly price: number;
  readonly doubts: Doubts;
}

export interface MotorRecord extends PartRecord<Motor> {
  readonly inputs: MotorInputs;
}
export interface ControllerRecord extends PartRecord<Controller | undefined> {
  readonly inputs: ControllerInputs;
  /** False: it can not run astern. */ readonly turnsBothWays: boolean;
}
export interface SupplyRecord extends PartRecord<SupplyAssembly> {
  readonly inputs: SupplyInputs;
}
export interface GearRecord extends PartRecord<Gear | undefined> {
  readonly inputs: GearInputs;
}
export interface PropellerRecord extends PartRecord<DrivePropeller> {
  /** m. */ readonly diameter: number;
  /** In each state that is asked for; null where nothing is known of it. */
  readonly curves: readonly (CurveInputs | null)[];
  /** Rotation rates that give the demanded thrusts, or why none does. */ readonly rates: readonly number[];
  /** Turning ahead at rest. */ readonly atRest: CurveInputs;
}

/** A parts box made ready for the search. */
export interface PartRecords {
  readonly table: DemandTable;
  readonly sizes: Sizes;
  readonly common: CommonInputs;
  readonly commonDoubts: Doubts;
  readonly motors: readonly MotorRecord[];
  readonly controllers: readonly ControllerRecord[];
  readonly supplies: readonly SupplyRecord[];
  readonly gears: readonly GearRecord[];
  readonly propellers: readonly PropellerRecord[];
  readonly warnings: readonly Warning[];
}

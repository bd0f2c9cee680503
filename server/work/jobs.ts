import type { AlignmentPicture, Companion } from "../../shared/model/alignment.ts";
import type { MonteCarlo } from "../../shared/model/budget.ts";
import type { ElectricalRun } from "../../shared/model/electrical.ts";
import type { FluidState } from "../../shared/model/fluid.ts";
import type { UsedInstruments } from "../../shared/model/instrument.ts";
import type { LogInspection } from "../../shared/model/log.ts";
import type { Controller } from "../../shared/model/parts/controller.ts";
import type { Motor } from "../../shared/model/parts/motor.ts";
import type { Propeller } from "../../shared/model/parts/propeller.ts";
import type { LogReading } from "../../shared/model/reading.ts";
import type { Recipe } from "../../shared/model/recipe.ts";
import type { LiveResult } from "../../shared/model/recording.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import type { ShortlistRequest } from "../../shared/model/shortlist.ts";
import type { PropellerDesignRequest, PropellerDesigns } from "../../shared/model/shortlistDesign.ts";
import type { Shortlist } from "../../shared/model/shortlistResult.ts";
import type { Trace } from "../../shared/model/trace.ts";
import type { AxisDrag, VehicleDrag } from "../../shared/model/vehicle/drag.ts";
import type { LayoutAnswer } from "../../shared/model/vehicle/layoutAnswer.ts";
import type { LayoutRequest } from "../../shared/model/vehicle/layoutRequest.ts";
import type { TetherRequest, TetherSolution } from "../../shared/model/vehicle/tetherShape.ts";
import type { VehicleAnswer, VehicleRequest } from "../../shared/model/vehicle/vehicleAnswer.ts";
import type { Problem } from "../../shared/quantity/problem.ts";
import type { Ranked } from "../../shared/shortlist/rank.ts";
import type { Scoring } from "../../shared/shortlist/score.ts";
import type { Tally } from "../../shared/shortlist/tally.ts";

/** A log on disk. The hash names its bytes, so that a table once read can be used again. */
export interface LogFile {
  readonly path: string;
  readonly sha256: string;
  /** Its name as it came, for messages. */
  readonly name: string;
  /** Its size in bytes, where it is known: long logs are kept to one thread. */
  readonly size?: number;
  /** What a person decided about its text. */
  readonly reading?: LogReading;
}

/** The second log of a run. */
export interface CompanionLog extends Pick<Companion, "columns" | "lag"> {
  readonly file: LogFile;
}

export interface InspectJob {
  readonly kind: "inspect";
  readonly file: LogFile;
  /** The run it belongs to, where its propeller is known: for what each reading of a column would mean. */
  readonly run?: {
    readonly recipe: Recipe;
    readonly propeller: Propeller;
    readonly motor?: Motor;
    readonly instruments?: UsedInstruments;
    /** A person looked at the columns and agreed. */
    readonly confirmed: boolean;
  };
  readonly companion?: CompanionLog;
}

export interface AlignJob {
  readonly kind: "align";
  readonly file: LogFile;
  readonly recipe: Recipe;
  readonly companion: CompanionLog;
  /** Points of the picture. */
  readonly points: number;
}

export interface ReduceJob {
  readonly kind: "reduce";
  readonly file: LogFile;
  readonly recipe: Recipe;
  readonly companion?: CompanionLog;
  readonly propeller: Propeller;
  readonly motor?: Motor;
  readonly controller?: Controller;
  readonly instruments?: UsedInstruments;
  /** Program and version, printed in the result. */
  readonly program: string;
}

/** The intervals of a reduction checked by draws of all its inputs. */
export interface MonteCarloJob extends Omit<ReduceJob, "kind"> {
  readonly kind: "monteCarlo";
  readonly draws: number;
  readonly seed: number;
}

export interface TraceJob {
  readonly kind: "trace";
  readonly file: LogFile;
  readonly recipe: Recipe;
  readonly companion?: CompanionLog;
  readonly instruments?: UsedInstruments;
  /** Span of time to show, s; absent ends are those of the log. */
  readonly from?: number;
  readonly to?: number;
  /** Steps the span is divided into. */
  readonly points: number;
}

/** Voltage, current and speed of a run, for the constants of its motor; no thrust and no propeller needed. */
export interface ElectricalJob {
  readonly kind: "electrical";
  readonly file: LogFile;
  readonly recipe: Recipe;
  readonly companion?: CompanionLog;
  readonly instruments?: UsedInstruments;
}

/** Everything that the lines of a recording say so far; its file grows on behind `file.size`. */
export interface LiveJob extends Pick<ReduceJob, "recipe" | "motor" | "controller" | "instruments" | "program"> {
  readonly kind: "live";
  readonly file: LogFile & { readonly size: number };
  /** Whole lines in these bytes. */
  readonly lines: number;
  /** Absent: it is not said which, or there is none on the shaft. */
  readonly propeller?: Propeller;
  /** Steps of the trace. */
  readonly points: number;
}

/** A stretch of the combinations of a parts box, judged. */
export interface ShortlistPartJob {
  readonly kind: "shortlistPart";
  readonly request: ShortlistRequest;
  readonly start: number;
  readonly end: number;
}

/** The best of those that meet in a stretch. */
export interface ShortlistRankJob {
  readonly kind: "shortlistRank";
  readonly request: ShortlistRequest;
  readonly stretch: Pick<Tally, "start" | "end" | "meets">;
  readonly scoring: Scoring;
}

/** The answer, from what is known of all stretches. */
export interface ShortlistEndJob {
  readonly kind: "shortlistEnd";
  readonly request: ShortlistRequest;
  readonly tally: Tally;
  readonly ranked: readonly Ranked[];
}

/** Diameter and pitch of series propellers for each motor. */
export interface PropellerDesignJob {
  readonly kind: "propellerDesign";
  readonly request: PropellerDesignRequest;
}

/** What a whole vehicle does, with its requirement drawn where that is asked. */
export interface VehicleJob {
  readonly kind: "vehicle";
  readonly request: VehicleRequest;
}

/** One part of a vehicle by itself: what its thrusters, its drag or its tether do. */
export interface VehicleLayoutJob {
  readonly kind: "vehicleLayout";
  readonly request: LayoutRequest;
}
export interface VehicleDragJob {
  readonly kind: "vehicleDrag";
  readonly drag: VehicleDrag;
  /** Water of the vehicle, for drags that name none of their own. */
  readonly water: FluidState | undefined;
}
export interface TetherJob {
  readonly kind: "tether";
  readonly request: TetherRequest;
}

export type Job = LogJob | ShortlistJob | WholeVehicleJob;
export type WholeVehicleJob = VehicleJob | VehicleLayoutJob | VehicleDragJob | TetherJob;
export type ShortlistJob = ShortlistPartJob | ShortlistRankJob | ShortlistEndJob | PropellerDesignJob;
/** Work on a log. */
export type LogJob = InspectJob | AlignJob | ElectricalJob | ReduceJob | MonteCarloJob | TraceJob | LiveJob;

/** What each kind of job gives. */
export interface Outcomes {
  inspect: LogInspection;
  align: AlignmentPicture;
  reduce: Reduction;
  monteCarlo: MonteCarlo;
  trace: Trace;
  electrical: ElectricalRun;
  live: LiveResult;
  shortlistPart: Tally;
  shortlistRank: readonly Ranked[];
  shortlistEnd: Shortlist;
  propellerDesign: PropellerDesigns;
  vehicle: VehicleAnswer;
  vehicleLayout: LayoutAnswer;
  vehicleDrag: AxisDrag;
  tether: TetherSolution;
}
export type OutcomeOf<J extends Job> = Outcomes[J["kind"]];

/** From the server to a thread. A thread gets one job at a time. */
export type Order = { readonly id: number; readonly job: Job } | { readonly id: number; readonly cancel: true };

/** From a thread to the server: any number of shares done, then one of the others. */
export type Report = { readonly id: number } & (
  | { readonly fraction: number }
  | { readonly outcome: Outcomes[keyof Outcomes] }
  | { readonly refusal: "input" | "domain"; readonly problem: Problem }
  | { readonly cancelled: true }
  | { readonly fault: string }
);

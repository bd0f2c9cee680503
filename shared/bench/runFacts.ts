import type { LogTable } from "../log/logTable.ts";
import type { AdvanceFit } from "../model/advance.ts";
import type { FluidProperties } from "../model/fluid.ts";
import type { Propeller } from "../model/parts/propeller.ts";
import type { Recipe } from "../model/recipe.ts";
import type { ReverseFit } from "../model/reduction.ts";
import type { Uncertain } from "../quantity/uncertain.ts";
import type { Channels } from "./channels.ts";
import type { FullFit } from "./fullFit.ts";
import type { JudgedPlateau } from "./judgedPlateau.ts";
import type { PlateauSpans } from "./plateauSpans.ts";
import type { QuadraticLaw } from "./quadraticLaw.ts";
import type { Rest } from "./rest.ts";
import type { PowerSource, StandMotor } from "./shaftPowerOf.ts";
import type { SweepFit } from "./sweepFit.ts";
import type { TareLine } from "./tareLine.ts";
import type { Timeline } from "./timeline.ts";

/** Everything that was worked out of one run: what the checks look at and the result is written from. */
export interface RunFacts {
  readonly table: LogTable;
  readonly recipe: Recipe;
  readonly propeller: Propeller;
  readonly fluid: FluidProperties;
  readonly channels: Channels;
  readonly timeline: Timeline;
  readonly rest: Rest;
  readonly thrustTare: TareLine;
  readonly spans: PlateauSpans;
  readonly plateaus: readonly JudgedPlateau[];
  /** Those that count in the fit. */
  readonly used: readonly JudgedPlateau[];
  readonly thrust: FullFit;
  readonly power: FullFit | null;
  readonly merit: Uncertain | null;
  /** Null where plateaus at rest do not tell it. */
  readonly law: QuadraticLaw | null;
  /** Curves against the advance ratio; null in a bollard run. */
  readonly advance: AdvanceFit | null;
  /** Plateaus that turn the other way, reduced apart. */
  readonly reverse: ReverseFit | null;
  readonly powerSource: PowerSource | null;
  readonly standMotor: StandMotor | null;
  /** Each plateau is one reading without spread. */
  readonly singleReadings: boolean;
  /** The regression on the whole trace, where the run is a sweep without plateaus. */
  readonly sweep: SweepFit | null;
}

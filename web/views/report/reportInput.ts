import type { Comparison, SpreadChoice } from "../../../shared/model/comparison.ts";
import type { Project } from "../../../shared/model/project.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { KeptShortlist } from "../../../shared/model/shortlistStored.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import type { JudgedClaim } from "../../../shared/model/thrustClaim.ts";
import type { StoredParts } from "../../api/client.ts";
import type { ReductionState } from "../../app/reductions.ts";
import type { ChartSpec } from "../../charts/chartSpec.ts";
import type { Driven } from "../drive/driveModel.ts";
import type { OverviewModel } from "../overview/overviewModel.ts";
import type { VariantRuns } from "../variants/variantGroups.ts";
import type { Answered } from "../vehicle/vehicleAnswers.ts";

/** Everything a report is made from: what the screens show, and what they rest on. */
export interface ReportInput {
  readonly project: Project;
  readonly parts: StoredParts;
  readonly runs: readonly StoredDocument<Run>[];
  readonly reductionOf: (id: string) => ReductionState | undefined;
  readonly overview: Pick<OverviewModel, "answer" | "holds" | "driveBasis" | "driveNotes" | "lines">;
  readonly variants: {
    readonly answer: string;
    readonly groups: readonly VariantRuns[];
    readonly comparisons: readonly Comparison[];
    readonly spreads: SpreadChoice;
    /** Null where nobody claims a gain. */
    readonly claim: JudgedClaim | null;
    /** Why the baseline is the one it is. */
    readonly baselineBecause: string;
    readonly picture: ChartSpec;
  };
  readonly theory: {
    readonly answer: string;
    readonly beside: string;
    readonly heads: readonly string[];
    readonly rows: readonly { readonly name: string; readonly cells: readonly string[] }[];
    readonly picture: ChartSpec | null;
  };
  readonly drive: {
    readonly answer: string;
    readonly throttle: number;
    readonly chosen: readonly string[];
    readonly statedMerit: number;
    readonly driven: readonly Driven[];
    readonly picture: ChartSpec;
  };
  /** Null where none is kept. */
  readonly shortlist: KeptShortlist | null;
  readonly vehicles: readonly {
    readonly name: string;
    readonly answered: Answered;
    /** What is missing for an answer, whole sentences. */
    readonly gap?: string;
  }[];
  readonly program: string;
  /** When the report was made, for a reader. */
  readonly madeAt: string;
}

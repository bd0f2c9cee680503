import type { WithinLimits } from "../../../shared/drive/withinLimits.ts";
import type { Comparison } from "../../../shared/model/comparison.ts";
import type { OperatingPoint } from "../../../shared/model/drive.ts";
import type { Project } from "../../../shared/model/project.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { extrapolationInWords, isBeyondMeasured } from "../../../shared/propeller/beyondMeasured.ts";
import { formatUncertain } from "../../../shared/quantity/format.ts";
import { scaled } from "../../../shared/quantity/uncertain.ts";
import type { StoredParts } from "../../api/client.ts";
import { notesOf } from "../../app/notes.ts";
import type { ReductionState } from "../../app/reductions.ts";
import { counts, joined } from "../../app/words.ts";
import { flaggedChecks } from "../bench/qualityModel.ts";
import { pointText } from "../drive/pointText.ts";
import { reductionsOf, type VariantRuns } from "../variants/variantGroups.ts";
import { meanStaticMerit, meanThrustCoefficient, meanTorqueCoefficient } from "../variants/variantMean.ts";
import type { Beside } from "../vehicle/besides.ts";
import { chainOf, type Stage } from "./chain.ts";
import { nextSteps, type Step } from "./nextSteps.ts";
import { type VehicleLine, vehicleLine, vehicleSentence } from "./vehicleLines.ts";

/** What a propeller does at full throttle. */
export interface FullThrottle {
  readonly point: OperatingPoint;
  /** Null where full throttle passes no limit that a part states. */
  readonly within: WithinLimits | null;
  /** Greatest rotation rate that the propeller was measured at, rev/s; null where it was not. */
  readonly measuredRate: number | null;
}

/** What the overview is made from. */
export interface OverviewInput {
  readonly project: Project;
  readonly parts: StoredParts;
  readonly runs: readonly StoredDocument<Run>[];
  readonly groups: readonly VariantRuns[];
  readonly comparisons: readonly Comparison[];
  readonly reductionOf: (id: string) => ReductionState | undefined;
  /** Full throttle with the first motor and pack of the project, by variant; null where it can not be worked out. */
  readonly fullThrottle: ReadonlyMap<string, FullThrottle | null>;
  /** The coefficients of these were carried to the Reynolds number at work. */
  readonly isReynoldsCarried: boolean;
  /** Propellers that a drive can be worked out with, measured and computed. */
  readonly propellers: number;
  /** Every vehicle of the project with its answer, as far as it has come. */
  readonly vehicles: readonly Beside[];
  /** Place of the one that the vehicle screen shows. */
  readonly shownVehicle: number;
  /** Searches that are kept; null: not read yet. */
  readonly shortlists: number | null;
}

export interface VariantLine {
  readonly name: string;
  readonly style: number;
  readonly runs: string;
  readonly thrustCoefficient: string;
  readonly powerCoefficient: string;
  readonly staticMerit: string;
  readonly bollardThrust: string;
  /** Where it is not that of full throttle, or beyond what was measured: "at 98 % throttle, extrapolated"; else empty. */
  readonly thrustCondition: string;
  readonly supplyCurrent: string;
  /** "2 notes", or empty. */
  readonly warnings: string;
  /** Which checks ask for a look: "look at: blade Reynolds number", or empty. */
  readonly checks: string;
  /** The first run of the variant, to go and see: one with such a check where there is one. */
  readonly firstRun: string;
}

export interface OverviewModel {
  readonly answer: string;
  readonly tone: "known" | "open";
  /** What the vehicle on show does with that, a sentence; empty until it is known. */
  readonly vehicleAnswer: string;
  /** What the answer is of: the variants to draw. */
  readonly drawn: readonly string[];
  readonly holds: string;
  /** What full throttle is worked out with; empty where a part is missing. */
  readonly driveBasis: string;
  /** What passes a limit or what was measured there, sentences. */
  readonly driveNotes: readonly string[];
  readonly lines: readonly VariantLine[];
  readonly vehicles: readonly VehicleLine[];
  /** From log to report: what stands. */
  readonly chain: readonly Stage[];
  readonly steps: readonly Step[];
}

export function overviewModel(input: OverviewInput): OverviewModel {
  const best = tellingComparison(input.comparisons);
  const shown = input.vehicles[input.shownVehicle];
  const vehicles = input.vehicles.map(vehicleLine);
  const drawn = best ? [best.baseline.name, best.variant.name] : input.groups.slice(0, 2).map(({ name }) => name);
  return {
    answer: best?.sentence ?? answerWithout(input),
    tone: best ? "known" : "open",
    vehicleAnswer: shown ? vehicleSentence(shown) : "",
    drawn,
    holds: holdsText(input),
    driveBasis: driveBasisText(input.parts, input.isReynoldsCarried),
    driveNotes: driveNotes(input),
    lines: [...input.groups]
      .sort((a, b) => Number(drawn.includes(b.name)) - Number(drawn.includes(a.name)))
      .map((group) => variantLine(group, input)),
    vehicles,
    chain: chainOf({ ...countsOf(input), vehicles }),
    steps: nextSteps(input, vehicles),
  };
}

function countsOf({ runs, groups, comparisons, parts, propellers, shortlists, reductionOf }: OverviewInput) {
  const toSee = ({ id, document }: StoredDocument<Run>) => !document.confirmed || reductionOf(id)?.state === "refused";
  return {
    ...{ runs: runs.length, runsToSee: runs.filter(toSee).length },
    ...{ variants: groups.length, comparisons: comparisons.length },
    ...{ motors: parts.motors.length, packs: parts.packs.length, propellers, shortlists },
  };
}

/**
 * The comparison to open with: mountings repeated on both sides speak louder than a single run, and among those the
 * greatest change is what a builder asks for first.
 */
export function tellingComparison(comparisons: readonly Comparison[]): Comparison | null {
  const weight = { replicates: 2, pooledReplicates: 1, withinRun: 0 } as const;
  const ranked = [...comparisons].sort((a, b) => {
    const [ra, rb] = [a.thrustCoefficientRatio, b.thrustCoefficientRatio];
    return weight[rb.basis] - weight[ra.basis] || Math.abs(Math.log(rb.value)) - Math.abs(Math.log(ra.value));
  });
  return ranked[0] ?? null;
}

function answerWithout({ runs: all, groups, reductionOf }: OverviewInput): string {
  // A run without propeller gives no coefficient, and nothing waits for it.
  const runs = all.filter(({ document }) => document.purpose === "propeller");
  if (runs.length === 0) return "Nothing is measured yet. Drop the logs of your thrust stand on the bench.";
  const known = groups.filter((group) => reductionsOf(group).length > 0);
  const only = known[0];
  const mean = only ? meanThrustCoefficient(reductionsOf(only)) : null;
  if (only && mean && known.length === 1)
    return `“${only.name}” has a thrust coefficient of ${formatUncertain(mean)}. A second variant would show what a change gains.`;
  if (runs.some(({ id }) => reductionOf(id)?.state !== "refused")) return `Working out ${counts(runs.length, "run")} …`;
  return `${counts(runs.length, "log")} came in, and none can be worked out yet. See below what each needs.`;
}

function holdsText({ parts, runs, groups, vehicles }: OverviewInput): string {
  const plateaus = groups.flatMap((group) => reductionsOf(group)).flatMap((reduction) => reduction.plateaus);
  const held = [
    { count: runs.length, of: "run" },
    { count: groups.length, of: "variant" },
    { count: plateaus.filter((plateau) => plateau.used).length, of: "steady plateau" },
    { count: parts.propellers.length, of: "propeller" },
    { count: parts.motors.length, of: "motor" },
    { count: parts.controllers.length, of: "controller" },
    { count: parts.packs.length, of: "pack" },
    { count: vehicles.length, of: "vehicle" },
  ].filter(({ count }) => count > 0);
  return held.length === 0
    ? "The project is empty so far."
    : `Holds ${joined(held.map(({ count, of }) => counts(count, of)))}.`;
}

function driveBasisText({ motors, controllers, packs }: StoredParts, isReynoldsCarried: boolean): string {
  if (!motors[0] || !packs[0]) return "";
  const coefficients = isReynoldsCarried
    ? "Coefficients carried to the Reynolds number at work, as on Drive."
    : "Coefficients as measured on the stand.";
  const names = [motors[0].document.name, controllers[0]?.document.name, packs[0].document.name];
  return `Bollard thrust and current: one thruster at full throttle in the working water, with ${joined(names.filter((name) => name !== undefined))}; where that passes what a part allows, at the throttle that does not. ${coefficients} Computed, not measured.`;
}

/** Thrust and current that are shown: within the limits, where full throttle passes some. */
const shownPoint = ({ point, within }: FullThrottle): OperatingPoint | null => (within === null ? point : within.point);

function driveNotes({ groups, fullThrottle }: OverviewInput): string[] {
  const told = groups.flatMap(({ name }) => {
    const full = fullThrottle.get(name);
    return full ? [{ name, full, shown: shownPoint(full) }] : [];
  });
  const turning = told.flatMap(({ name, full: { measuredRate }, shown }) =>
    shown === null || measuredRate === null ? [] : [{ name, rotationRate: shown.rotationRate, measuredRate }],
  );
  const limits = told.flatMap(({ full }) => full.within?.sentence ?? []);
  return [...limits, extrapolationInWords(turning)].filter((text) => text !== "");
}

function thrustText(full: FullThrottle): string {
  const point = shownPoint(full);
  return point === null ? "none within the limits" : pointText(point, "thrust");
}

function thrustCondition(full: FullThrottle): string {
  const point = shownPoint(full);
  const at = full.within?.point ? `at ${Math.round(100 * full.within.throttle)}\u202f% throttle` : "";
  const isBeyond =
    point !== null && full.measuredRate !== null && isBeyondMeasured(point.rotationRate, full.measuredRate);
  return [at, isBeyond ? "extrapolated" : ""].filter((text) => text !== "").join(", ");
}

function variantLine(group: VariantRuns, input: OverviewInput): VariantLine {
  const reductions = reductionsOf(group);
  const [thrust, torque, merit] = [
    meanThrustCoefficient(reductions),
    meanTorqueCoefficient(reductions),
    meanStaticMerit(reductions),
  ];
  const full = (torque && input.fullThrottle.get(group.name)) || null;
  const point = full && shownPoint(full);
  const warned = reductions.reduce((sum, reduction) => sum + notesOf(reduction).length, 0);
  return {
    name: group.name,
    style: group.style,
    runs: counts(group.members.length, "run"),
    thrustCoefficient: thrust ? formatUncertain(thrust) : waiting(group, input),
    // C_P = 2π K_Q, as the coefficients are defined.
    powerCoefficient: torque ? formatUncertain(scaled(torque, 2 * Math.PI)) : noPower(reductions),
    staticMerit: merit ? formatUncertain(merit) : noPower(reductions),
    bollardThrust: full ? thrustText(full) : "–",
    thrustCondition: full ? thrustCondition(full) : "",
    supplyCurrent: point ? pointText(point, "supplyCurrent") : "–",
    warnings: warned === 0 ? "" : counts(warned, "note"),
    checks: flaggedChecks(reductions.map(({ quality }) => quality)),
    firstRun: (firstFlagged(group, input) ?? group.members[0]!).id,
  };
}

function firstFlagged({ members }: VariantRuns, { reductionOf }: OverviewInput) {
  return members.find(({ id }) => reductionOf(id)?.reduction?.quality.some(({ verdict }) => verdict === "flag"));
}

const noPower = (reductions: readonly Reduction[]) => (reductions.length === 0 ? "–" : "power not known");

function waiting({ members }: VariantRuns, { reductionOf }: OverviewInput): string {
  const states = members.map(({ id }) => reductionOf(id));
  if (states.every((one) => one?.state === "refused")) return "needs a look";
  const slowest = states.find((one) => one?.fraction !== undefined)?.fraction;
  return slowest === undefined ? "…" : `${Math.round(100 * slowest)}\u202f% read`;
}

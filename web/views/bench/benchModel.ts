import { describeFluid } from "../../../shared/fluid/parseFluid.ts";
import { ROLE_NAMES } from "../../../shared/log/roleUnits.ts";
import type { LogInspection, RoleGuess } from "../../../shared/model/log.ts";
import type { ColumnRole } from "../../../shared/model/recipe.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { formatNumber, formatUncertain } from "../../../shared/quantity/format.ts";
import { notesOf } from "../../app/notes.ts";
import type { ReductionState } from "../../app/reductions.ts";
import type { WarningItem } from "../../app/Warnings.tsx";
import { counts } from "../../app/words.ts";
import { advanceWords } from "./advanceModel.ts";
import { RPM } from "./shownUnits.ts";

export interface RunRow {
  readonly id: string;
  readonly name: string;
  readonly variant: string;
  readonly mounting: string;
  readonly thrustCoefficient: string;
  /** Short words for what needs a look. */
  readonly flags: readonly string[];
}

/** The list of runs, in the order of variant, mounting, name. */
export function runRows(
  runs: readonly StoredDocument<Run>[],
  stateOf: (id: string) => ReductionState | undefined,
): RunRow[] {
  return [...runs].sort(byVariantAndName).map(({ id, document }) => {
    const state = stateOf(id);
    return {
      id,
      name: document.name,
      variant: document.purpose !== "propeller" ? "without propeller" : document.variant || "no variant",
      mounting: document.mounting,
      thrustCoefficient: coefficientText(document, state),
      flags: flagsOf(document, state),
    };
  });
}

/** One sentence that answers "What does this log say?". */
export function benchAnswer(run: Run, state: ReductionState | undefined): string {
  if (run.purpose !== "propeller") return withoutPropellerText(run);
  if (state?.problem) return `No coefficients yet. ${state.problem.detail}`;
  if (!state?.reduction) return `Reading ${run.file.name} …`;
  const atSpeed = advanceWords(state.reduction);
  if (atSpeed !== null) return atSpeed.answer;
  const { thrustCoefficient, staticMerit, plateaus } = state.reduction;
  const used = plateaus.filter((plateau) => plateau.used);
  const rates = used.map((plateau) => plateau.rotationRate.value / RPM.factor);
  const range =
    rates.length === 0
      ? ""
      : `, ${formatNumber(Math.min(...rates), 3)} to ${formatNumber(Math.max(...rates), 3)}\u202frpm`;
  const merit = staticMerit === null ? "" : `; static merit ${formatUncertain(staticMerit)}`;
  const scale = lacksCalibration(state.reduction) ? "; how far off the scale reads is not in it" : "";
  return `The thrust coefficient is ${formatUncertain(thrustCoefficient)} (${state.reduction.sweep ? "a sweep" : counts(used.length, "plateau")}${range})${merit}${scale}.`;
}

/** What the coefficients hold for, where nobody stated it: what was assumed, a sentence; else nothing. */
export function assumedWords(run: Run, inspection: LogInspection | null): string {
  const { fluid, fluidAssumed } = run.recipe;
  const assumed = [
    ...(fluidAssumed ? [describeFluid(fluid)] : []),
    ...doubtfulUnits(run, inspection).map(({ role, unit }) => `${ROLE_NAMES[role]} written in ${unit}`),
  ];
  return assumed.length === 0 ? "" : `Assumed, as nobody stated it: ${assumed.join("; ")}.`;
}

/** Notes on units that the log does not give and nobody has confirmed, each with what other readings would mean. */
export function unitNotes(run: Run, inspection: LogInspection | null): WarningItem[] {
  return doubtfulUnits(run, inspection).map(({ column, role, unit, alternatives }) => {
    const header = inspection!.shape.columns[column]?.header || `#${column + 1}`;
    const choice = inspection!.choices?.find((one) => one.column === column);
    const others = alternatives.filter((other) => other.role === role);
    const readings = others.map((other) => `${other.unit} (${other.implies.replace(/\.$/, "")})`).join(", ");
    return {
      code: "bench.reading-doubtful",
      where: `column ${header}`,
      message: `${
        choice?.sentence ??
        `The log does not say the unit of the ${ROLE_NAMES[role]}, column “${header}”: ${unit} was taken${readings === "" ? "" : `. It may be ${readings}`}.`
      } Confirm it under “Columns”.`,
    };
  });
}

/** Guessed units of what the coefficients are made from, as the recipe has them, while nobody has confirmed the columns. */
function doubtfulUnits({ confirmed, recipe }: Run, inspection: LogInspection | null): readonly RoleGuess[] {
  if (confirmed || inspection === null) return [];
  return inspection.guesses.filter(({ column, role, unit, sure, alternatives }) => {
    const isUsed = recipe.columns.some((use) => use.column === column && use.role === role && use.unit === unit);
    return isUsed && !sure && UNIT_MATTERS.has(role) && alternatives.some((other) => other.role === role);
  });
}

const UNIT_MATTERS: ReadonlySet<ColumnRole> = new Set(["thrust", "rotationRate", "torque"]);

/** Whether the intervals lack the error of the scale itself, often the greatest of all. */
export function lacksCalibration({ warnings }: Pick<Reduction, "warnings">): boolean {
  return warnings.some(({ code }) => code === "bench.no-calibration");
}

/** Why C_P, K_Q and static merit are missing, and what would give them; empty when they are there. */
export function powerHint({ powerCoefficient, columns }: Reduction, run: Run): string {
  if (powerCoefficient !== null) return "";
  const has = (role: string) => columns.some((column) => column.role === role);
  if (!has("current") && !has("electricalPower"))
    return "No power coefficient: the log has neither torque nor electrical power. Log voltage and current, or torque, to get it.";
  if (run.recipe.motorId === undefined)
    return "No power coefficient yet: choose the motor that was on the stand, and shaft power follows from voltage and current.";
  return "No power coefficient: the electrical columns do not give shaft power at these plateaus.";
}

/** A run without propeller is whole as it is: it answers another question. */
function withoutPropellerText({ purpose, recipe }: Run): string {
  const where = purpose === "noLoadWet" ? "flooded" : "in air";
  const next =
    recipe.motorId === undefined
      ? "Choose the motor that it was, below; then “Identify from runs” under Parts works them out."
      : "“Identify from runs” under Parts works them out.";
  return `The motor ran ${where} without propeller: no thrust, but its speed constant and losses. ${next}`;
}

/** Empty for a run that has none by its nature. */
function coefficientText({ purpose }: Run, state: ReductionState | undefined): string {
  if (purpose !== "propeller") return "";
  return state?.reduction ? formatUncertain(state.reduction.thrustCoefficient) : "–";
}

function flagsOf(run: Run, state: ReductionState | undefined): string[] {
  const flags = run.confirmed ? [] : ["columns to confirm"];
  if (run.purpose !== "propeller") return [...flags, "motor run"];
  if (state?.problem) return [...flags, "no result"];
  if (!state?.reduction) return [...flags, "reading"];
  const notes = notesOf(state.reduction).length;
  return notes > 0 ? [...flags, counts(notes, "note")] : flags;
}

function byVariantAndName(a: StoredDocument<Run>, b: StoredDocument<Run>): number {
  const key = ({ document: { variant, mounting, name } }: StoredDocument<Run>) => [variant || "\uffff", mounting, name];
  const [left, right] = [key(a), key(b)];
  for (const [index, text] of left.entries()) {
    const order = text.localeCompare(right[index]!, "en", { numeric: true });
    if (order !== 0) return order;
  }
  return 0;
}

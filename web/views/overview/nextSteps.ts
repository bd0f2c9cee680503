import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";
import { joined } from "../../app/words.ts";
import type { VariantRuns } from "../variants/variantGroups.ts";
import type { Beside } from "../vehicle/besides.ts";
import type { OverviewInput } from "./overviewModel.ts";
import type { VehicleLine } from "./vehicleLines.ts";

/** Something to do next, and where. */
export interface Step {
  readonly text: string;
  readonly screen: string;
  readonly choices: Readonly<Record<string, string>>;
  readonly label: string;
}

/** What to do next, the most pressing first; `lines` tell of the vehicles, in their order. */
export function nextSteps(input: OverviewInput, lines: readonly VehicleLine[]): Step[] {
  const { runs, parts, groups } = input;
  if (runs.length === 0) return [step("Add the logs of your thrust stand.", "bench", "To the bench")];
  return [
    ...refusedSteps(input),
    ...unconfirmedSteps(runs),
    ...ungroupedSteps(runs),
    ...singleSteps(groups),
    ...(groups.length === 1 ? [step("Measure a second variant, to compare the two.", "bench", "To the bench")] : []),
    ...(parts.motors.length === 0 || parts.packs.length === 0
      ? [step("Add a motor and a pack, to see bollard thrust and current.", "parts", "To the parts")]
      : []),
    ...vehicleSteps(input.vehicles, lines),
  ];
}

function step(text: string, screen: string, label: string, choices: Readonly<Record<string, string>> = {}): Step {
  return { text, screen, label, choices };
}

function refusedSteps({ runs, reductionOf }: OverviewInput): Step[] {
  return runs.flatMap(({ id, document: { name } }) => {
    const message = reductionOf(id)?.problem?.message;
    if (message === undefined) return [];
    return [step(message.includes(name) ? message : `${name}: ${message}`, "bench", "See the run", { run: id })];
  });
}

function ungroupedSteps(runs: readonly StoredDocument<Run>[]): Step[] {
  const open = runs.filter(({ document }) => document.variant === "" && document.purpose === "propeller");
  const first = open[0];
  if (!first) return [];
  const text =
    open.length === 1
      ? `${first.document.name} belongs to no variant yet, so it is in no comparison.`
      : `${open.length} runs belong to no variant yet, so they are in no comparison.`;
  return [step(text, "variants", "Give a variant")];
}

function unconfirmedSteps(runs: readonly StoredDocument<Run>[]): Step[] {
  const open = runs.filter(({ document }) => !document.confirmed);
  const first = open[0];
  if (!first) return [];
  const text =
    open.length === 1
      ? `Look at the columns of ${first.document.name} and agree with what they stand for.`
      : `Look at the columns of ${open.length} runs and agree with what they stand for.`;
  return [step(text, "bench", "Look", { run: first.id })];
}

function singleSteps(groups: readonly VariantRuns[]): Step[] {
  const single = groups.filter(({ members }) => members.length === 1);
  const first = single[0];
  if (!first) return [];
  const names = single.map(({ name }) => `“${name}”`);
  const text = `Take the propeller off, put it on again and repeat ${joined(names)}: one mounting can not show how much mounting matters.`;
  return [step(text, "variants", "See the variants")];
}

function vehicleSteps(vehicles: readonly Beside[], lines: readonly VehicleLine[]): Step[] {
  if (vehicles.length === 0) {
    const text =
      "Describe the vehicle: its thrusters, drag, pack and what it must do. Then read how fast it goes and how long.";
    return [step(text, "vehicle", "To the vehicle")];
  }
  return vehicles.flatMap((vehicle, at) => vehicleStep(vehicle, lines[at]!) ?? []);
}

/** What a vehicle asks for: parts, a requirement, more of what limits it, or a measurement. */
function vehicleStep({ answered }: Beside, line: VehicleLine): Step | null {
  const { name, state, sentence, verdict, limit, place } = line;
  const to = (section: string) => ({ vehicle: place, section });
  if (state === "problem") return step(`${name}: ${sentence}`, "vehicle", "See the vehicle", { vehicle: place });
  if (answered.state !== "answered") return null;
  if (verdict === null)
    return step(`Say what “${name}” must do, to read whether it does.`, "vehicle", "Say it", to("build-require"));
  if (verdict.tone === "missed" && limit !== null)
    return step(`“${name}”: ${verdict.text} ${limit.text}`, "vehicle", "See the limiting part", to(limit.section));
  const first = answered.answer.motions.find(({ way }) => way === "ahead")?.shares[0];
  if (verdict.tone !== "unsure" || first === undefined) return null;
  const text = `Make sure of “${name}”: ${Math.round(100 * first.share)}\u202f% of the doubt of its speed is ${first.name}. ${first.mend}.`;
  return step(text, "vehicle", "See its doubts", to("vehicle-speed"));
}

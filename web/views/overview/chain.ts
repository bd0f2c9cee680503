import { counts } from "../../app/words.ts";
import type { VehicleLine } from "./vehicleLines.ts";

/** One stage of the job from log to report: what stands of it in this project. */
export interface Stage {
  readonly name: string;
  readonly screen: string;
  readonly state: "stands" | "partly" | "missing";
  readonly text: string;
}

/** What the stages are judged by. */
export interface ChainInput {
  readonly runs: number;
  /** Runs that can not be worked out, or whose columns nobody agreed with. */
  readonly runsToSee: number;
  readonly variants: number;
  readonly comparisons: number;
  readonly motors: number;
  readonly packs: number;
  /** Propellers that a drive can be worked out with: measured or of a series. */
  readonly propellers: number;
  /** Searches that are kept; null: not read yet. */
  readonly shortlists: number | null;
  readonly vehicles: readonly Pick<VehicleLine, "state" | "verdict">[];
}

/** From log to report, in the order of the work. */
export function chainOf(input: ChainInput): Stage[] {
  return [logStage, variantStage, driveStage, shortlistStage, vehicleStage, reportStage].map((judge) => judge(input));
}

type Judged = Pick<Stage, "state" | "text">;

const stage = (name: string, screen: string, judged: Judged): Stage => ({ name, screen, ...judged });

const missing = (text: string): Judged => ({ state: "missing", text });
const partly = (text: string): Judged => ({ state: "partly", text });
const stands = (text: string): Judged => ({ state: "stands", text });

function logStage({ runs, runsToSee }: ChainInput): Stage {
  const text = counts(runs, "run");
  return stage(
    "Log",
    "bench",
    runs === 0
      ? missing("no log yet")
      : runsToSee > 0
        ? partly(`${text}, ${runsToSee} to look at`)
        : stands(`${text} read`),
  );
}

function variantStage({ variants, comparisons }: ChainInput): Stage {
  const text = counts(variants, "variant");
  return stage(
    "Variants",
    "variants",
    comparisons > 0
      ? stands(`${text} compared`)
      : variants > 0
        ? partly(`${text}, nothing to compare yet`)
        : missing("no variant yet"),
  );
}

function driveStage({ motors, packs, propellers }: ChainInput): Stage {
  const lacks = [
    ...(motors === 0 ? ["motor"] : []),
    ...(packs === 0 ? ["pack"] : []),
    ...(propellers === 0 ? ["measured or computed propeller"] : []),
  ];
  return stage(
    "Drive",
    "drive",
    lacks.length === 0
      ? stands(`${counts(motors, "motor")}, ${counts(packs, "pack")}, ${counts(propellers, "propeller curve")}`)
      : lacks.length === 3
        ? missing("no motor, pack or propeller yet")
        : partly(`no ${lacks.join(" and no ")} yet`),
  );
}

function shortlistStage({ shortlists }: ChainInput): Stage {
  return stage(
    "Shortlist",
    "shortlist",
    shortlists === null
      ? partly("being read …")
      : shortlists === 0
        ? missing("no search is kept")
        : stands(`${counts(shortlists, "list")} kept`),
  );
}

function vehicleStage({ vehicles }: ChainInput): Stage {
  const answered = vehicles.filter(({ state }) => state === "answered");
  const problems = vehicles.filter(({ state }) => state === "problem").length;
  const text = counts(vehicles.length, "vehicle");
  const judged =
    vehicles.length === 0
      ? missing("no vehicle yet")
      : problems > 0
        ? partly(`${text}, ${problems} without an answer`)
        : answered.length < vehicles.length
          ? partly(`${text}, being worked out …`)
          : stands(`${text}${metText(answered)}`);
  return stage("Vehicle", "vehicle", judged);
}

function metText(answered: ChainInput["vehicles"]): string {
  const asked = answered.filter(({ verdict }) => verdict !== null);
  if (asked.length === 0) return ", nothing asked yet";
  const met = asked.filter(({ verdict }) => verdict!.tone === "met").length;
  return met === asked.length
    ? met === 1
      ? ", meets what it must"
      : ", all meet what they must"
    : `, ${met} surely meets what it must`;
}

function reportStage({ runs, vehicles }: ChainInput): Stage {
  const hasAny = runs > 0 || vehicles.length > 0;
  return stage("Report", "report", hasAny ? stands("ready to print") : missing("nothing to report yet"));
}

import type { VehicleAnswer } from "../../../shared/model/vehicle/vehicleAnswer.ts";
import { AMPERE, NEWTON, WATT } from "../bench/shownUnits.ts";
import { sureText } from "../shortlist/resultModel.ts";
import { METRE_PER_SECOND, MINUTE, shown, shownUncertain } from "./answer/units.ts";

type Motion = VehicleAnswer["motions"][number];

const motionOf = ({ motions }: VehicleAnswer, way: Motion["way"]) => motions.find((one) => one.way === way);

/** What two vehicles are held against each other by. */
export const COMPARED: readonly { readonly name: string; readonly cell: (answer: VehicleAnswer) => string }[] = [
  { name: "Speed ahead", cell: (answer) => shownUncertain(motionOf(answer, "ahead")?.speed ?? null, METRE_PER_SECOND) },
  {
    name: "Speed astern",
    cell: (answer) => shownUncertain(motionOf(answer, "astern")?.speed ?? null, METRE_PER_SECOND),
  },
  {
    name: "Speed sideways",
    cell: (answer) => shownUncertain(motionOf(answer, "starboard")?.speed ?? null, METRE_PER_SECOND),
  },
  { name: "Speed up", cell: ({ vertical }) => shownUncertain(vertical.climb, METRE_PER_SECOND) },
  { name: "Force ahead at rest", cell: (answer) => shownUncertain(motionOf(answer, "ahead")?.force ?? null, NEWTON) },
  { name: "Force up at rest", cell: (answer) => shownUncertain(motionOf(answer, "up")?.force ?? null, NEWTON) },
  {
    name: "Current at full speed ahead",
    cell: (answer) => shown(motionOf(answer, "ahead")?.atSpeed?.current ?? null, AMPERE),
  },
  {
    name: "Power at full speed ahead",
    cell: (answer) => shown(motionOf(answer, "ahead")?.atSpeed?.power ?? null, WATT),
  },
  {
    name: "Holds its place from any side up to",
    cell: ({ headings }) => shownUncertain(headings?.leastCurrentHeld ?? null, METRE_PER_SECOND),
  },
  {
    name: "Greatest payload, weight in water",
    cell: ({ vertical }) => shownUncertain(vertical.greatestPayload, NEWTON),
  },
  {
    name: "Lasts, at the mix of its mission",
    cell: ({ endurance }) => shownUncertain(endurance?.mission?.lasts ?? null, MINUTE),
  },
  { name: "What it must do", cell: ({ requirement }) => requirementText(requirement) },
];

function requirementText(check: VehicleAnswer["requirement"]): string {
  if (check === null) return "–";
  const missed = check.demands.filter(({ met }) => !met).map(({ name }) => name);
  if (missed.length > 0) return `misses ${missed.join(", ")}`;
  if (check.certain) return "met";
  const least = Math.min(
    ...check.demands.map(({ probability, probabilityDrawn }) => probabilityDrawn ?? probability ?? 1),
  );
  return `met by the best estimate, the least sure demand ${sureText(least)}`;
}

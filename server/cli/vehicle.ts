import type { MotionWay } from "../../shared/model/vehicle/motionAnswer.ts";
import { VEHICLE_DRAWS, type VehicleDraws } from "../../shared/model/vehicle/requirementAnswer.ts";
import type { TetherLimitPoint } from "../../shared/model/vehicle/speedOverTether.ts";
import { Vehicle } from "../../shared/model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../../shared/model/vehicle/vehicleAnswer.ts";
import { certaintyInWords } from "../../shared/quantity/certaintyInWords.ts";
import { formatNumber, formatPercent } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { formatBare, formatTold } from "../../shared/quantity/told.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import type { MeantFile } from "../intake/openFile.ts";
import { checked } from "./checked.ts";
import { jsonOfFile } from "./namedFile.ts";
import type { Usage, Words } from "./options.ts";

export const USAGE: Usage = {
  verb: "vehicle",
  arguments: "",
  about:
    "What a whole vehicle does: speeds each way, in a current, climbing and stopping, endurance, and whether its requirement\nis met. Exit code 1 where it is not, or where its mission is more than its charge can do.",
  options: {
    file: { value: "FILE", text: "the vehicle as JSON, SI units; /api/docs shows its fields" },
    "monte-carlo": {
      value: "COUNT",
      text: `draw all doubtful inputs so often for the probabilities, e.g. ${VEHICLE_DRAWS.usual}; at least ${VEHICLE_DRAWS.fewest}`,
    },
    seed: { value: "COUNT", text: "start of the draws; the same gives the same numbers (default 1)" },
    json: { text: "print the whole result as JSON, SI units" },
  },
  examples: ["vehicle --file dabchick.json", "vehicle --file dabchick.json --monte-carlo 10000 --json"],
};

export async function run(words: Words): Promise<number> {
  const vehicle = checked(Vehicle, await jsonOfFile(...namedIn(words)), () => undefined);
  const answer = vehicleAnswer(vehicle, drawingOf(words));
  process.stdout.write(words.has("json") ? `${JSON.stringify(answer, null, 2)}\n` : `${linesOf(answer).join("\n")}\n`);
  return answer.requirement?.met === false || answer.endurance.mission?.fits === false ? 1 : 0;
}

function drawingOf(words: Words): VehicleDraws | null {
  const draws = words.whole("monte-carlo", VEHICLE_DRAWS.fewest);
  return draws === undefined ? null : { draws, seed: words.whole("seed", 0) ?? 1 };
}

const NEEDED = "a vehicle as JSON, SI units; /api/docs shows its fields";

function namedIn(words: Words): [string, MeantFile] {
  const path = words.text("file");
  if (path !== undefined) return [path, { where: `--file ${path}`, needed: NEEDED }];
  throw new InputProblem({
    code: "cli.missing-option",
    where: "--file",
    found: "No vehicle was given",
    needed: NEEDED,
    mend: "Name its file",
  });
}

const METRES_PER_SECOND = { symbol: "m/s", factor: 1 };
const AMPERE = { symbol: "A", factor: 1 };
const WATT = { symbol: "W", factor: 1 };

function limitLine({ length, speed, reason }: TetherLimitPoint): string {
  return `  ${formatNumber(length)} m of tether: ${speed === null ? reason : `${formatTold(speed, METRES_PER_SECOND)} ahead`}`;
}

const WAY_HEADS: Readonly<Record<MotionWay, string>> = {
  ...{ ahead: "Ahead", astern: "Astern", starboard: "To starboard", port: "To port", up: "Up", down: "Down" },
};

/** What it does one way, and what that draws; what the answer (`said`) begins with is not said again. */
function motionLine({ sentence, way, atSpeed, atRest }: VehicleAnswer["motions"][number], said: string): string {
  const bus = atSpeed ?? atRest;
  if (bus === null) return said.includes(sentence) ? "" : sentence;
  const draws = `${formatBare(bus.current, AMPERE)} and ${formatBare(bus.power, WATT)} from the bus`;
  const when = atSpeed ? "at that speed" : "pushing so";
  if (said.includes(sentence)) return `${WAY_HEADS[way]}, ${when}, it draws ${draws}.`;
  return `${sentence} ${when.charAt(0).toUpperCase()}${when.slice(1)} it draws ${draws}.`;
}

const METRE = { symbol: "m", factor: 1 };
const SECOND = { symbol: "s", factor: 1 };
const NEWTON = { symbol: "N", factor: 1 };

/** How soon it is at speed, and how far it goes on. */
function startLines({ upToSpeed, stopping }: VehicleAnswer["motions"][number]): string[] {
  const almost = upToSpeed.find(({ share }) => share === 0.9);
  return [
    ...(almost
      ? [
          `From rest to ${formatPercent(0.9)} of its speed ahead: ${formatBare(almost.time, SECOND)} and ${formatTold(almost.distance, METRE)}.`,
        ]
      : []),
    ...(stopping?.brakedDistance
      ? [`It stops with full astern in ${formatTold(stopping.brakedDistance, METRE)}.`]
      : []),
  ];
}

function tetherLines({ tether }: VehicleAnswer): string[] {
  if (tether?.state !== "solved") return [];
  const { greatestTension, belly } = tether;
  return [
    `At that speed the tether is pulled with at most ${formatTold(greatestTension.tension, NEWTON)} and bows out ${formatTold(belly.distance, METRE)}.`,
  ];
}

const holdLine = ({ holdPower }: VehicleAnswer["vertical"]): string[] =>
  holdPower === null ? [] : [`Holding the depth takes ${formatTold(holdPower, WATT)}, hotel load included.`];

function linesOf(answer: VehicleAnswer): string[] {
  const { motions, headings, tetherLimit, vertical, changes, requirement, endurance, warnings } = answer;
  const isNew = ({ message }: VehicleAnswer["warnings"][number]) => !answer.sentence.includes(message);
  const shares = motions[0]?.shares.slice(0, 3) ?? [];
  return [
    ...[answer.name, answer.sentence, ""],
    ...motions.map((motion) => motionLine(motion, answer.sentence)).filter((line) => line !== ""),
    ...motions.slice(0, 1).flatMap(startLines),
    ...tetherLines(answer),
    ...(headings ? [headings.sentence] : []),
    ...(tetherLimit ? [tetherLimit.sentence, tetherLimit.assumption, ...tetherLimit.points.map(limitLine)] : []),
    ...(answer.sentence.includes(vertical.sentence) ? [] : [vertical.sentence]),
    ...[...holdLine(vertical), vertical.withoutPower.text, endurance.sentence],
    ...shares.map(({ name, share, mend }) => `Doubt of the speed ahead, ${formatPercent(share)}: ${name}. ${mend}.`),
    ...changes.map(
      ({ name, change }) => `${name}: ${change.value >= 0 ? "+" : ""}${formatTold(change, METRES_PER_SECOND)} ahead`,
    ),
    ...(requirement?.demands.map(({ sentence }) => sentence) ?? []),
    ...(requirement?.probabilityAll == null
      ? []
      : [`All demands together are met in ${certaintyInWords(requirement.probabilityAll)} of the draws.`]),
    // Several directions may rest on the same shape: what is said of it is said once.
    ...new Set(warnings.filter(isNew).map(({ message }) => `Note: ${message}`)),
  ];
}

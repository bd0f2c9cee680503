import { driveRequestOf, type PreparedDrive } from "../../shared/drive/driveRequestOf.ts";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { withinLimits } from "../../shared/drive/withinLimits.ts";
import { OPERATING_POINT_NUMBERS, type OperatingPoint } from "../../shared/model/drive.ts";
import { DriveRunning } from "../../shared/model/driveTrainPoint.ts";
import { CELSIUS_ZERO } from "../../shared/quantity/constants.ts";
import { formatQuantity, formatUncertain, type ShownUnit } from "../../shared/quantity/format.ts";
import { checked } from "./checked.ts";
import { TRAIN_USAGE } from "./driveOptions.ts";
import { requireTableOptions, runTable } from "./driveTable.ts";
import { trainOf } from "./driveTrain.ts";
import type { Usage, Words } from "./options.ts";

export const USAGE: Usage = {
  verb: "drive",
  arguments: "",
  about:
    'The steady point of motor, controller, supply and propeller at rest or at a speed in the stated water.\nAny quantity but limits may carry its standard uncertainty: --thrust-coefficient "0.2 ± 0.004".\nWith --control-table: what to command for a thrust, as a table.',
  options: {
    train: { value: "FILE", text: "the whole drive train from a JSON file, SI units, instead of options" },
    ...TRAIN_USAGE,
    series: {
      value: "NAME",
      text: "with --pitch-ratio: coefficients change with speed as in this series, e.g. B3-50 (ahead)",
    },
    water: { value: "FLUID", text: 'e.g. "fresh 18C", "sea 12C 33", "air 20C 1013hPa 50%"' },
    thrusters: { value: "COUNT", text: "equal thrusters on the same supply (1 if absent)" },
    throttle: { value: "QUANTITY", text: "throttle, e.g. 60% (100% if absent)" },
    speed: { value: "QUANTITY", text: "speed of the water into the propeller (0 if absent)" },
    astern: { text: "turn the other way" },
    "astern-share": {
      value: "FRACTION",
      text: 'where nothing is known astern: its share of the thrust ahead, torque as ahead, e.g. "70% ± 10%"',
    },
    "wanted-thrust": { value: "QUANTITY", text: "exit with 1 unless one thruster makes this much" },
    "control-table": { value: "FILE.csv", text: "write command against thrust, ahead and astern, to this file" },
    voltages: {
      value: "LIST",
      text: "with --control-table: supply voltages, e.g. 16V,14V (that of the supply if absent)",
    },
    "held-voltage": { text: "with --voltages: they are held at the controllers, whatever is drawn" },
    json: { text: "print the whole result as JSON, SI units" },
  },
  examples: [
    'drive --kv 900rpm/V --resistance 120mohm --no-load-current 0.6A --supply 14.8V --supply-resistance 40mohm --diameter 76mm --thrust-coefficient 0.2 --torque-coefficient 0.02 --water "fresh 18C" --throttle 100%',
    "drive --train thruster.json --control-table commands.csv --voltages 16V,15V,14V",
  ],
};

export async function run(words: Words): Promise<number> {
  requireTableOptions(words);
  const { train, uncertainties, warnings } = await trainOf(words);
  const running = runningOf(words);
  if (words.has("control-table")) return runTable(words, train, running);
  const prepared = driveRequestOf(train, running);
  const request = {
    ...prepared.request,
    uncertainties: { ...prepared.request.uncertainties, ...uncertainties },
  };
  const found = operatingPoint(request);
  const point = { ...found, warnings: [...warnings, ...prepared.warnings, ...found.warnings] };
  const { supply, grounds } = prepared;
  process.stdout.write(
    words.has("json")
      ? `${JSON.stringify({ ...point, supply, grounds }, null, 2)}\n`
      : readable(point, { ...prepared, request }, train.propeller.name),
  );
  const wanted = words.quantity("wanted-thrust", "massAsForce");
  return wanted && point.thrust < wanted.value ? 1 : 0;
}

function runningOf(words: Words): DriveRunning {
  const share = words.quantity("astern-share", "fraction");
  const running = {
    throttle: words.quantity("throttle", "fraction")?.value ?? 1,
    direction: words.has("astern") ? "astern" : "ahead",
    advanceSpeed: words.quantity("speed", "speed")?.value ?? 0,
    ...(share && {
      asternEstimate: {
        thrustShare: share.value,
        torqueShare: 1,
        // No share has no relative doubt; it is refused as a coefficient of 0.
        relativeUncertainty: share.value === 0 ? 0 : (share.standardUncertainty ?? 0) / Math.abs(share.value),
      },
    }),
  };
  return checked(DriveRunning, running, (field) => (field.startsWith("asternEstimate") ? "astern-share" : "speed"));
}

const SHOWN: Partial<Record<keyof typeof OPERATING_POINT_NUMBERS, ShownUnit>> = {
  rotationRate: { symbol: "rpm", factor: 1 / 60 },
  windingTemperature: { symbol: "°C", factor: 1, offset: CELSIUS_ZERO },
};

/** The longest name, "Current from the supply, all thrusters and the hotel load", and a space. */
const NAME_WIDTH = 58;

const AS_STATED =
  "Note: The coefficients are taken as stated; what another Reynolds number changes is not counted, nor its doubt.";

function readable(point: OperatingPoint, { request, grounds }: PreparedDrive, name: string): string {
  const within = withinLimits(name, request, point);
  const keys = (Object.keys(OPERATING_POINT_NUMBERS) as (keyof typeof OPERATING_POINT_NUMBERS)[]).filter(
    (key) => key !== "windingTemperature" || request.heat !== undefined,
  );
  const lines = keys.map((key) => {
    const { description = "", unit = "1" } = OPERATING_POINT_NUMBERS[key].meta() ?? {};
    const shownUnit = SHOWN[key] ?? { symbol: String(unit), factor: 1 };
    const doubt = point.uncertainties?.[key];
    const text = doubt ? formatUncertain(doubt, shownUnit) : formatQuantity(point[key], shownUnit, 4);
    return `${description.replace(/;.*|, [^,]*$/, "").padEnd(NAME_WIDTH)} ${text.replace("\u202f", " ")}`;
  });
  return `${[
    ...lines,
    `${"Governing limit".padEnd(NAME_WIDTH)} ${governing(point)}`,
    ...(within === null ? [] : [within.sentence.replaceAll("\u202f", " ")]),
    ...point.warnings.map(({ message }) => `Note: ${message}`),
    AS_STATED,
    ...grounds.map(({ text }) => `Note: ${text}`),
  ].join("\n")}\n`;
}

function governing({ governingLimit, limits }: OperatingPoint): string {
  if (limits.every(({ reachedAtThrottle }) => reachedAtThrottle === null)) return "none up to full throttle";
  return governingLimit === "supply voltage"
    ? "greatest power of the supply (half of its open-circuit voltage)"
    : governingLimit;
}

import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import { type BollardDuty, type BollardEstimate, BollardEstimateRequest } from "../../shared/model/bollardEstimate.ts";
import { bollardEstimate } from "../../shared/propeller/bollardEstimate.ts";
import { formatNumber } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { checked } from "./checked.ts";
import type { Usage, Words } from "./options.ts";
import { BLADE_OPTIONS, runBlades } from "./predictBlades.ts";
import { runSeries, SERIES_OPTIONS } from "./predictSeries.ts";

export const USAGE: Usage = {
  verb: "predict",
  arguments: "",
  about:
    "What momentum theory allows an open propeller at bollard, and what a stated static merit makes of it.\nWith --series: the best pitch of a published series for the thrust or power, or what a stated pitch does; with --depth also whether it cavitates or draws air.\nWith --geometry: what blade elements make of a blade from its sections.",
  options: {
    diameter: { value: "QUANTITY", text: "propeller diameter" },
    power: { value: "QUANTITY", text: "shaft power; or give --thrust" },
    thrust: { value: "QUANTITY", text: "thrust wanted; or give --power" },
    merit: { value: "NUMBER", text: "static merit, ideal over real shaft power (0.5 if absent)" },
    voltage: { value: "QUANTITY", text: "supply voltage, for the current that the power means" },
    "drive-efficiency": { value: "FRACTION", text: "shaft power over electrical power (75 % if absent)" },
    water: { value: "FLUID", text: 'e.g. "fresh 18C", "sea 12C 33"' },
    ...SERIES_OPTIONS,
    ...BLADE_OPTIONS,
    json: { text: "print the result as JSON, SI units" },
  },
  examples: [
    'predict --diameter 76mm --power 150W --merit 0.5 --voltage 14.8V --water "fresh 18C"',
    "predict --series B3-50 --diameter 76mm --thrust 20N --advance-speed 1.5m/s",
    "predict --geometry samples/blades/dabchick-76mm.csv --blades 3 --rpm 4200rpm",
  ],
};

export function run(words: Words): number | Promise<number> {
  if (words.has("geometry")) return runBlades(words);
  if (words.has("series")) return runSeries(words, () => dutyOf(words));
  const staticMerit = words.quantity("merit", "fraction")?.value ?? 0.5;
  const result = prediction(words, staticMerit);
  process.stdout.write(words.has("json") ? `${JSON.stringify(result, null, 2)}\n` : readable(result, staticMerit));
  return 0;
}

function prediction(words: Words, staticMerit: number): BollardEstimate {
  const { density } = fluidProperties(parseFluid(words.text("water") ?? "fresh 18C", "--water"));
  const request = {
    duty: dutyOf(words),
    diameter: words.required("diameter", "length").value,
    density,
    staticMerit,
    ...optional("driveEfficiency", words.quantity("drive-efficiency", "fraction")?.value),
    ...optional("voltage", words.quantity("voltage", "voltage")?.value),
  };
  return bollardEstimate(checked(BollardEstimateRequest, request, optionOf));
}

function optional(field: string, value: number | undefined): Record<string, number> {
  return value === undefined ? {} : { [field]: value };
}

type GivenDuty = Exclude<BollardDuty, { readonly given: "electricalPower" }>;

function dutyOf(words: Words): GivenDuty {
  const power = words.quantity("power", "power")?.value;
  const thrust = words.quantity("thrust", "massAsForce")?.value;
  if (power !== undefined && thrust === undefined) return { given: "shaftPower", shaftPower: power };
  if (thrust !== undefined && power === undefined) return { given: "thrust", thrust };
  throw new InputProblem({
    code: "cli.power-or-thrust",
    where: "predict",
    found: power === undefined ? "neither --power nor --thrust was given" : "both --power and --thrust were given",
    needed: "one of the two",
    mend: "Give --power 150W or --thrust 20N",
  });
}

/** The option that a field of the request came from. */
function optionOf(field: string): string | undefined {
  const last = field.split(".").at(-1) ?? "";
  return (
    { diameter: "diameter", staticMerit: "merit", driveEfficiency: "drive-efficiency", shaftPower: "power" }[last] ??
    last
  );
}

function readable(estimate: BollardEstimate, staticMerit: number): string {
  const rows: [string, number | null, string][] = [
    ["Shaft power", estimate.shaftPower, "W"],
    ["Greatest thrust momentum theory allows", estimate.idealThrust, "N"],
    [`Thrust at a static merit of ${formatNumber(staticMerit)}`, estimate.thrust, "N"],
    ["Electrical power", estimate.electricalPower, "W"],
    ["Supply current", estimate.supplyCurrent, "A"],
    ["Thrust over electrical power", estimate.thrustPerPower, "N/W"],
  ];
  return [
    ...rows
      .filter(([, value]) => value !== null)
      .map(([name, value, unit]) => `${name.padEnd(44)} ${formatNumber(value!, 4)} ${unit}`),
    ...estimate.warnings.map(({ message }) => `Note: ${message}`),
    "",
  ].join("\n");
}

import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import { discArea } from "../../shared/propeller/coefficients.ts";
import { idealBollardPower, idealBollardThrust } from "../../shared/propeller/momentum.ts";
import { thrustFromMerit } from "../../shared/propeller/staticMerit.ts";
import { formatNumber } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { helpText, type Usage, Words } from "./options.ts";

export const USAGE: Usage = {
  verb: "predict",
  arguments: "",
  about: "What momentum theory allows an open propeller at bollard, and what a stated static merit makes of it.",
  options: {
    diameter: { value: "QUANTITY", text: "propeller diameter" },
    power: { value: "QUANTITY", text: "shaft power; or give --thrust" },
    thrust: { value: "QUANTITY", text: "thrust wanted; or give --power" },
    merit: { value: "NUMBER", text: "static merit, ideal over real shaft power (0.5 if absent)" },
    voltage: { value: "QUANTITY", text: "supply voltage, for the current that the power means" },
    "drive-efficiency": { value: "FRACTION", text: "shaft power over electrical power (75 % if absent)" },
    water: { value: "FLUID", text: 'e.g. "fresh 18C", "sea 12C 33"' },
    json: { text: "print the result as JSON, SI units" },
  },
  examples: ['predict --diameter 76mm --power 150W --merit 0.5 --voltage 14.8V --water "fresh 18C"'],
};

export function run(args: readonly string[]): number {
  const words = new Words(USAGE, args);
  if (words.has("help")) {
    process.stdout.write(helpText(USAGE));
    return 0;
  }
  const result = prediction(words);
  process.stdout.write(words.has("json") ? `${JSON.stringify(result, null, 2)}\n` : readable(result));
  return 0;
}

function prediction(words: Words) {
  const diameter = words.required("diameter", "length").value;
  const { density } = fluidProperties(parseFluid(words.text("water") ?? "fresh 18C", "--water"));
  const area = discArea(diameter);
  const merit = words.quantity("merit", "number")?.value ?? 0.5;
  const power = words.quantity("power", "power")?.value;
  const thrust = words.quantity("thrust", "massAsForce")?.value;
  if ((power === undefined) === (thrust === undefined)) {
    throw new InputProblem({
      code: "cli.power-or-thrust",
      where: "predict",
      found: power === undefined ? "neither --power nor --thrust was given" : "both --power and --thrust were given",
      needed: "one of the two",
      mend: "Give --power 150W or --thrust 20N",
    });
  }
  const shaftPower = power ?? idealBollardPower({ thrust: thrust!, discArea: area, density }) / merit;
  const electricalPower = shaftPower / (words.quantity("drive-efficiency", "fraction")?.value ?? 0.75);
  const voltage = words.quantity("voltage", "voltage")?.value;
  return {
    diameter,
    density,
    staticMerit: merit,
    shaftPower,
    idealThrust: idealBollardThrust({ shaftPower, discArea: area, density }),
    thrust: thrustFromMerit({ shaftPower, discArea: area, density, staticMerit: merit }),
    electricalPower,
    supplyCurrent: voltage === undefined ? null : electricalPower / voltage,
    warnings: [],
  };
}

function readable(result: ReturnType<typeof prediction>): string {
  const rows: [string, number | null, string][] = [
    ["Shaft power", result.shaftPower, "W"],
    ["Greatest thrust momentum theory allows", result.idealThrust, "N"],
    [`Thrust at a static merit of ${formatNumber(result.staticMerit, 2)}`, result.thrust, "N"],
    ["Electrical power", result.electricalPower, "W"],
    ["Supply current", result.supplyCurrent, "A"],
  ];
  return `${rows
    .filter(([, value]) => value !== null)
    .map(([name, value, unit]) => `${name.padEnd(44)} ${formatNumber(value!, 4)} ${unit}`)
    .join("\n")}\n`;
}

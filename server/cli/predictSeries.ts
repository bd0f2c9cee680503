import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import { type BestPitch, BestPitchRequest, type PropellerDuty } from "../../shared/model/bestPitch.ts";
import type { CavitationResult } from "../../shared/model/cavitation.ts";
import { SeriesPropeller, type SeriesWithoutPitch } from "../../shared/model/seriesPropeller.ts";
import { TORQUE_OVER_POWER_COEFFICIENT } from "../../shared/propeller/coefficients.ts";
import { reynoldsWords } from "../../shared/propeller/reynoldsWords.ts";
import { bestPitch } from "../../shared/propeller/series/bestPitch.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { seriesReynolds } from "../../shared/propeller/series/seriesReynolds.ts";
import { formatNumber } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Warning } from "../../shared/quantity/warning.ts";
import { checked } from "./checked.ts";
import type { Options, Words } from "./options.ts";
import { atDepth, DEPTH_OPTIONS, depthRows, type SeriesAtWork } from "./predictDepth.ts";

/** Options of `predict` that ask a published series. */
export const SERIES_OPTIONS: Options = {
  series: {
    value: "NAME",
    text: "series propeller: B3-50 (three blades, area ratio 0.50), Ka4-70 or Ka5-75 in nozzle 19A",
  },
  "pitch-ratio": {
    value: "NUMBER",
    text: "with --series and --rpm: its pitch ratio; without it the best one is looked for",
  },
  rpm: {
    value: "QUANTITY",
    text: "rotation rate, with --series or --geometry; with --series and --diameter, the pitch that does the duty",
  },
  "advance-speed": { value: "QUANTITY", text: "with --series or --geometry: speed through the water (0 if absent)" },
  "outside-range": { text: "with --series: compute outside the range of its tests too, flagged" },
  ...DEPTH_OPTIONS,
};

/** The best pitch for a duty, or, with pitch and rotation rate stated, what that propeller does. */
export function runSeries(words: Words, duty: () => PropellerDuty): number {
  const series = seriesOf(words.text("series") ?? "");
  const text = withDepth(words, words.has("pitch-ratio") ? pointOf(words, series) : pitchOf(words, series, duty()));
  process.stdout.write(words.has("json") ? `${JSON.stringify(text.result, null, 2)}\n` : readable(text));
  return text.result.state === "failed" ? 1 : 0;
}

interface Told {
  readonly result: {
    readonly state?: string;
    readonly water?: CavitationResult;
    readonly warnings: readonly Warning[];
  };
  readonly rows: readonly (readonly [name: string, value: number | string | null, unit: string])[];
  readonly answer?: string;
  /** Null where no propeller does the duty. */
  readonly atWork: SeriesAtWork | null;
}

/** With --depth, what the water allows the propeller beside what it does. */
function withDepth(words: Words, text: Told): Told {
  const depth = words.quantity("depth", "length")?.value;
  if (depth === undefined || text.atWork === null) return text;
  const water = atDepth(text.atWork, depth, fluidOf(words));
  return {
    ...text,
    result: { ...text.result, water, warnings: [...text.result.warnings, ...water.warnings] },
    rows: [...text.rows, ...depthRows(water)],
    answer: water.answer,
  };
}

const NOZZLE_SCREWS = { "ka4-70": "ka-4-70-19a", "ka5-75": "ka-5-75-19a" } as const;

/** The series that a name such as B3-50 or Ka4-70 stands for. Throws InputProblem `cli.series-name`. */
export function seriesOf(name: string): SeriesWithoutPitch {
  const text = name.trim().toLowerCase().replaceAll(" ", "");
  const nozzle = Object.entries(NOZZLE_SCREWS).find(([known]) => known === text);
  if (nozzle) return { family: nozzle[1] };
  const open = /^b(\d)-(\d{2,3})$/.exec(text);
  if (open) return { family: "wageningen-b", blades: Number(open[1]), areaRatio: Number(open[2]) / 100 };
  throw new InputProblem({
    code: "cli.series-name",
    where: "--series",
    found: `"${name}" is no series propeller known here`,
    needed: "B, blades and area ratio in percent, or Ka4-70 or Ka5-75",
    mend: "For example --series B3-50",
  });
}

function pitchOf(words: Words, series: SeriesWithoutPitch, duty: PropellerDuty): Told {
  const diameter = words.quantity("diameter", "length")?.value;
  const rotationRate = words.quantity("rpm", "rotationRate")?.value;
  const request = { series, duty, fixed: fixedOf(diameter, rotationRate), ...water(words), ...common(words) };
  const result = bestPitch(checked(BestPitchRequest, request, optionOf));
  return { result, ...told(result), atWork: workOf(result, series, common(words)) };
}

function workOf(result: BestPitch, withoutPitch: SeriesWithoutPitch, { advanceSpeed, outsideRange }: Common) {
  if (result.state === "failed") return null;
  const { pitchRatio, advanceRatio, diameter, rotationRate, thrust } = result.best;
  const series = { ...withoutPitch, pitchRatio };
  const point = openWaterOfSeries({ series, outsideRange, advanceRatio });
  return { series, point, thrust, diameter, rotationRate, advanceSpeed };
}

function fixedOf(diameter: number | undefined, rotationRate: number | undefined) {
  if (diameter !== undefined && rotationRate !== undefined) return { given: "both", diameter, rotationRate };
  if (rotationRate !== undefined) return { given: "rotationRate", rotationRate };
  if (diameter !== undefined) return { given: "diameter", diameter };
  throw new InputProblem({
    code: "cli.diameter-or-rpm",
    where: "predict",
    found: "neither --diameter nor --rpm was given",
    needed: "one of the two, or both",
    mend: "Give --diameter 76mm, and the best pitch is found with its rotation rate",
  });
}

const KINDS = {
  optimum: "Best pitch ratio",
  edge: "Best pitch ratio, at the edge of the range",
  only: "Pitch ratio that does the duty",
} as const;

function told(result: BestPitch): Pick<Told, "rows" | "answer"> {
  if (result.state === "failed") return { rows: [], answer: result.reason };
  const { best, kind, reynolds } = result;
  return {
    rows: [
      [KINDS[kind], best.pitchRatio, ""],
      ["Diameter", best.diameter * 1000, "mm"],
      ["Rotation rate", best.rotationRate * 60, "rpm"],
      ["Advance ratio", best.advanceRatio, ""],
      ["Thrust", best.thrust, "N"],
      ["Torque", best.torque, "N·m"],
      ["Shaft power", best.shaftPower, "W"],
      ["Efficiency", best.efficiency, ""],
      ["Ideal over real shaft power", best.merit, ""],
      ["Blade Reynolds number at 0.75 R", reynolds === null ? null : reynoldsWords(reynolds), ""],
    ],
  };
}

function pointOf(words: Words, withoutPitch: SeriesWithoutPitch): Told {
  const pitchRatio = words.required("pitch-ratio", "number").value;
  const series = checked(SeriesPropeller, { ...withoutPitch, pitchRatio }, optionOf);
  const D = words.required("diameter", "length").value;
  const n = words.required("rpm", "rotationRate").value;
  const { advanceSpeed, outsideRange } = common(words);
  const { density: rho, kinematicViscosity } = water(words);
  const reynolds = seriesReynolds(series, { diameter: D, rotationRate: n, advanceSpeed, kinematicViscosity });
  const point = openWaterOfSeries({ series, outsideRange, reynolds, advanceRatio: advanceSpeed / (n * D) });
  const thrust = point.thrustCoefficient * rho * n ** 2 * D ** 4;
  const shaftPower = (point.torqueCoefficient * rho * n ** 3 * D ** 5) / TORQUE_OVER_POWER_COEFFICIENT;
  const result = { ...point, thrust, shaftPower, reynolds };
  return {
    result,
    atWork: { series, point, thrust, diameter: D, rotationRate: n, advanceSpeed },
    rows: [
      ["Advance ratio", point.advanceRatio, ""],
      ["K_T", point.thrustCoefficient, ""],
      ["K_T of the nozzle", point.nozzleThrustCoefficient ?? null, ""],
      ["K_Q", point.torqueCoefficient, ""],
      ["Efficiency", point.efficiency, ""],
      ["Thrust", thrust, "N"],
      ["Shaft power", shaftPower, "W"],
      ["Blade Reynolds number at 0.75 R", reynoldsWords(reynolds), ""],
    ],
  };
}

function water(words: Words) {
  const { density, kinematicViscosity } = fluidProperties(fluidOf(words));
  return { density, kinematicViscosity };
}

const fluidOf = (words: Words) => parseFluid(words.text("water") ?? "fresh 18C", "--water");

interface Common {
  /** m/s */ readonly advanceSpeed: number;
  readonly outsideRange: boolean;
}

function common(words: Words): Common {
  return {
    advanceSpeed: words.quantity("advance-speed", "speed")?.value ?? 0,
    outsideRange: words.has("outside-range"),
  };
}

/** The option that a field of the request came from. */
function optionOf(field: string): string | undefined {
  const last = field.split(".").at(-1) ?? "";
  const options: Record<string, string> = {
    shaftPower: "power",
    rotationRate: "rpm",
    advanceSpeed: "advance-speed",
    pitchRatio: "pitch-ratio",
    blades: "series",
    areaRatio: "series",
  };
  return options[last] ?? last;
}

function readable({ result, rows, answer }: Told): string {
  return [
    ...(answer === undefined ? [] : [answer]),
    ...rows
      .filter(([, value]) => value !== null)
      .map(([name, value, unit]) => `${name.padEnd(44)} ${shown(value!)}${unit === "" ? "" : ` ${unit}`}`),
    ...result.warnings.map(({ message }) => `Note: ${message}`),
    "",
  ].join("\n");
}

function shown(value: number | string): string {
  return typeof value === "string" ? value : formatNumber(value, 4);
}

import { basename } from "node:path";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import { BladeElementsRequest, type BladeElementsResult, type BladePower } from "../../shared/model/bladeElements.ts";
import { bladeElementsSweep } from "../../shared/propeller/blade/bladeElements.ts";
import { checkedGeometry } from "../../shared/propeller/blade/checkedGeometry.ts";
import { formatNumber } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { geometryOfTable } from "../../shared/sections/geometryTable.ts";
import { polarOfTable } from "../../shared/sections/polarTable.ts";
import { readLogFile } from "../intake/readLogFile.ts";
import { checked } from "./checked.ts";
import type { Options, Words } from "./options.ts";
import { runStrength, STRENGTH_OPTIONS } from "./predictStrength.ts";

/** Options of `predict` that ask blade elements. */
export const BLADE_OPTIONS: Options = {
  geometry: {
    value: "FILE",
    text: "table of blade sections: radius, chord, pitch angle or pitch, thickness, camber; units in the header",
  },
  blades: { value: "NUMBER", text: "with --geometry: number of blades" },
  hub: { value: "QUANTITY", text: "with --geometry: hub diameter (the first station if absent)" },
  roughness: { value: "QUANTITY", text: "with --geometry: roughness height of the blade (smooth if absent)" },
  polars: { value: "FILE", text: "with --geometry: measured lift and drag, instead of the section model" },
  ...STRENGTH_OPTIONS,
  "advance-ratios": { value: "LIST", text: 'with --geometry: a sweep, e.g. "0 0.2 0.4"; instead of --advance-speed' },
};

/** What blade elements make of a blade, at one advance speed or over advance ratios. */
export async function runBlades(words: Words): Promise<number> {
  const request = checked(BladeElementsRequest, await requestOf(words), optionOf);
  if (words.has("strength")) return runStrength(words, request);
  const points = bladeElementsSweep({ ...request, fluid: fluidProperties(request.fluid) });
  process.stdout.write(words.has("json") ? `${JSON.stringify({ points }, null, 2)}\n` : readable(points));
  return points.some(({ state }) => state === "failed") ? 1 : 0;
}

async function requestOf(words: Words) {
  const bladeCount = words.whole("blades", 1);
  if (bladeCount === undefined) throw noBlades();
  const table = await tableIn(words.text("geometry")!);
  const diameter = words.quantity("diameter", "length")?.value;
  const hubDiameter = words.quantity("hub", "length")?.value;
  const frame = { bladeCount, ...(diameter && { diameter }), ...(hubDiameter !== undefined && { hubDiameter }) };
  const geometry = checkedGeometry(geometryOfTable(table, frame));
  const polars = words.text("polars");
  const rotationRate = words.required("rpm", "rotationRate").value;
  return {
    geometry,
    surface: { roughness: words.quantity("roughness", "length")?.value ?? 0 },
    fluid: parseFluid(words.text("water") ?? "fresh 18C", "--water"),
    points: speedsOf(words, rotationRate * geometry.diameter).map((advanceSpeed) => ({ rotationRate, advanceSpeed })),
    ...(polars === undefined ? {} : { polars: polarOfTable(await tableIn(polars)) }),
  };
}

const tableIn = (path: string) => readLogFile(path, basename(path));

/** m/s; n D turns an advance ratio into a speed. */
function speedsOf(words: Words, speedOfOne: number): number[] {
  const list = words.text("advance-ratios");
  if (list === undefined) return [words.quantity("advance-speed", "speed")?.value ?? 0];
  return list
    .trim()
    .split(/[\s;]+|,(?=\s|\d*\.)/)
    .filter((one) => one !== "")
    .map((one) => {
      const J = Number(one.replace(",", "."));
      if (Number.isFinite(J)) return J * speedOfOne;
      throw new InputProblem({
        code: "cli.advance-ratios",
        where: "--advance-ratios",
        found: `"${one}" is no number`,
        needed: "advance ratios with blanks between them",
        mend: 'For example --advance-ratios "0 0.2 0.4 0.6"',
      });
    });
}

function noBlades(): InputProblem {
  return new InputProblem({
    code: "cli.missing-option",
    where: "--blades",
    found: "this option is missing",
    needed: "the number of blades",
    mend: "Give --blades 3, for example",
  });
}

/** The option that a field of the request came from. */
function optionOf(field: string): string | undefined {
  const last = field.split(".").at(-1) ?? "";
  const options: Record<string, string> = {
    bladeCount: "blades",
    hubDiameter: "hub",
    rotationRate: "rpm",
    advanceSpeed: "advance-speed",
    points: "advance-ratios",
  };
  return options[last] ?? last;
}

const HEAD = "      J       K_T     10 K_Q        eta  thrust, N  torque, N·mm   shaft, W";

function readable(points: readonly BladeElementsResult[]): string {
  const messages = new Set(
    points.flatMap((point) => (point.state === "solved" ? point.warnings : [])).map(({ message }) => message),
  );
  const only = points.length === 1 && points[0]!.state === "solved" ? points[0]!.power : null;
  return [
    HEAD,
    ...points.map(rowOf),
    ...(only ? ["", ...powerRows(only)] : []),
    ...[...messages].map((message) => `Note: ${message}`),
    "",
  ].join("\n");
}

function rowOf(point: BladeElementsResult): string {
  if (point.state === "failed") return `no solution at r = ${formatNumber(point.radius * 1000, 3)} mm: ${point.reason}`;
  const cells: readonly (readonly [number, number, number])[] = [
    [point.advanceRatio, 7, 3],
    [point.thrustCoefficient, 10, 4],
    [point.torqueCoefficient * 10, 11, 4],
  ];
  const eta = point.efficiency === null ? "-".padStart(11) : point.efficiency.toFixed(3).padStart(11);
  const last = [
    formatNumber(point.thrust, 4).padStart(11),
    formatNumber(point.torque * 1000, 4).padStart(14),
    formatNumber(point.power.shaft, 4).padStart(11),
  ];
  return `${cells.map(([value, width, digits]) => value.toFixed(digits).padStart(width)).join("")}${eta}${last.join("")}`;
}

const SHARES: readonly (readonly [Exclude<keyof BladePower, "shaft">, string])[] = [
  ["useful", "Useful: thrust times advance speed"],
  ["ideal", "Least an ideal disc needs beside that"],
  ["induced", "Uneven load along the blade, hub"],
  ["swirl", "Rotation left in the stream"],
  ["tip", "Flow round the tips: few blades"],
  ["hub", "Flow round the inner ends"],
  ["profile", "Drag of the sections"],
];

function powerRows(power: BladePower): string[] {
  return [
    "Where the shaft power goes:",
    ...SHARES.map(
      ([part, text]) =>
        `  ${text.padEnd(40)} ${formatNumber(power[part], 3).padStart(8)} W  ${((100 * power[part]) / power.shaft).toFixed(1).padStart(6)} %`,
    ),
  ];
}

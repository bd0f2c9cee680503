import type { z } from "zod";
import { PartsBox, ShortlistRequest, ShortlistRequirement } from "../../shared/model/shortlist.ts";
import type { PointQuantity, Shortlist, ShortlistRow } from "../../shared/model/shortlistResult.ts";
import { formatNumber } from "../../shared/quantity/format.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { demandsInWords } from "../../shared/shortlist/demandsInWords.ts";
import { pointInWords } from "../../shared/shortlist/pointInWords.ts";
import { shortlistCsv } from "../../shared/shortlist/shortlistCsv.ts";
import { combinationInWords, probabilityInWords } from "../../shared/shortlist/words.ts";
import { fieldProblem } from "../problems/fieldProblem.ts";
import { shortlistOnPool } from "../work/shortlists.ts";
import { WorkPool } from "../work/workPool.ts";
import { aligned } from "./aligned.ts";
import { jsonOfFile } from "./namedFile.ts";
import type { Usage, Words } from "./options.ts";

export const USAGE: Usage = {
  verb: "shortlist",
  arguments: "",
  about:
    "Every combination of a parts box against a requirement: those that meet it, ranked, why the others fail, and the\nnearest misses. Both files are JSON in SI units; /api/docs of a running workbench describes ShortlistRequirement and\nPartsBox. Exit code 1: no combination meets the requirement.",
  options: {
    requirement: { value: "FILE", text: "what a thruster must do and may be, e.g. thrustAhead, supplyCurrent, water" },
    parts: { value: "FILE", text: "motors, controllers, packs or supplies, propellers, gears" },
    rows: { value: "COUNT", text: "best combinations to print (25 if absent)" },
    misses: { value: "COUNT", text: "nearest misses to print (12 if absent)" },
    "monte-carlo": { value: "COUNT", text: "check the probabilities of the best five by so many draws; at least 1000" },
    seed: { value: "COUNT", text: "start of the draws (1 if absent)" },
    json: { text: "print the whole result as JSON, SI units" },
    csv: { text: "print the ranked combinations as comma-separated text, SI units" },
  },
  examples: [
    "shortlist --requirement requirement.json --parts parts.json",
    "shortlist --requirement requirement.json --parts parts.json --rows 5 --monte-carlo 20000 --json",
  ],
};

export async function run(words: Words): Promise<number> {
  const request = await requestOf(words);
  const pool = new WorkPool();
  try {
    const result = await shortlistOnPool(pool, request);
    process.stdout.write(printed(words, result));
    return result.counts.meeting > 0 ? 0 : 1;
  } finally {
    await pool.close();
  }
}

function printed(words: Words, result: Shortlist): string {
  if (words.has("json")) return `${JSON.stringify(result, null, 2)}\n`;
  return words.has("csv") ? shortlistCsv(result) : `${linesOf(result).join("\n")}\n`;
}

async function requestOf(words: Words): Promise<ShortlistRequest> {
  const requirement = await documentOf(words, "requirement", ShortlistRequirement);
  const box = await documentOf(words, "parts", PartsBox);
  const draws = words.whole("monte-carlo", 1000);
  const [rows, misses] = [words.whole("rows", 1), words.whole("misses", 0)];
  return checkedDocument(
    ShortlistRequest,
    {
      ...{ requirement, box },
      ...(rows !== undefined && { rows }),
      ...(misses !== undefined && { misses }),
      ...(draws !== undefined && { monteCarlo: { draws, seed: words.whole("seed", 0) ?? 1 } }),
    },
    "command line",
  );
}

async function documentOf<S extends z.ZodType>(words: Words, name: string, schema: S): Promise<z.output<S>> {
  const path = words.text(name);
  if (path === undefined) throw missing(name);
  const where = `--${name} ${path}`;
  return checkedDocument(schema, await jsonOfFile(path, { where, needed: NEEDED }), where);
}

function checkedDocument<S extends z.ZodType>(schema: S, data: unknown, where: string): z.output<S> {
  const read = schema.safeParse(data);
  if (read.success) return read.data;
  const problem = fieldProblem(read.error.issues[0]!, schema, data);
  throw new InputProblem({ ...problem, where: `${where}, ${problem.where}` });
}

const NEEDED = "a JSON document, SI units; /api/docs shows its fields";

function missing(name: string): InputProblem {
  return new InputProblem({
    code: "cli.missing-option",
    where: `--${name}`,
    found: "this option is missing",
    needed: "a file",
    mend: `Give --${name}; --help shows how`,
  });
}

function linesOf({
  answer,
  requirement,
  rows,
  failures,
  easing,
  misses,
  warnings,
  cautions,
  method,
}: Shortlist): string[] {
  // Alike propellers are cautioned alike, so each is told once.
  const ofRows = new Map(rows.flatMap((row) => row.warnings.map((one) => [one.message, one] as const))).values();
  return [
    answer,
    ...(rows.length === 0 ? [] : ["", ...aligned([HEAD, ...rows.map(cellsOf)]), "", method]),
    ...section("What was asked", demandsInWords(requirement)),
    ...section(
      "Why combinations fail",
      failures.map(({ sentence }) => sentence),
    ),
    ...section(
      "What easing would gain",
      easing.slice(0, 5).map(({ sentence }) => sentence),
    ),
    ...section(
      "Nearest misses",
      misses.map(({ sentence }) => sentence),
    ),
    "",
    ...[...warnings, ...ofRows].map(({ message }) => `Note: ${message}`),
    ...cautions.map((text) => `Caution: ${text}`),
  ];
}

function section(title: string, sentences: readonly string[]): string[] {
  return sentences.length === 0 ? [] : ["", title, ...sentences.map((sentence) => `- ${sentence}`)];
}

const HEAD = [
  "",
  "score",
  "combination",
  "greatest thrust",
  "thrust/power",
  "tip speed",
  "mass",
  "price",
  "probability",
];

function cellsOf(row: ShortlistRow): string[] {
  const point = row.points[0];
  const amount = (value: number | null | undefined, unit: string) =>
    value === null || value === undefined ? "not stated" : `${formatNumber(value)}${unit}`;
  const ofPoint = (quantity: PointQuantity, symbol: string) =>
    (point && pointInWords(point, quantity, { symbol, factor: 1 })) ?? "not stated";
  return [
    `${row.rank}`,
    formatNumber(row.score),
    combinationInWords(row.combination),
    ofPoint("greatestThrust", "N"),
    ofPoint("thrustPerPower", "N/W"),
    ofPoint("tipSpeed", "m/s"),
    amount(row.mass, " kg"),
    amount(row.price, ""),
    row.probability === null ? "not stated" : probabilityInWords(row.probability),
  ];
}

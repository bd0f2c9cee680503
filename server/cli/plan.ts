import { mountingPlan } from "../../shared/compare/planning/mountingPlan.ts";
import { type MountingPlan, PlanRequest, type RunSheet } from "../../shared/model/mountingPlan.ts";
import { formatPercent } from "../../shared/quantity/format.ts";
import { aligned } from "./aligned.ts";
import { checked } from "./checked.ts";
import type { Usage, Words } from "./options.ts";

export const USAGE: Usage = {
  verb: "plan",
  arguments: "",
  about:
    "How many mountings of each variant show a difference, from the spread between mountings seen so far; with --variant\nalso the sheet to run them by, in random order from a stated seed.",
  options: {
    spread: { value: "FRACTION", text: "standard deviation from mounting to mounting, relative, e.g. 2%" },
    "degrees-of-freedom": {
      value: "NUMBER",
      text: "mountings less propellers behind that spread; known well where absent",
    },
    difference: { value: "FRACTION", text: "difference that must be seen, e.g. 5%" },
    power: { value: "FRACTION", text: "chance of seeing it, 80% where absent" },
    level: { value: "FRACTION", text: "chance of a false claim, 5% where absent" },
    paired: { text: "each block holds one mounting of each variant, and the difference inside the block counts" },
    "so-far": { value: "COUNT", text: "mountings of each variant that are there already" },
    variant: { value: "NAME", text: "what is mounted; two or more make a run sheet", many: true },
    block: { value: "NAME", text: "a day or a pack over which the mountings are spread", many: true },
    "block-kind": { value: "day|pack|block", text: "what the blocks are" },
    seed: { value: "NUMBER", text: "of the order; 1 where absent" },
    diameter: { value: "QUANTITY", text: "greatest diameter, for the depth to keep" },
    immersion: { value: "QUANTITY", text: "depth of the shaft to keep" },
    "in-air": { text: "the stand runs in air" },
    json: { text: "print the plan as JSON" },
  },
  examples: [
    "plan --spread 2% --difference 5%",
    'plan --spread 2% --degrees-of-freedom 4 --difference 5% --variant "as printed" --variant sanded --block Monday --block Tuesday --block-kind day --seed 7',
  ],
};

export function run(words: Words): number {
  const plan = mountingPlan(requestOf(words));
  process.stdout.write(words.has("json") ? `${JSON.stringify(plan, null, 2)}\n` : `${linesOf(plan).join("\n")}\n`);
  return 0;
}

/** Fields of the request whose option has another name. */
const OPTION_OF: Readonly<Record<string, string>> = {
  runToRun: "spread",
  runToRunDegreesOfFreedom: "degrees-of-freedom",
  mountingsSoFar: "so-far",
  "sheet.seed": "seed",
  "sheet.blockKind": "block-kind",
};

function requestOf(words: Words): PlanRequest {
  const fraction = (name: string) => words.quantity(name, "fraction")?.value;
  const degrees = words.quantity("degrees-of-freedom", "number")?.value;
  const [power, level] = [fraction("power"), fraction("level")];
  const document = {
    runToRun: words.required("spread", "fraction").value,
    ...(degrees !== undefined && { runToRunDegreesOfFreedom: degrees }),
    difference: words.required("difference", "fraction").value,
    ...(power !== undefined && { power }),
    ...(level !== undefined && { level }),
    design: words.has("paired") ? "paired" : "separate",
    mountingsSoFar: words.whole("so-far", 0) ?? 0,
    ...sheetOf(words),
  };
  return checked(PlanRequest, document, (field) => OPTION_OF[field] ?? field);
}

function sheetOf(words: Words) {
  const variants = words.all("variant");
  if (variants.length === 0) return {};
  const [diameter, immersion] = ["diameter", "immersion"].map((name) => words.quantity(name, "length")?.value);
  return {
    sheet: {
      variants,
      blocks: words.all("block"),
      blockKind: words.text("block-kind") ?? "block",
      seed: words.whole("seed", 0) ?? 1,
      ...(diameter !== undefined && { diameter }),
      ...(immersion !== undefined && { immersion }),
      inAir: words.has("in-air"),
    },
  };
}

function linesOf({ sentence, rows, sheet, warnings }: MountingPlan): string[] {
  return [
    sentence,
    "",
    ...aligned([
      ["mountings of each", "chance of seeing it", "smallest difference seen"],
      ...rows.map((row) => [`${row.mountings}`, formatPercent(row.power), formatPercent(row.smallestDifference)]),
    ]),
    ...warnings.map(({ message }) => `Note: ${message}`),
    ...(sheet === null ? [] : ["", ...sheetLines(sheet)]),
  ];
}

function sheetLines({ seed, generator, blockKind, rows, blanks, before, eachRun, cautions }: RunSheet): string[] {
  const heads = blanks.map(({ title, unit }) => (unit === "" ? title : `${title} (${unit})`));
  return [
    ...cautions.map((text) => `Caution: ${text}`),
    "",
    "Before the first run",
    ...before.map((text) => `- ${text}`),
    "Each run",
    ...eachRun.map((text) => `- ${text}`),
    "",
    `Order from seed ${seed}, ${generator}. Write for each run: ${heads.join(", ")}.`,
    ...aligned([
      ["run", blockKind, "variant", "mounting"],
      ...rows.map(({ run: number, block, variant, mounting }) => [`${number}`, block, variant, `${mounting}`]),
    ]),
  ];
}

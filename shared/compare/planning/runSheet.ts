import type { RunSheet, RunSheetRequest, RunSheetRow } from "../../model/mountingPlan.ts";
import { uniformsFrom } from "../../numeric/pcg32.ts";
import { formatQuantity } from "../../quantity/format.ts";

/**
 * The runs of a plan in random order: inside each block every variant as often as any other, shuffled anew for each
 * mounting round, so that drift of pack, water and stand falls on all alike.
 *
 * Source   randomised blocks, Fisher, The Design of Experiments (1935), ch. 4; shuffle Durstenfeld, Communications of the
 *          ACM 7 (1964) 420; generator PCG-XSH-RR (pcg32).
 */
export function runSheet(request: RunSheetRequest, mountings: number): RunSheet {
  const { seed, blockKind } = request;
  return {
    seed,
    generator: "PCG-XSH-RR 64/32 (O'Neill 2014), stream 1",
    blockKind,
    rows: rowsOf(request, mountings),
    blanks: BLANKS.filter(({ water }) => !(water && request.inAir)).map(({ title, unit }) => ({ title, unit })),
    before: beforeRuns(request),
    eachRun: eachRun(request),
    cautions: CAUTIONS.filter(({ water }) => !(water && request.inAir)).map(({ text }) => text),
  };
}

function rowsOf({ variants, seed, blocks }: RunSheetRequest, mountings: number): RunSheetRow[] {
  const uniform = uniformsFrom(seed);
  const names = blocks.length === 0 ? ["all"] : blocks;
  const rows: RunSheetRow[] = [];
  let mounting = 0;
  names.forEach((block, b) => {
    // As even as whole numbers go; the first blocks take what is over.
    const rounds = Math.floor(mountings / names.length) + (b < mountings % names.length ? 1 : 0);
    for (let round = 0; round < rounds; round++) {
      mounting++;
      for (const variant of shuffled(variants, uniform)) rows.push({ run: rows.length + 1, block, variant, mounting });
    }
  });
  return rows;
}

function shuffled<T>(items: readonly T[], uniform: () => number): T[] {
  const order = [...items];
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}

/** Columns left empty; those of water are not for a stand in air. */
const BLANKS: readonly { readonly title: string; readonly unit: string; readonly water?: true }[] = [
  { title: "Name of the log", unit: "" },
  { title: "Start", unit: "hh:mm" },
  { title: "Pack voltage at rest, before", unit: "V" },
  { title: "Water temperature", unit: "°C", water: true },
  { title: "Depth of the shaft", unit: "mm", water: true },
  { title: "Zero of the scale, before", unit: "gf" },
  { title: "Zero of the scale, after", unit: "gf" },
  { title: "Remarks", unit: "" },
];

/** Immersion under which air is drawn in, in diameters; ITTC open-water practice 7.5-02-03-02.1. */
const LEAST_IMMERSION = 1.5;
const MILLIMETRE = { symbol: "mm", factor: 1e-3 };

function beforeRuns({ immersion, diameter, inAir, blockKind }: RunSheetRequest): string[] {
  const depth =
    immersion !== undefined
      ? `Set the shaft ${formatQuantity(immersion, MILLIMETRE)} under the surface and leave it there for all runs.`
      : diameter !== undefined
        ? `Set the shaft at least ${formatQuantity(LEAST_IMMERSION * diameter, MILLIMETRE)} under the surface (1.5 diameters) and leave it there for all runs.`
        : "Set the shaft at least 1.5 diameters under the surface and leave it there for all runs.";
  return [
    "Calibrate the scale with dead weights once, and do not touch lever or cell afterwards.",
    ...(inAir
      ? []
      : [depth, "Let the water come to rest and to the temperature of the room; wipe bubbles off the blades."]),
    "Warm up: run the motor for five minutes at half throttle, so that the first run is not the cold one.",
    ...(blockKind === "pack" ? ["Charge every pack fully and let it rest before its block."] : []),
    ...(blockKind === "day"
      ? ["Finish a block on its day: what changes overnight then falls on all variants alike."]
      : []),
  ];
}

function eachRun({ inAir }: RunSheetRequest): string[] {
  return [
    "Disconnect the pack. Take the propeller off and put the one of this row on, also where it is the same one: re-mounting is what is tested.",
    "Log ten seconds at rest, climb in held steps of ten seconds to full throttle, come down the same steps, log ten seconds at rest.",
    ...(inAir ? [] : ["Wait until the water is still before the next run."]),
    "Keep to the order of the sheet. A run that went wrong is repeated at the end and noted, not replaced in silence.",
  ];
}

const CAUTIONS: readonly { readonly text: string; readonly water?: true }[] = [
  {
    text: "Spinning blades cut and throw: guard the propeller, keep hands, hair and cords away, wear eye protection, and disconnect the pack before touching the shaft.",
  },
  {
    text: "Lithium packs burn: never leave one charging or running alone, stay inside its maker's limits, and stop for a swollen, hot or wet pack.",
  },
  {
    text: "Electricity near water kills: feed the stand from a pack, not from the mains; keep chargers and supplies away from the water and behind a residual-current device.",
    water: true,
  },
  { text: "Local codes and makers' data sheets come first; ask a qualified person where in doubt." },
];

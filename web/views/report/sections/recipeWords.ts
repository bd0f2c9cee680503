import { ROLE_NAMES } from "../../../../shared/log/roleUnits.ts";
import type { ColumnUse, Recipe } from "../../../../shared/model/recipe.ts";
import type { Run } from "../../../../shared/model/run.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import { counts, joined } from "../../../app/words.ts";
import { METRE, METRE_PER_SECOND, MILLIMETRE, NEWTON, PERCENT } from "../../bench/shownUnits.ts";

const HERTZ = { symbol: "Hz", factor: 1 };

/** Everything a person decided about a log, in sentences: what another needs to reduce it alike. */
export function recipeWords({ recipe, companion }: Run): string[] {
  return [
    columnsWords("Columns", recipe.columns),
    ...(companion
      ? [`${columnsWords(`Columns of ${companion.file.name}`, companion.columns)} ${lagWords(companion.lag)}`]
      : []),
    ...readingWords(recipe),
    ...(recipe.polePairs === undefined ? [] : [`${counts(recipe.polePairs, "pole pair")}.`]),
    ...correctionWords(recipe),
    tareWords(recipe.tare),
    plateauWords(recipe),
    ...leftOutWords(recipe),
    ...advanceWords(recipe),
    ...standWords(recipe),
  ];
}

function columnsWords(name: string, columns: readonly ColumnUse[]): string {
  const used = columns.filter(({ role }) => role !== "ignore");
  if (used.length === 0) return `${name}: none is named.`;
  const words = used.map(
    ({ column, role, unit }) => `${column + 1} ${ROLE_NAMES[role]}${unit === "" ? "" : ` (${unit})`}`,
  );
  return `${name}: ${words.join(", ")}.`;
}

const lagWords = (lag: NonNullable<Run["companion"]>["lag"]) =>
  lag.mode === "automatic"
    ? "Its clock is laid over the other by the signals of both."
    : `Its clock is ${formatNumber(lag.seconds)} s early.`;

function readingWords({ reading }: Recipe): string[] {
  const settled = Object.entries(reading ?? {}).map(
    ([name, value]) => `${READING[name] ?? name} ${JSON.stringify(value)}`,
  );
  return settled.length === 0 ? [] : [`Read with ${joined(settled)}.`];
}

const READING: Readonly<Record<string, string>> = {
  encoding: "characters in",
  delimiter: "cells parted by",
  decimalMark: "the decimal mark",
  thousands: "digits in groups read:",
  headerLine: "the header on line",
  firstDataLine: "rows from line",
  refusedRepairs: "these repairs refused:",
};

function correctionWords({ corrections }: Recipe): string[] {
  return Object.entries(corrections).map(([role, { factor, offset, relativeUncertainty, resolution }]) => {
    const doubt =
      relativeUncertainty === 0
        ? "no uncertainty stated"
        : `factor ± ${formatQuantity(relativeUncertainty, PERCENT, 2)} (one standard uncertainty)`;
    const step = resolution === undefined ? "" : `, steps of ${formatNumber(resolution)} in the unit of the column`;
    return `Correction of ${ROLE_NAMES[role as keyof typeof ROLE_NAMES]}: (reading − ${formatNumber(offset, 6)}) × ${formatNumber(factor, 6)}, ${doubt}${step}.`;
  });
}

function tareWords(tare: Recipe["tare"]): string {
  if (tare.mode === "none") return "No tare is taken off.";
  const shape = tare.shape === "line" ? ", as one line through them" : "";
  if (tare.mode === "zeroThrottle") return `Tare from the stretches at rest${shape}.`;
  return `Tare from ${joined(tare.windows.map(spanWords))}${shape}.`;
}

const spanWords = ({ start, end }: { readonly start: number; readonly end: number }) =>
  `${formatNumber(start, 5)} to ${formatNumber(end, 5)} s`;

function plateauWords({ plateaus }: Recipe): string {
  if (plateaus.mode === "sweep") return "A slow ramp, by regression over the whole trace.";
  if (plateaus.mode === "automatic")
    return plateaus.minimumDuration === undefined
      ? "Plateaus as the program finds them."
      : `Plateaus as the program finds them, of at least ${formatNumber(plateaus.minimumDuration)} s.`;
  return `Plateaus set by hand: ${plateaus.spans.map(spanWords).join("; ")}.`;
}

const leftOutWords = ({ leftOut }: Recipe): string[] =>
  leftOut.map((one) => `Left out: ${"line" in one ? `line ${one.line}` : spanWords(one)}, because: ${one.reason}`);

function advanceWords({ advanceSpeeds, advanceOrder }: Recipe): string[] {
  if (advanceSpeeds === undefined) return [];
  const doubt =
    advanceSpeeds.relativeUncertainty === 0
      ? "no uncertainty stated"
      : `± ${formatQuantity(advanceSpeeds.relativeUncertainty, PERCENT, 2)} (one standard uncertainty)`;
  const speed =
    advanceSpeeds.mode === "constant"
      ? formatQuantity(advanceSpeeds.speed, METRE_PER_SECOND)
      : advanceSpeeds.spans
          .map((span) => `${formatQuantity(span.speed, METRE_PER_SECOND)} from ${spanWords(span)}`)
          .join("; ");
  const order = advanceOrder === undefined ? "" : ` Curves of order ${advanceOrder}.`;
  return [`Advance speed stated: ${speed}, ${doubt}.${order}`];
}

function standWords({ stand }: Recipe): string[] {
  if (stand === undefined) return [];
  const { shaftImmersion, tankLength, tankWidth, tankDepth, loadCellCapacity, tachometerMarkers, tachometerSampling } =
    stand;
  const told = [
    shaftImmersion === undefined ? "" : `shaft ${formatQuantity(shaftImmersion, MILLIMETRE)} under the surface`,
    ...[["long", tankLength] as const, ["wide", tankWidth] as const, ["deep", tankDepth] as const].map(
      ([word, size]) => (size === undefined ? "" : `tank ${formatQuantity(size, METRE)} ${word}`),
    ),
    loadCellCapacity === undefined ? "" : `load cell to ${formatQuantity(loadCellCapacity, NEWTON)}`,
    tachometerMarkers === undefined ? "" : `${counts(tachometerMarkers, "tachometer mark")} a turn`,
    tachometerSampling === undefined ? "" : `tachometer looks ${formatQuantity(tachometerSampling, HERTZ)}`,
  ].filter((words) => words !== "");
  return told.length === 0 ? [] : [`Stand, as stated: ${joined(told)}.`];
}

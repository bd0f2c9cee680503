import type { Reduction } from "../model/reduction.ts";
import { formatNumber, formatUncertain } from "../quantity/format.ts";

const PER_MINUTE = { symbol: "N per minute", factor: 1 / 60 } as const;

/** How the zero moved, and how much of the thrust its correction is; one or two sentences. */
export function tareInWords({ tare, plateaus }: Pick<Reduction, "tare" | "plateaus">): string {
  if (tare.windows.length === 0) return "No tare was taken off: the thrust reading stands as it is in the log.";
  return [driftInWords(tare), sizeInWords(plateaus)].filter((part) => part !== "").join(" ");
}

function driftInWords({ driftRate, drift, windows, shape }: Reduction["tare"]): string {
  if (windows.length === 1) return "One rest only, so a drift of the zero can not be seen.";
  const way =
    shape === "line" ? "by one straight line through all tare windows" : "from the first tare window to the last";
  if (driftRate) {
    const [low, high] = driftRate.interval95;
    const rate = formatUncertain(driftRate, PER_MINUTE);
    return low <= 0 && high >= 0
      ? `The zero drifts by ${rate} ${way}: no drift can be told from none.`
      : `The zero drifts by ${rate} ${way}.`;
  }
  return drift ? `The zero changes by ${formatUncertain(drift, { symbol: "N", factor: 1 })} ${way}.` : "";
}

/** Where the correction is the greatest part of the thrust. */
function sizeInWords(plateaus: Reduction["plateaus"]): string {
  const parts = plateaus.map(({ thrustTare, thrust }) => Math.abs(thrustTare / thrust.value));
  const greatest = parts.reduce((at, part, i) => (part > (parts[at] ?? 0) ? i : at), 0);
  const plateau = plateaus[greatest];
  if (!plateau || !Number.isFinite(parts[greatest]!)) return "";
  const what = plateau.foundBy === "binned" ? "bin" : plateau.foundBy === "row" ? "reading" : "plateau";
  return `At most it takes ${formatNumber(plateau.thrustTare, 3)}\u202fN off ${what} ${greatest + 1}, ${formatNumber(100 * parts[greatest]!, 2)}\u202f% of its thrust.`;
}

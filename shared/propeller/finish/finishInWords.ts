import type { FinishChange, FinishClaim, FinishResult, SmoothGain } from "../../model/finishFit.ts";
import { formatNumber, formatQuantity, formatUncertain } from "../../quantity/format.ts";
import type { Uncertain } from "../../quantity/uncertain.ts";
import type { BrokenBound } from "./fitSurface.ts";

const MICROMETRE = { symbol: "µm", factor: 1e-6 };
const PERCENT = { symbol: "%", factor: 0.01 };

/** "8 % (95 %: 3 to 13 %)" of a ratio, as what it adds. */
function addedInWords({ value, interval95: [low, high] }: Uncertain): string {
  const percent = (ratio: number) => formatNumber((ratio - 1) / PERCENT.factor, Math.abs(ratio - 1) < 0.095 ? 1 : 2);
  return `${percent(value)} % (95 %: ${percent(low)} to ${percent(high)} %)`;
}

/** How a ratio may be told: all of its interval on one side of 1, or not; likewise a difference on one side of 0. */
function sideOf({ interval95: [low, high] }: Uncertain, even: 0 | 1 = 1): "more" | "less" | "unknown" {
  if (low > even) return "more";
  return high < even ? "less" : "unknown";
}

/** What the second finish did to drag and lift of the sections. */
export function changeSentence(
  [before, after]: readonly [NamedDrag, NamedDrag],
  { liftRatio, dragChange }: Pick<FinishChange, "liftRatio" | "dragChange">,
): string {
  const from = `from ${formatUncertain(before.sectionDrag)} to ${formatUncertain(after.sectionDrag)}`;
  // The doubt of the difference is smaller than those of the two: what both share cancels.
  const difference = `a difference of ${formatUncertain(dragChange)}`;
  const drag = {
    more: `raised the section drag at 0.7 R ${from}, ${difference}`,
    less: `cut the section drag at 0.7 R ${from}, ${difference}`,
    unknown: `made no difference to the section drag at 0.7 R that can be claimed (${from}, ${difference})`,
  }[sideOf(dragChange, 0)];
  const lift = {
    more: `raised the lift by ${addedInWords(liftRatio)}`,
    less: `changed the lift by ${addedInWords(liftRatio)}`,
    unknown: `no change of lift can be claimed (${addedInWords(liftRatio)})`,
  }[sideOf(liftRatio)];
  return `Going from ${before.name} to ${after.name} ${drag}; ${sideOf(liftRatio) === "unknown" ? lift : `it ${lift}`}.`;
}

interface NamedDrag {
  readonly name: string;
  readonly sectionDrag: Uncertain;
}

/** What is said of one finish by itself: always where there is no answer, else where no change is told. */
export function finishSentence(result: FinishResult, alone: boolean): string | undefined {
  if (result.state === "outOfReach") return result.sentence;
  if (result.state === "failed") return `${result.name}: ${result.reason}.`;
  if (!alone) return undefined;
  const { name, sectionDrag, liftFactor } = result;
  const like = `, ${roughnessInWords(result)}`;
  return `The sections of ${name} have a drag at 0.7 R of ${formatUncertain(sectionDrag)}${like}, and ${formatUncertain(liftFactor)} times the lift of clean ones.`;
}

type Rough = Pick<Extract<FinishResult, { state: "fitted" }>, "roughness" | "roughnessInterval95">;

/** "the drag of a roughness of 41 µm (95 %: 12 to 90 µm)", or what is known of it where there is no such number. */
export function roughnessInWords({ roughness, roughnessInterval95: interval }: Rough): string {
  const height = (metres: number) => formatQuantity(metres, MICROMETRE, 2);
  if (interval === null) return "more than any roughness up to 1 mm gives";
  const [low, high] = interval;
  const ends = `95 %: ${low === 0 ? "smooth" : height(low)} to ${high === null ? "beyond 1 mm" : height(high)}`;
  if (roughness !== null) return `the drag of a roughness of ${height(roughness)} (${ends})`;
  if (low === 0 && high !== null) return `no more than a smooth section has (roughness, ${ends})`;
  return low > 0 ? `more than a roughness of 1 mm gives (${ends})` : `that of no roughness (${ends})`;
}

/** What is left to gain by smoothing on. */
export function smoothGainSentence(name: string, gain: Omit<SmoothGain, "sentence">): string {
  const { thrustAtEqualRotation: rotation, thrustAtEqualPower: power, smoothRoughness } = gain;
  const atPower = power === null ? "" : `, and ${addedInWords(power)} at equal shaft power`;
  const numbers = `${addedInWords(rotation)} at equal rotation rate${atPower}`;
  const smooth = `A hydraulically smooth surface (roughness below ${formatQuantity(smoothRoughness, MICROMETRE, 2)} here)`;
  const sides = [rotation, ...(power === null ? [] : [power])].map((ratio) => sideOf(ratio));
  if (sides.includes("more")) {
    return `${smooth} could at best still change the thrust of ${name} by ${numbers}. That is all that further smoothing can bring.`;
  }
  if (sides.every((side) => side === "less")) {
    return `${name} already does better than the smooth blade predicted (${numbers}), so no further gain from smoothing is in sight, and the described blade or a calibration may be off.`;
  }
  return `No further gain from smoothing ${name} can be promised: a hydraulically smooth surface (roughness below ${formatQuantity(smoothRoughness, MICROMETRE, 2)} here) would change the thrust by ${numbers}.`;
}

/** What else than the surface explains that blades make less, or take more, than clean ones. */
export function shapeSentence(isGeneric: boolean): string {
  const what = "a wrong outline or pitch explains the same deficit as a surface";
  return isGeneric
    ? `The outline is that of a series, not measured: ${what}, and only the change between two finishes is free of it.`
    : `Where the blade shape was filled in from an outline rather than measured, ${what}.`;
}

const SUSPECTS =
  "the tare, the calibration of the thrust, the rotation rate (pole pairs) and whether both are the same propeller";

/** Whether a surface can bring what is claimed. */
export function claimSentence(
  name: string,
  { claimedFactor, verdict, liftFactorNeeded }: Omit<FinishClaim, "sentence">,
): string {
  const claim = `${claimedFactor} times the thrust of ${name} at equal rotation rate`;
  const needed =
    liftFactorNeeded === null
      ? "more lift than any factor on these sections gives"
      : `a lift factor of ${formatNumber(liftFactorNeeded, 2)} at the drag of a smooth section`;
  switch (verdict) {
    case "refuted":
      return `${claim} would need ${needed}: no change of surface explains that. If a log shows it, check ${SUSPECTS}.`;
    case "open":
      return `${claim} would need ${needed}, which is more than surfaces give; the doubts of measurement and prediction leave it open.`;
    case "possible":
      return `${claim} would need ${needed}. A surface can give that, because ${name} makes so little; before believing it, check ${SUSPECTS}.`;
  }
}

const LIKELY: Readonly<Record<BrokenBound, { readonly what: string; readonly causes: string }>> = {
  liftTooHigh: {
    what: "makes more thrust than any surface could give these blades",
    causes:
      "thrust calibration or its unit, rotation rate read too low (pole pairs), a blade described with too little pitch, camber or chord, a nozzle",
  },
  liftTooLow: {
    what: "makes less thrust than the worst surface would leave these blades",
    causes:
      "air drawn down, a propeller mounted back to front or turning astern, the tare, rotation rate read too high (pole pairs), a blade described with too much pitch",
  },
  dragTooLow: {
    what: "takes less torque than blades with two laminar sides would",
    causes:
      "torque from motor constants that are off, torque calibration, a blade described too wide or with too much pitch",
  },
  dragTooHigh: {
    what: "takes more torque than any surface explains",
    causes:
      "friction of seal and bearing or motor losses counted as propeller torque, torque calibration, weed, a stalled or bent blade",
  },
};

/** Why no surface makes what was measured, and what is most likely wrong. */
export function outOfReachSentence(
  name: string,
  bound: BrokenBound,
  {
    measured,
    nearest,
  }: Record<"measured" | "nearest", { readonly thrustCoefficient: number; readonly torqueCoefficient: number }>,
): string {
  const { what, causes } = LIKELY[bound];
  const pair = ({ thrustCoefficient, torqueCoefficient }: typeof measured) =>
    `K_T ${formatNumber(thrustCoefficient, 3)} and 10 K_Q ${formatNumber(10 * torqueCoefficient, 3)}`;
  return `${name} ${what}: measured ${pair(measured)}; the nearest a surface comes is ${pair(nearest)}. Most likely: ${causes}.`;
}

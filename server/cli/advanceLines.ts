import { advanceSentence, orderWords } from "../../shared/bench/advance/advanceSentence.ts";
import type { AdvanceFit } from "../../shared/model/advance.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { formatUncertain } from "../../shared/quantity/format.ts";
import type { Uncertain } from "../../shared/quantity/uncertain.ts";

/** What a run says of the propeller at speed and astern; nothing for a bollard run in one direction. */
export function advanceLines(reduction: Reduction): string[] {
  const { advance, reverse, thrustCoefficient } = reduction;
  const ahead = advance ? [advanceSentence({ thrustCoefficient, advance }), ...curveLines(advance), ""] : [];
  if (!reverse) return ahead;
  return [
    ...ahead,
    `Astern (plateaus ${reverse.plateaus.join(", ")}): K_T ${formatUncertain(reverse.thrustCoefficient)}, C_P ${shown(reverse.powerCoefficient)}, K_T astern over ahead ${formatUncertain(reverse.toForward)}`,
    "",
  ];
}

function curveLines({ points, thrustCurve, powerCurve }: AdvanceFit): string[] {
  const rows = points.map((point) =>
    [
      `${point.plateau}`.padStart(3),
      `${formatUncertain(point.speed)} m/s`.padEnd(20),
      formatUncertain(point.advanceRatio).padEnd(18),
      formatUncertain(point.thrustCoefficient).padEnd(18),
      shown(point.torqueCoefficient).padEnd(20),
      shown(point.efficiency).padEnd(16),
      point.isFitted ? "" : "not in the curves",
    ]
      .join("  ")
      .trimEnd(),
  );
  const heads = ["  #", "speed".padEnd(20), "J".padEnd(18), "K_T".padEnd(18), "K_Q".padEnd(20), "eta_O"].join("  ");
  return [
    heads,
    ...rows,
    `K_T(J): ${orderWords(thrustCurve)}: ${polynomial(thrustCurve.coefficients)}`,
    ...(powerCurve ? [`C_P(J): ${orderWords(powerCurve)}: ${polynomial(powerCurve.coefficients)}`] : []),
  ];
}

const shown = (value: Uncertain | null) => (value ? formatUncertain(value) : "not measured");

function polynomial(coefficients: readonly number[]): string {
  return coefficients
    .map(
      (c, k) =>
        `${k === 0 ? c.toPrecision(5) : `${c < 0 ? "-" : "+"} ${Math.abs(c).toPrecision(5)} J${k > 1 ? `^${k}` : ""}`}`,
    )
    .join(" ");
}

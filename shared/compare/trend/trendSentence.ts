import type { Trend } from "../../model/trend.ts";
import { formatInterval, formatNumber } from "../../quantity/format.ts";
import { LEVEL } from "../comparisonSentence.ts";
import { FACTOR_WORDS } from "../factors/factorWords.data.ts";
import { numberText } from "../factors/levels.ts";

type Told = Omit<Trend, "sentence" | "warnings">;

/** The answer of a trend in one or two plain sentences. */
export function trendSentence(trend: Told): string {
  const { factor, quantityTitle, slopePValue, points, optimum } = trend;
  const { title } = FACTOR_WORDS[factor];
  const x = points.map((point) => point.x);
  const from = `from ${numberText(factor, Math.min(...x))} to ${numberText(factor, Math.max(...x))}`;
  if (!(slopePValue < LEVEL)) {
    return `No change of ${quantityTitle} with the ${title} can be claimed ${from}: chance makes such a trend in ${formatNumber(100 * slopePValue, 2)} of 100 cases.`;
  }
  const change = changeWords(trend);
  if (optimum === null)
    return `The ${quantityTitle} ${change} ${from}, along a line. No optimum shows inside the range.`;
  if (optimum.fieller95 === null) {
    return `The ${quantityTitle} ${change} ${from}. Whether there is an optimum can not be told: the bend of the curve can not be told from none.`;
  }
  if (!optimum.inside) return `The ${quantityTitle} ${change} ${from}. No optimum inside the range.`;
  return optimumWords(trend, title);
}

/** Where the vertex lies, with Fieller's interval, and whether that stays inside what was measured. */
function optimumWords({ factor, quantityTitle, optimum, points }: Told, title: string): string {
  const { kind, at, fieller95, value } = optimum!;
  const [low, high] = fieller95!;
  const x = points.map((point) => point.x);
  const within = low >= Math.min(...x) && high <= Math.max(...x);
  const beyond = within ? "" : " The interval reaches beyond what was measured: values there are needed to narrow it.";
  return `The ${quantityTitle} is ${kind === "maximum" ? "greatest" : "least"} at a ${title} of ${numberText(factor, at.value)} (95 %: ${numberText(factor, low)} to ${numberText(factor, high)}), where it is ${formatNumber(value.value)} (${formatInterval(value.interval95)}).${beyond}`;
}

/** "rises by 60 % (95 %: 52 to 68 %)": a factor below 1 is a fall. */
function changeWords({ change: { value, interval95 } }: Told): string {
  const sign = value < 1 ? -1 : 1;
  const ends = interval95.map((end) => sign * 100 * (end - 1)).sort((a, b) => a - b);
  const [low, high] = ends.map((end) => formatNumber(end, 2));
  return `${sign < 0 ? "falls" : "rises"} by ${formatNumber(sign * 100 * (value - 1), 2)} % (95 %: ${low} to ${high} %)`;
}

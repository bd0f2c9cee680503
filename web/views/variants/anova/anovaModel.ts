import type { Anova } from "../../../../shared/model/anova.ts";
import { formatNumber, formatUncertain } from "../../../../shared/quantity/format.ts";
import { capitalised } from "../../../app/words.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";

/** The table as books print it: source, degrees of freedom, sum of squares, mean square, F, p. */
export function anovaRows({ rows }: Anova): string[][] {
  const orDash = (value: number | null, digits: number) => (value === null ? "–" : formatNumber(value, digits));
  return rows.map(({ source, degreesOfFreedom, sumOfSquares, meanSquare, F, pValue }) => [
    source,
    `${degreesOfFreedom}`,
    formatNumber(sumOfSquares, 4),
    orDash(meanSquare, 4),
    orDash(F, 4),
    pValue === null ? "–" : pValue < 0.001 ? "under 0.001" : formatNumber(pValue, 2),
  ]);
}

/** Means of the cells: one line a level of the second factor over the levels of the first. Lines that are not parallel interact. */
export function interactionPicture(anova: Anova): ChartSpec | null {
  const [first, second] = anova.factors;
  if (first === undefined) return null;
  const levelsOf = (factor: string) => [
    ...new Set(
      anova.cells.flatMap(({ levels }) => levels.filter((one) => one.factor === factor).map((one) => one.level)),
    ),
  ];
  const along = levelsOf(first);
  const lines = second === undefined ? [""] : levelsOf(second);
  const series = lines.flatMap((line, style): ChartSeries[] => {
    const points = along.flatMap((level, at): ChartPoint[] => {
      const cell = anova.cells.find(
        ({ levels }) =>
          levels.some((one) => one.factor === first && one.level === level) &&
          (second === undefined || levels.some((one) => one.factor === second && one.level === line)),
      );
      const mean = cell?.mean ?? null;
      return mean === null
        ? []
        : [
            {
              x: at + 1,
              y: mean.value,
              yInterval: mean.interval95,
              note: `${level}${line ? `, ${line}` : ""}, ${cell!.runs} runs`,
            },
          ];
    });
    const name = line || anova.quantityTitle;
    const joined = points.map(({ x, y }) => ({ x, y }));
    return [
      { id: `line-${name}`, name: `Line, ${name}`, legend: name, kind: "fit", style, points: joined },
      { id: `cells-${name}`, name, legend: name, kind: "measured", style, points },
    ];
  });
  return {
    title: `${capitalised(anova.quantityTitle)} by cell`,
    x: {
      label: along.map((level, at) => `${at + 1} ${level}`).join(", "),
      unit: "",
      min: 0.5,
      max: along.length + 0.5,
    },
    y: { label: capitalised(anova.quantityTitle), unit: anova.quantityUnit === "1" ? "" : anova.quantityUnit, min: 0 },
    series,
  };
}

export function effectRows({ effects }: Anova) {
  return effects.map(({ level, against, ratio, adjustedPValue }) => ({
    name: `${level} over ${against}`,
    ratio: formatUncertain(ratio),
    p: adjustedPValue < 0.001 ? "under 0.001" : formatNumber(adjustedPValue, 2),
  }));
}

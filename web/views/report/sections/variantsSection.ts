import { claimInWords } from "../../../../shared/compare/claimVerdict.ts";
import { basisText, distinctWarnings, spreadLines, variantTable } from "../../variants/variantsModel.ts";
import { list, once, picture, type ReportBlock, table, text } from "../reportBlocks.ts";
import type { ReportInput } from "../reportInput.ts";

/** The variants and how they compare. */
export function variantsSection({ overview, variants }: ReportInput): ReportBlock[] {
  const { answer, comparisons, groups, claim } = variants;
  const compared = variantTable(comparisons, groups);
  const drives = overview.driveBasis !== "";
  return [
    text(answer),
    ...picture(variants.picture),
    ...table({
      label: "Every variant, mean of its mountings, with 95 % intervals",
      heads: [
        ...["Variant", "Runs", "Thrust coefficient K_T", "Power coefficient C_P", "Static merit FM"],
        ...(drives ? ["Bollard thrust", "Pack current"] : []),
      ],
      rows: overview.lines.map((line) => [
        ...[line.name, line.runs, line.thrustCoefficient, line.powerCoefficient, line.staticMerit],
        ...(drives ? [`${line.bollardThrust} ${line.thrustCondition}`.trim(), line.supplyCurrent] : []),
      ]),
    }),
    ...(drives ? [text(overview.driveBasis), ...list(overview.driveNotes)] : []),
    ...table({
      label: "Comparison with the baseline, with 95 % intervals",
      heads: ["", ...compared.columns.map(({ name, isBaseline }) => (isBaseline ? `${name} (baseline)` : name))],
      rows: compared.rows.map(({ name, cells }) => [name, ...cells]),
    }),
    ...(comparisons.length === 0 ? [] : list(basisLines(variants))),
    ...(claim === null ? [] : list([claimInWords(claim), ...claim.verdicts.map(({ sentence }) => sentence)])),
    ...list(once(comparisons.map(({ sentence }) => sentence)).filter((sentence) => !answer.includes(sentence))),
    ...list(distinctWarnings(comparisons).map(({ message }) => message)),
  ];
}

/** What is held against what, and which spread of mountings each interval rests on. */
function basisLines({ comparisons, spreads, baselineBecause }: ReportInput["variants"]): string[] {
  return [
    `Baseline: ${comparisons[0]!.baseline.name}. ${baselineBecause}`,
    basisText(spreads),
    ...spreadLines(comparisons),
  ];
}

/** How close to the ideal it is. */
export function theorySection({ theory }: ReportInput): ReportBlock[] {
  const { answer, beside, heads, rows } = theory;
  return [
    text(answer),
    ...(beside === "" ? [] : [text(beside)]),
    ...picture(theory.picture),
    ...table({ label: "How close each variant comes", heads, rows: rows.map(({ name, cells }) => [name, ...cells]) }),
  ];
}

import { demandsInWords } from "../../../../shared/shortlist/demandsInWords.ts";
import { momentText } from "../../../app/momentText.ts";
import { plainMessage } from "../../../app/plainMessage.ts";
import { scoreText, shownColumns } from "../../shortlist/resultModel.ts";
import { list, type ReportBlock, table, text } from "../reportBlocks.ts";
import type { ReportInput } from "../reportInput.ts";

const ROWS = 10;

/** The shortlist that was kept last. */
export function shortlistSection({ shortlist }: ReportInput): ReportBlock[] {
  if (shortlist === null) return [text("No search of a parts box is kept in this project.")];
  const { result, name, program, madeAt, note } = shortlist;
  const rows = result.rows.slice(0, ROWS);
  const columns = shownColumns(rows);
  const { counts } = result;
  return [
    text(`${name}: ${result.answer}`),
    text("What was asked:"),
    ...list(demandsInWords(result.requirement)),
    text(
      `${counts.meeting} of ${counts.combinations} combinations keep all of that. Searched ${momentText(madeAt)} with ${program}. Numbers are those at the demanded thrust, with half their 95 % interval where the parts state a doubt; “How sure” is the probability that all demands are met, from the uncertainty of the parts.`,
    ),
    ...(note === "" ? [] : [text(note)]),
    ...table({
      label: `The ${rows.length} best`,
      heads: ["Place", ...columns.map(({ label }) => label)],
      rows: rows.map((row) => [`${row.rank}`, ...columns.map(({ cell }) => cell(row))]),
    }),
    ...list([...rows.slice(0, 3).map((row) => `Place ${row.rank}: ${scoreText(row)}.`), result.method]),
    ...list(result.easing.slice(0, 5).map(({ sentence }) => sentence)),
    ...list([...new Set([...result.warnings, ...rows.flatMap(({ warnings }) => warnings)].map(plainMessage))]),
  ];
}

/** A line of the head of a log with its number in the file, from 1. */
export interface HeadLine {
  readonly text: string;
  readonly line: number;
}

/** How many lines a quoted header cell may run over. */
const LONGEST_QUOTE = 5;

/**
 * The lines of `text`, numbered. Spreadsheets put line breaks inside quoted header cells: a line with an open quote is
 * joined with those after it when one of the next few closes it and reads on as text.
 */
export function headLines(text: string): HeadLine[] {
  const lines = text.split(/\r\n|\n|\r/);
  if (lines.at(-1) === "") lines.pop();
  const joined: HeadLine[] = [];
  for (let i = 0; i < lines.length; i++) {
    const span = quoteSpan(lines, i);
    joined.push({ text: lines.slice(i, i + span).join(" "), line: i + 1 });
    i += span - 1;
  }
  return joined;
}

/** How many lines belong together from `start` on: 1 unless a quote stays open and is soon closed. */
function quoteSpan(lines: readonly string[], start: number): number {
  if (!oddQuotes(lines[start]!) || !/[A-Za-z]/.test(lines[start]!)) return 1;
  for (let span = 2; span <= LONGEST_QUOTE; span++) {
    const line = lines[start + span - 1];
    if (line === undefined) return 1;
    if (oddQuotes(line)) return span;
  }
  return 1;
}

function oddQuotes(line: string): boolean {
  return line.includes('"') && line.split('"').length % 2 === 0;
}

const MARKS = ["#", "//", "%", ";", "'"] as const;

/** The mark that makes `text` a comment line, or undefined. A semicolon is none where it stands between cells. */
export function commentMarkOf(text: string, delimiter: string): string | undefined {
  const trimmed = text.trimStart();
  const first = trimmed.charCodeAt(0);
  // Numbers, letters and quotes start most lines; none of them is a mark.
  if (first >= 40 && first !== 47 && first !== 59) return undefined;
  return MARKS.find((mark) => mark !== delimiter && trimmed.startsWith(mark));
}

/** The line without the comment mark that it starts with. */
export function withoutCommentMark(text: string, delimiter: string): string {
  const mark = commentMarkOf(text, delimiter);
  return mark === undefined ? text : text.trimStart().slice(mark.length).trimStart();
}

/** Nothing on the line, or only a rule drawn with dashes, bars and the like. */
export function isRuleOrBlank(text: string): boolean {
  return /^[\s\u00a0]*$/.test(text) || /^[\s|:+=_-]*(?:--|==|__|\|:?-)[\s|:+=_-]*$/.test(text);
}

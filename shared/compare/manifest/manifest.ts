import Papa from "papaparse";
import type { RunFacts } from "../../model/factor.ts";
import { InputProblem } from "../../quantity/problem.ts";
import { type ManifestColumn, manifestColumns } from "./manifestColumns.ts";

/** One run of a manifest. */
export interface ManifestRow {
  /** Line of the manifest, from 1. */
  readonly line: number;
  /** Path of the log, as written: relative to the manifest. */
  readonly file: string;
  readonly facts: Omit<RunFacts, "id" | "name">;
  /** How the log is read and reduced where the row says so, by the name of the option, as text with its unit. */
  readonly settings: ReadonlyMap<string, string>;
}

/** Something wrong in one cell. */
interface CellProblem {
  readonly place: string;
  readonly said: string;
}

/** Most problems told at once; a table with a shifted column has one in every row. */
const TOLD = 6;

/**
 * The runs that a manifest names: a delimited table with one row a run and a heading line, units in the headings, lines
 * that begin with # for remarks. A cell left empty is not stated. `settings` are the names of options that a column may
 * carry for its row beside the known headings (MANIFEST_HEADINGS).
 *
 * Throws   InputProblem `compare.manifest-empty`, `compare.manifest-column` for a heading that is not known, twice there or
 *          missing, `compare.manifest-cells` with every bad cell by line and column.
 */
export function readManifest(text: string, fileName: string, settings: readonly string[]): ManifestRow[] {
  const lines = text
    .replace(/^\uFEFF/, "")
    .split(/\r\n|\n|\r/)
    .map((content, i) => ({ content, line: i + 1 }))
    .filter(({ content }) => content.trim() !== "" && !content.trimStart().startsWith("#"));
  const [head, ...body] = lines;
  if (head === undefined || body.length === 0) throw empty(fileName, head !== undefined);
  const delimiter = delimiterOf(head.content);
  const cellsOf = (content: string) =>
    (Papa.parse<string[]>(content, { delimiter, newline: "\n" }).data[0] ?? []).map((cell) => cell.trim());
  const columns = manifestColumns(cellsOf(head.content), { fileName, line: head.line, settings });
  const problems: CellProblem[] = [];
  const rows = body.map(({ content, line }) => rowOf(cellsOf(content), { line, columns, problems }));
  repeatedFiles(rows, problems);
  if (problems.length > 0) throw badCells(fileName, problems);
  return rows;
}

/** The mark that cuts the headings into most cells. */
function delimiterOf(head: string): string {
  const [most] = [",", ";", "\t"].sort((a, b) => head.split(b).length - head.split(a).length);
  return most!;
}

interface RowContext {
  readonly line: number;
  readonly columns: readonly ManifestColumn[];
  /** What is wrong is added here, so that all of it can be told at once. */
  readonly problems: CellProblem[];
}

function rowOf(cells: readonly string[], { line, columns, problems }: RowContext): ManifestRow {
  const place = (heading: string) => `line ${line}, column ${heading}`;
  if (cells.length > columns.length) {
    const said = `${cells.length} cells under ${columns.length} headings: a cell that holds the mark between cells needs quotes`;
    problems.push({ place: `line ${line}`, said });
  }
  const facts: Record<string, unknown> = { variant: "", mounting: "", tags: [] };
  const settings = new Map<string, string>();
  let file = "";
  columns.forEach((column, i) => {
    const cell = cells[i] ?? "";
    if (cell === "") return;
    try {
      const read = column.read(cell);
      if (read.file !== undefined) file = read.file;
      Object.assign(facts, read.facts);
      for (const [name, value] of Object.entries(read.settings ?? {})) settings.set(name, value);
    } catch (thrown) {
      if (!(thrown instanceof InputProblem)) throw thrown;
      const { found, needed } = thrown.problem;
      problems.push({ place: place(column.heading), said: needed === "" ? found : `${found} (needed: ${needed})` });
    }
  });
  if (file === "") problems.push({ place: place("file"), said: "no file is named" });
  return { line, file, facts: facts as ManifestRow["facts"], settings };
}

function repeatedFiles(rows: readonly ManifestRow[], problems: CellProblem[]): void {
  const first = new Map<string, number>();
  for (const { file, line } of rows) {
    const before = first.get(file);
    if (file === "") continue;
    if (before === undefined) first.set(file, line);
    else problems.push({ place: `line ${line}, column file`, said: `${file} stands in line ${before} already` });
  }
}

function empty(fileName: string, hasHead: boolean): InputProblem {
  return new InputProblem({
    code: "compare.manifest-empty",
    where: fileName,
    found: hasHead ? "There are headings and no run under them" : "There is no line but blank ones and remarks",
    needed: "a line of headings and one line a run",
    mend: "For example: file,variant,finish,diameter (mm)  and under it  printed-1.csv,as printed,as printed,76",
  });
}

function badCells(fileName: string, problems: readonly CellProblem[]): InputProblem {
  const told = problems.slice(0, TOLD).map(({ place, said }) => `${place}: ${said}`);
  const more = problems.length > TOLD ? `; and ${problems.length - TOLD} more` : "";
  return new InputProblem({
    code: "compare.manifest-cells",
    where: fileName,
    found: `${told.join("; ")}${more}`,
    needed: "",
    mend: "Mend these cells; an empty cell means not stated",
  });
}

import type { PartsTableChoices, PartsTableColumn } from "../model/partsTable.ts";
import { isBareNumber, isBlank, isWords } from "./cellValue.ts";
import type { FoundHead } from "./foundHead.ts";
import { type HeadMatch, headMatches } from "./headMatch.ts";
import type { TableField } from "./tableFields.ts";
import { type UnitReading, unitReadings } from "./unitReadings.ts";

/** A column with the value of the part that it is taken for. */
export interface TakenColumn extends Omit<PartsTableColumn, "readings"> {
  readonly taken: TableField | null;
  readonly readings: UnitReading[];
}

const LEFT_OUT = { taken: null, field: "", unit: "", readings: [], open: false };

/** How each column is taken: as a person chose, else as head and numbers say, each with its reason. */
export function guessColumns(
  { heads, body }: FoundHead,
  fields: readonly TableField[],
  choices: PartsTableChoices["columns"],
): TakenColumn[] {
  const chosen = new Map(choices.map((choice) => [choice.column, choice]));
  const given = guessedFields(heads, body, fields, new Set(choices.map(({ field }) => field)), chosen);
  return heads.map((header, column) => {
    const cells = body.map((row) => row.cells[column] ?? "").filter((cell) => !isBlank(cell));
    const shared = { column, header, examples: cells.slice(0, 3) };
    const choice = chosen.get(column);
    if (choice) {
      const taken = fields.find(({ key }) => key === choice.field);
      if (!taken) return { ...shared, ...LEFT_OUT, reason: "Left out by you." };
      const named = headMatches(header, [taken])[0];
      const unit = choice.unit || (named?.unit ?? null);
      const asked = { field: taken, score: 0, unit, strangeUnit: "", reason: "Chosen by you." };
      return { ...shared, ...withUnit(asked, cells), readings: readingsOf(taken, cells) };
    }
    const match = given.get(column);
    if (!match) {
      const reason =
        cells.length === 0 ? "Left out: it is empty." : `Left out: nothing says what it holds of the part.`;
      return { ...shared, ...LEFT_OUT, reason };
    }
    return { ...shared, ...withUnit(match, cells) };
  });
}

/** Each value goes to the column that speaks for it most; a column of words to the name, where none is headed so. */
function guessedFields(
  heads: readonly string[],
  body: FoundHead["body"],
  fields: readonly TableField[],
  taken: ReadonlySet<string>,
  chosen: ReadonlyMap<number, unknown>,
): ReadonlyMap<number, HeadMatch> {
  const all = heads
    .flatMap((header, column) =>
      chosen.has(column) ? [] : headMatches(header, fields).map((match) => ({ column, match })),
    )
    .sort((a, b) => b.match.score - a.match.score || a.column - b.column);
  const [given, used] = [new Map<number, HeadMatch>(), new Set(taken)];
  for (const { column, match } of all) {
    if (given.has(column) || used.has(match.field.key)) continue;
    given.set(column, match);
    used.add(match.field.key);
  }
  const name = fields.find(({ key }) => key === "name")!;
  if (used.has("name")) return given;
  const words = heads.findIndex(
    (_, column) => !given.has(column) && !chosen.has(column) && body.every(({ cells }) => isWords(cells[column] ?? "")),
  );
  const reason = "It is the first column of words, and none is headed as the name.";
  if (words >= 0) given.set(words, { field: name, score: 1, unit: "", strangeUnit: "", reason });
  return given;
}

function withUnit({ field, unit, strangeUnit, reason }: HeadMatch, cells: readonly string[]) {
  const readings = readingsOf(field, cells);
  const shared = { taken: field, field: field.key };
  if (unit !== null) return { ...shared, unit, reason, readings: [], open: false };
  if (readings.length === 0) {
    const told = field.written !== null && field.written.dimension !== "number" && cells.length > 0;
    return {
      ...shared,
      unit: "",
      reason: told ? `${reason} Each cell has its own unit.` : reason,
      readings,
      open: false,
    };
  }
  const why = strangeUnit === "" ? "no unit is written" : `"${strangeUnit}" is no unit of it`;
  if (readings.length === 1) {
    const [only] = readings;
    return {
      ...shared,
      unit: only!.unit,
      reason: `${reason} ${capital(why)}; ${only!.unit} is the only one that fits.`,
      readings,
      open: false,
    };
  }
  const usual = readings.filter((one) => one.usual);
  const proposed = usual.length === 1 ? usual[0]!.unit : "";
  return { ...shared, unit: proposed, reason: `${reason} ${capital(why)}: which is it?`, readings, open: true };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function readingsOf(field: TableField, cells: readonly string[]): UnitReading[] {
  const numbers = cells.filter(isBareNumber);
  return numbers.length === 0 ? [] : unitReadings(field, numbers);
}

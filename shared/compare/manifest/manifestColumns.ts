import { parseFluid } from "../../fluid/parseFluid.ts";
import type { RunFacts } from "../../model/factor.ts";
import { parseQuantity, parseUncertainQuantity } from "../../quantity/parseQuantity.ts";
import { InputProblem } from "../../quantity/problem.ts";
import type { Dimension } from "../../quantity/units.data.ts";

/** What a cell says of its run. */
interface CellMeaning {
  readonly file?: string;
  readonly facts?: Partial<RunFacts>;
  readonly settings?: Readonly<Record<string, string>>;
}

/** A column of a manifest and how its cells are read. Throws InputProblem for a cell that can not be used. */
export interface ManifestColumn {
  readonly heading: string;
  readonly read: (cell: string) => CellMeaning;
}

type Reader = (cell: string, unit: string) => CellMeaning;

const words =
  (name: keyof RunFacts): Reader =>
  (cell) => ({ facts: { [name]: cell } });

/** The cell with the unit of its heading, unless it carries its own. */
const withUnit = (cell: string, unit: string) => {
  if (!/[\d.]$/.test(cell)) return cell;
  return cell.includes("±") ? cell.replace(/\s*±/, ` ${unit} ±`).concat(` ${unit}`) : `${cell} ${unit}`.trim();
};

const quantity =
  (name: "layerHeight" | "roughness", dimension: Dimension): Reader =>
  (cell, unit) => ({ facts: { [name]: above0(parseQuantity(withUnit(cell, unit), dimension), cell) } });

/** A quantity that is a fact of the run and a setting of its reduction. */
const setting =
  (name: "diameter" | "immersion"): Reader =>
  (cell, unit) => {
    const text = withUnit(cell, unit);
    const value = above0(parseUncertainQuantity(text, "length").value, cell);
    return { facts: { [name]: value }, settings: { [name]: text } };
  };

function above0(value: number, cell: string): number {
  return value > 0 ? value : refuse(`"${cell}" is not above 0`, "a number above 0");
}

const pitchRatio: Reader = (cell) => ({ facts: { pitchRatio: above0(parseQuantity(cell, "number"), cell) } });

const bladeCount: Reader = (cell) => {
  const count = Number(cell);
  if (Number.isInteger(count) && count >= 1 && count <= 12) return { facts: { bladeCount: count } };
  return refuse(`"${cell}" is not a number of blades`, "a whole number from 1 to 12");
};

const day: Reader = (cell) => {
  const sound = /^\d{4}-\d{2}-\d{2}$/.test(cell) && Number.isFinite(Date.parse(cell));
  return sound ? { facts: { day: cell } } : refuse(`"${cell}" is not a day`, "year-month-day, e.g. 2026-05-14");
};

const yesOrNo = (cell: string): boolean => {
  if (/^(yes|y|1|true)$/i.test(cell)) return true;
  if (/^(no|n|0|false)$/i.test(cell)) return false;
  return refuse(`"${cell}" is neither yes nor no`, "yes or no");
};

const nozzle: Reader = (cell) => {
  const inNozzle = yesOrNo(cell);
  return { facts: { nozzle: inNozzle }, ...(inNozzle && { settings: { nozzle: "" } }) };
};

const water: Reader = (cell) => ({ facts: { fluid: parseFluid(cell) }, settings: { water: cell } });

const tags: Reader = (cell) => ({ facts: { tags: cell.split(/[\s;]+/).filter((tag) => tag !== "") } });

/** Headings that a manifest may have, in small letters. */
const MANIFEST_HEADINGS: Readonly<Record<string, Reader>> = {
  file: (cell) => ({ file: cell }),
  variant: words("variant"),
  mounting: words("mounting"),
  propeller: words("propeller"),
  finish: words("finish"),
  material: words("material"),
  "pitch ratio": pitchRatio,
  diameter: setting("diameter"),
  blades: bladeCount,
  nozzle,
  "layer height": quantity("layerHeight", "length"),
  roughness: quantity("roughness", "length"),
  motor: words("motor"),
  controller: words("controller"),
  pack: words("pack"),
  day,
  instruments: words("instruments"),
  immersion: setting("immersion"),
  water,
  tags,
};

interface Heads {
  readonly fileName: string;
  readonly line: number;
  readonly settings: readonly string[];
}

/** The columns under the headings. Throws InputProblem `compare.manifest-column`. */
export function manifestColumns(headings: readonly string[], { fileName, line, settings }: Heads): ManifestColumn[] {
  const where = `${fileName}, line ${line}`;
  const names = headings.map((heading) => /^([^([]*)(?:[([]([^)\]]*)[)\]])?\s*$/.exec(heading));
  const columns = names.map((match, i) => {
    const heading = headings[i]!;
    const name = (match?.[1] ?? heading).trim().toLowerCase();
    const unit = (match?.[2] ?? "").trim();
    const option = settings.find((one) => one === name.replaceAll(" ", "-"));
    const read = MANIFEST_HEADINGS[name] ?? (option === undefined ? undefined : settingReader(option));
    if (read === undefined) throw unknownHeading(where, heading, settings);
    return { name, column: { heading, read: (cell: string) => read(cell, unit) } };
  });
  const twice = columns.find(({ name }, i) => columns.findIndex((one) => one.name === name) < i);
  if (twice)
    throw columnProblem(
      where,
      `Two columns are headed "${twice.column.heading}"`,
      "each heading once",
      "Take one away",
    );
  if (!columns.some(({ name }) => name === "file")) {
    throw columnProblem(
      where,
      'No column is headed "file"',
      "the path of the log of each run",
      "Add it; paths are relative to the manifest",
    );
  }
  return columns.map(({ column }) => column);
}

function settingReader(option: string): Reader {
  return (cell, unit) => ({ settings: { [option]: withUnit(cell, unit) } });
}

function unknownHeading(where: string, heading: string, settings: readonly string[]): InputProblem {
  const known = [...Object.keys(MANIFEST_HEADINGS), ...settings.map((name) => name.replaceAll("-", " "))];
  return columnProblem(
    where,
    heading === "" ? "A column has no heading" : `"${heading}" is no heading of a manifest`,
    [...new Set(known)].join(", "),
    "Units stand behind the name in brackets: diameter (mm)",
  );
}

function columnProblem(where: string, found: string, needed: string, mend: string): InputProblem {
  return new InputProblem({ code: "compare.manifest-column", where, found, needed, mend });
}

function refuse(found: string, needed: string): never {
  throw new InputProblem({ code: "compare.manifest-cells", where: "", found, needed, mend: "" });
}

import type { FactorRole, FactorRow, FactorTable } from "../../../../shared/model/factor.ts";

const ROLES: Readonly<Record<FactorRole, string>> = {
  constant: "the same in all",
  separates: "goes with the variant",
  partly: "unevenly mixed",
  mixed: "evenly mixed",
  unknown: "not stated for every run",
};

export interface ShownFactor {
  readonly title: string;
  readonly role: string;
  /** It should worry the reader: a circumstance that goes with the variant. */
  readonly isDoubtful: boolean;
  readonly cells: readonly string[];
  readonly sentence: string;
}

/** The factors, those that differ first, with one cell a variant. */
export function shownFactors({ rows, confounded }: FactorTable): ShownFactor[] {
  return rows.map((row) => ({
    title: row.title,
    role: row.isDesign && row.role === "separates" ? "what is compared" : ROLES[row.role],
    isDoubtful: confounded.includes(row.factor),
    cells: row.values.map(cellOf),
    sentence: row.sentence,
  }));
}

function cellOf({ values }: FactorRow["values"][number]): string {
  return values.map(({ text, runs }) => (values.length > 1 ? `${text} (${runs})` : text)).join(", ");
}

export function factorHeads({ rows }: FactorTable): readonly string[] {
  return rows[0]?.values.map(({ variant }) => variant) ?? [];
}

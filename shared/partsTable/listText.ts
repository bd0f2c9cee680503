import { InputProblem } from "../quantity/problem.ts";

/** How a list inside a part is written in one cell or one field, pair by pair. */
interface ListForm {
  readonly text: (value: unknown) => string;
  readonly value: (text: string) => unknown;
}

interface ChargePoint {
  readonly charge: number;
  readonly voltage: number;
}

interface Correlation {
  readonly of: string;
  readonly and: string;
  readonly coefficient: number;
}

const EXAMPLES = {
  "cells.curve": "0:3.2; 0.5:3.7; 1:4.2 (share of the charge, volt of one cell)",
  "uncertainties.correlations": "speedConstant/resistance:-0.5",
} as const;

const FORMS: Readonly<Record<string, ListForm>> = {
  "cells.curve": {
    text: (value) => (value as readonly ChargePoint[]).map(({ charge, voltage }) => `${charge}:${voltage}`).join("; "),
    value: (text) =>
      pairsOf(text, "cells.curve").map(([charge, voltage]) => ({
        charge: decimal(charge, text),
        voltage: decimal(voltage, text),
      })),
  },
  "uncertainties.correlations": {
    text: (value) =>
      (value as readonly Correlation[]).map(({ of, and, coefficient }) => `${of}/${and}:${coefficient}`).join("; "),
    value: (text) =>
      pairsOf(text, "uncertainties.correlations").map(([names, coefficient]) => {
        const [of = "", and = ""] = names.split("/").map((name) => name.trim());
        return { of, and, coefficient: decimal(coefficient, text) };
      }),
  },
  geometry: { text: (value) => JSON.stringify(value), value: documentOf },
};

/** The list at `key` as text. */
export function textOfList(key: string, value: unknown): string {
  return FORMS[key]!.text(value);
}

/** The list that `text` stands for, unchecked. Throws InputProblem `parts.list-form`. */
export function listOfText(key: string, text: string): unknown {
  return FORMS[key]!.value(text);
}

function pairsOf(text: string, key: keyof typeof EXAMPLES): (readonly [string, string])[] {
  return text
    .split(/[;\n]/)
    .filter((pair) => pair.trim() !== "")
    .map((pair) => {
      const [left, right, more] = pair.split(":").map((part) => part.trim());
      if (!left || !right || more !== undefined) throw badForm(pair, `pairs as in ${EXAMPLES[key]}`);
      return [left, right] as const;
    });
}

function decimal(text: string, whole: string): number {
  const value = Number(text.replace(",", "."));
  if (text === "" || !Number.isFinite(value)) throw badForm(whole, "a number behind each colon");
  return value;
}

function documentOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw badForm(text, "the blade shape as JSON, as this program writes it");
  }
}

function badForm(text: string, needed: string): InputProblem {
  const shown = text.length > 60 ? `${text.slice(0, 60)} …` : text;
  return new InputProblem({
    code: "parts.list-form",
    where: "",
    found: `"${shown.trim()}" can not be read`,
    needed,
    mend: "Write it so, or leave it empty",
  });
}

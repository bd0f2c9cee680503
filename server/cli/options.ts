import { parseArgs } from "node:util";
import { type ParsedQuantity, parseUncertainQuantity } from "../../shared/quantity/parseQuantity.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Dimension } from "../../shared/quantity/units.data.ts";

/** One option of a verb: what --help prints and how its text is taken are the same record. */
export interface Option {
  /** Word for the value in --help; absent for a plain switch. */
  readonly value?: string;
  readonly text: string;
  readonly many?: true;
}

export type Options = { readonly [name: string]: Option };

export interface Usage {
  readonly verb: string;
  /** The words that are not options, e.g. "LOG". */
  readonly arguments: string;
  readonly about: string;
  readonly options: Options;
  readonly examples: readonly string[];
}

/** The words of one call, taken apart. */
export class Words {
  readonly rest: readonly string[];
  readonly #values: Readonly<Record<string, string | boolean | (string | boolean)[] | undefined>>;

  constructor(usage: Usage, words: readonly string[]) {
    const { values, positionals } = takeApart(usage, words);
    this.#values = values;
    this.rest = positionals;
  }

  has(name: string): boolean {
    return this.#values[name] !== undefined;
  }

  text(name: string): string | undefined {
    const value = this.#values[name];
    return typeof value === "string" ? value : undefined;
  }

  all(name: string): readonly string[] {
    const value = this.#values[name];
    return Array.isArray(value) ? value.map(String) : typeof value === "string" ? [value] : [];
  }

  /** A quantity that must be there. */
  required(name: string, dimension: Dimension): ParsedQuantity {
    const found = this.quantity(name, dimension);
    if (found) return found;
    throw new InputProblem({
      code: "cli.missing-option",
      where: `--${name}`,
      found: "this option is missing",
      needed: "a value",
      mend: `Give --${name}; --help shows how`,
    });
  }

  /** A quantity, with the standard uncertainty written after ± if there is one; undefined when the option is absent. */
  quantity(name: string, dimension: Dimension): ParsedQuantity | undefined {
    const text = this.text(name);
    return text === undefined ? undefined : parseUncertainQuantity(text, dimension, { where: `--${name}` });
  }

  /** A whole number of at least `least`. */
  whole(name: string, least: number): number | undefined {
    const text = this.text(name);
    if (text === undefined) return undefined;
    const value = Number(text);
    if (Number.isInteger(value) && value >= least) return value;
    throw new InputProblem({
      code: "cli.not-whole",
      where: `--${name}`,
      found: `"${text}" is not a whole number from ${least} up`,
      needed: `${least}, ${least + 1}, ${least + 2} ...`,
      mend: `For example --${name} ${least + 6}`,
    });
  }

  /** ROLE=TEXT pairs of an option that may be repeated. */
  pairs(name: string): readonly (readonly [string, string])[] {
    return this.all(name).map((word) => {
      const cut = word.indexOf("=");
      if (cut > 0) return [word.slice(0, cut).trim(), word.slice(cut + 1).trim()] as const;
      throw new InputProblem({
        code: "cli.not-a-pair",
        where: `--${name}`,
        found: `"${word}" has no = in it`,
        needed: "two things joined by =",
        mend: `For example --${name} thrust="Load (gf)"`,
      });
    });
  }
}

function takeApart(usage: Usage, words: readonly string[]) {
  const options = Object.fromEntries(
    Object.entries({ ...usage.options, help: HELP }).map(([name, { value, many }]) => [
      name,
      { type: value === undefined ? ("boolean" as const) : ("string" as const), multiple: many ?? false },
    ]),
  );
  try {
    return parseArgs({ args: withNegatives(usage, words), options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new InputProblem({
      code: "cli.unknown-option",
      where: usage.verb,
      found: (error as Error).message.split(". ")[0]!,
      needed: `one of ${Object.keys(options)
        .map((name) => `--${name}`)
        .join(", ")}`,
      mend: `Write ${usage.verb} --help for what each means`,
    });
  }
}

/** A negative quantity after its option, `--rpm -4200rpm`, is joined to it: alone it would be read as an option. */
function withNegatives({ options }: Usage, words: readonly string[]): string[] {
  const joined: string[] = [];
  for (const word of words) {
    const before = joined.at(-1);
    const takesValue = before?.startsWith("--") && options[before.slice(2)]?.value !== undefined;
    if (takesValue && /^[-\u2212][\d.]/.test(word)) joined[joined.length - 1] = `${before}=${word}`;
    else joined.push(word);
  }
  return joined;
}

const HELP: Option = { text: "show this" };

/** The --help text of a verb. */
export function helpText(usage: Usage): string {
  const rows = Object.entries({ ...usage.options, help: HELP }).map(([name, { value, text, many }]) => [
    `  --${name}${value === undefined ? "" : ` ${value}`}${many ? " ..." : ""}`,
    text,
  ]);
  const width = Math.max(...rows.map(([left]) => left!.length)) + 2;
  return [
    `Usage: npm run --silent cli -- ${[usage.verb, usage.arguments, "[options]"].filter(Boolean).join(" ")}`,
    "",
    usage.about,
    "",
    ...rows.map(([left, right]) => `${left!.padEnd(width)}${right}`),
    "",
    "Examples:",
    ...usage.examples.map((example) => `  npm run --silent cli -- ${example}`),
    "",
  ].join("\n");
}

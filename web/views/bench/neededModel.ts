import type { Propeller } from "../../../shared/model/parts/propeller.ts";
import type { Run } from "../../../shared/model/run.ts";
import type { StoredDocument } from "../../../shared/model/stored.ts";

/**
 * The propeller whose finish or name the run's own name holds, to be offered, never taken: the longest match wins, and
 * two that match alike are no match.
 */
export function suggestedPropeller(
  { name, file }: Pick<Run, "name" | "file">,
  propellers: readonly StoredDocument<Propeller>[],
): StoredDocument<Propeller> | null {
  const said = plain(`${name} ${file.name}`);
  const matches = propellers
    .map((propeller) => ({
      propeller,
      length: longestIn(said, [propeller.document.finish ?? "", propeller.document.name]),
    }))
    .filter(({ length }) => length > 0)
    .sort((a, b) => b.length - a.length);
  const [best, next] = matches;
  return best === undefined || next?.length === best.length ? null : best.propeller;
}

function longestIn(said: string, words: readonly string[]): number {
  return Math.max(
    0,
    ...words
      .map(plain)
      .filter((word) => word !== "  " && said.includes(word))
      .map(({ length }) => length),
  );
}

/** Lower case, each run of other signs one space, a space at either end: so that only whole words match. */
const plain = (text: string) =>
  ` ${text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()} `;

import { type NamedRole, OTHER_WORDS, ROLE_WORDS, SECOND_CHOICE_WORDS } from "./roleWords.data.ts";

/** How strongly the words of a header speak for one role. */
export interface RoleMatch {
  readonly role: NamedRole;
  /** 1 for a letter or a vague word, 2 for the name of the quantity. */
  readonly strength: 1 | 2;
  /** The words that matched. */
  readonly words: string;
}

/** Header as lower-case words without accents: "Drehzahl_1/min" is "drehzahl 1 min", "busVoltage" is "bus voltage". */
export function headerWords(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/[\u0300-\u036f]/g, "")
    .replace(/ß/g, "ss")
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, " ")
    .trim();
}

/** Roles that the words of a header name, best first; longer words win over shorter ones, earlier over later. */
export function rolesNamed(text: string): RoleMatch[] {
  const words = headerWords(text);
  if (words === "" || saysOther(words)) return [];
  const matches: RoleMatch[] = [];
  for (const [role, { strong, weak }] of Object.entries(ROLE_WORDS) as [NamedRole, (typeof ROLE_WORDS)[NamedRole]][]) {
    const found = longest(words, strong);
    if (found) matches.push({ role, strength: 2, words: found });
    else {
      const hint = longest(words, weak);
      if (hint) matches.push({ role, strength: 1, words: hint });
    }
  }
  return matches.sort((a, b) => b.strength - a.strength || b.words.length - a.words.length);
}

/** The words say that the column is none of the quantities of a thrust stand. */
export function saysOther(text: string): boolean {
  return longest(headerWords(text), OTHER_WORDS) !== undefined;
}

/** The word that makes a column second choice: raw, target, maximum and so on. */
export function secondChoiceWord(text: string): string | undefined {
  return longest(headerWords(text), SECOND_CHOICE_WORDS);
}

/** A number may stick to a word: "load cell 1", "esc2". */
function longest(words: string, candidates: readonly string[]): string | undefined {
  const padded = ` ${words} `;
  const bare = ` ${words.replace(/([a-z])\d+(?= |$)/g, "$1")} `;
  let best: string | undefined;
  for (const candidate of candidates) {
    if (candidate.length <= (best?.length ?? 0) || !(words.includes(candidate) || bare.includes(candidate))) continue;
    const found = padded.includes(` ${candidate} `) || bare.includes(` ${candidate} `);
    if (found) best = candidate;
  }
  return best;
}

import { claimInWords } from "../../shared/compare/claimVerdict.ts";
import { type JudgedClaim, ThrustClaim } from "../../shared/model/thrustClaim.ts";
import { checked } from "./checked.ts";
import type { Option, Words } from "./options.ts";

/** A gain that somebody claims. */
export const CLAIM_OPTION = {
  "claimed-ratio": {
    value: "NUMBER",
    text: "judge the claim of more than so many times the thrust of the first; exit with 1 unless the runs support it",
  },
  "claimed-by": { value: "TEXT", text: "who claims that, and where; printed beside the verdict" },
} as const satisfies Record<string, Option>;

/** The claim that the words state; null without one. */
export function claimOf(words: Words): ThrustClaim | null {
  const factor = words.quantity("claimed-ratio", "number")?.value;
  if (factor === undefined) return null;
  return checked(ThrustClaim, { factor, source: words.text("claimed-by") ?? "" }, (field) => OPTION_OF[field]);
}

const OPTION_OF: Readonly<Record<string, string>> = { factor: "claimed-ratio", source: "claimed-by" };

export const claimLines = (claim: JudgedClaim): string[] => [
  claimInWords(claim),
  ...claim.verdicts.map(({ sentence }) => sentence),
];

/** 1 where a claim is not borne out by every comparison. */
export function exitCode(claim: JudgedClaim | null): number {
  return claim === null || claim.verdicts.every(({ verdict }) => verdict === "supported") ? 0 : 1;
}

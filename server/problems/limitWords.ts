import type { z } from "zod";
import type { Problem } from "../../shared/quantity/problem.ts";
import type { Field } from "./fieldProblem.ts";
import { shownValue, withUnit } from "./shownValue.ts";

type TooMuch = z.core.$ZodIssueTooBig | z.core.$ZodIssueTooSmall;

/** A number, text or list beyond a limit: what came, the limit in the same unit, and which unit was likely meant. */
export function limitWords(issue: TooMuch, field: Field): Omit<Problem, "where"> {
  const above = issue.code === "too_big";
  const limit = Number(above ? issue.maximum : issue.minimum);
  const code = above ? "request.too-large" : "request.too-small";
  const bound = boundText(above, issue.inclusive !== false);
  if (issue.origin === "string") {
    const found = `A text of ${String(field.came).trim().length} characters is too ${above ? "long" : "short"}`;
    return { code, found, needed: `${bound} ${counted(limit, "character", "characters")}`, mend: "" };
  }
  if (issue.origin === "array") {
    const found = `${shownValue(field.came)} is too ${above ? "long" : "short"}`;
    return { code, found, needed: `${bound} ${counted(limit, "entry", "entries")}`, mend: "" };
  }
  const found = `${shownValue(field.came, field.unit)} is too ${above ? "large" : "small"}`;
  const needed = `${bound} ${withUnit(String(limit), field.unit)}`;
  return { code, found, needed, mend: above ? unitHint(field, limit) : "" };
}

function boundText(above: boolean, inclusive: boolean): string {
  if (inclusive) return above ? "at most" : "at least";
  return above ? "less than" : "more than";
}

const counted = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;

/** A value a thousand, or a hundred, times too large is most likely in another unit. */
function unitHint({ came, unit }: Field, limit: number): string {
  if (typeof came !== "number") return "";
  if (unit === "m" && came / 1000 <= limit) return `If you meant millimetres, send ${rounded(came / 1000)}`;
  if (unit === "1" && limit === 1 && came <= 100) return `If you meant per cent, send ${rounded(came / 100)}`;
  return "";
}

/** Without the last digits that a division by ten leaves. */
const rounded = (value: number) => Number(value.toPrecision(12));

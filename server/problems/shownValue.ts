import { formatNumber } from "../../shared/quantity/format.ts";

/** A number with its unit; a ratio stands alone. */
export const withUnit = (number: string, unit?: string) =>
  unit === undefined || unit === "1" ? number : `${number} ${unit}`;

/** What came in a request, short enough for a sentence. */
export function shownValue(came: unknown, unit?: string): string {
  if (typeof came === "number") return withUnit(plainNumber(came), unit);
  if (Array.isArray(came)) return `A list of ${came.length} entries`;
  if (typeof came === "object" && came !== null) return "An object";
  const text = JSON.stringify(came) ?? "Nothing";
  return text.length > 80 ? `${text.slice(0, 77)}..."` : text;
}

const plainNumber = (value: number) => (Math.abs(value) >= 1e12 ? formatNumber(value, 6) : String(value));

import { OutOfDomain } from "./problem.ts";

/**
 * `result`, if every number in it is finite: input far out of scale can overflow on the way, though each number of it is
 * one that may be. Throws OutOfDomain `quantity.beyond-numbers` naming the first that is not.
 */
export function finiteResult<T>(result: T): T {
  const place = notFinite(result);
  if (place === null) return result;
  throw new OutOfDomain({
    code: "quantity.beyond-numbers",
    where: place.join("."),
    found: `What was given is so far out of scale that ${inWords(place.findLast((part) => !/^\d+$/.test(part)) ?? "")} can not be computed`,
    needed: "numbers of a size that a propeller has",
    mend: "Look for a unit that was read as another",
  });
}

/** Where the first number that is not finite stands; null if all are. */
function notFinite(value: unknown): string[] | null {
  if (typeof value === "number") return Number.isFinite(value) ? null : [];
  if (typeof value !== "object" || value === null) return null;
  for (const [key, inner] of Object.entries(value)) {
    const place = notFinite(inner);
    if (place !== null) return [key, ...place];
  }
  return null;
}

/** "thrustCoefficient" as "thrust coefficient". */
function inWords(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

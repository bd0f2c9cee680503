import type { PartLeaf } from "./partLeaves.ts";

type Plain = Readonly<Record<string, unknown>>;

/** The value at a path of a part: "resistance", "lead.size.area"; undefined where there is none. */
export function valueAt(part: Plain | null | undefined, key: string): unknown {
  return key.split(".").reduce<unknown>((inside, name) => (inside as Plain | null | undefined)?.[name], part);
}

/** The document that holds these values, each with the name of its way where it is one of several. */
export function documentWith(values: readonly (readonly [PartLeaf, unknown])[]): Record<string, unknown> {
  const whole: Record<string, unknown> = {};
  for (const [{ key, way }, value] of values) {
    put(whole, key, value);
    if (way) put(whole, way.key, way.given);
  }
  return whole;
}

function put(whole: Record<string, unknown>, key: string, value: unknown): void {
  const names = key.split(".");
  const last = names.pop()!;
  let inside = whole;
  for (const name of names) {
    inside[name] ??= {};
    inside = inside[name] as Record<string, unknown>;
  }
  inside[last] = value;
}

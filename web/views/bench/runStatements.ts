import { Run } from "../../../shared/model/run.ts";

/** The run with something stated of it, or no longer stated where `value` is undefined. */
export function withStated<K extends "packId" | "day" | "tags">(run: Run, key: K, value: Run[K] | undefined): Run {
  const { [key]: _former, ...others } = run;
  return (value === undefined ? others : { ...others, [key]: value }) as Run;
}

/** Different tags of a text with commas between them. */
export function tagsIn(text: string): string[] {
  const tags = text.split(",").map((tag) => tag.trim());
  return [...new Set(tags)].filter((tag) => tag !== "");
}

/** Why a text is no day; null where it is one, or empty. */
export function dayProblem(text: string): string | null {
  if (text === "" || Run.shape.day.safeParse(text).success) return null;
  return `"${text}" is no day. Needed: year, month and day, for example 2026-05-17.`;
}

/** Why a text holds tags that can not be kept; null where they can. */
export function tagsProblem(text: string): string | null {
  const tags = tagsIn(text);
  if (tags.length === 0 || Run.shape.tags.safeParse(tags).success) return null;
  return `${tags.length} tags, the longest of ${Math.max(...tags.map((tag) => tag.length))} letters. Needed: 12 tags at most, of 40 letters at most.`;
}

import { expect, test } from "vitest";
import { dayProblem, tagsIn, tagsProblem, withStated } from "../../web/views/bench/runStatements.ts";
import { runOf } from "./webBenchReduction.fixture.ts";

test("something stated of a run can be taken back without a trace", () => {
  const { document } = runOf("a");
  const stated = withStated(document, "day", "2026-05-17");
  expect(stated.day).toBe("2026-05-17");
  expect(withStated(stated, "day", undefined)).toEqual(document);
});

test("tags are the different words between commas", () => {
  expect(tagsIn(" tank 2, sanded,, tank 2 ")).toEqual(["tank 2", "sanded"]);
  expect(tagsIn(" , ")).toEqual([]);
});

test.each([
  { text: "", day: null, tags: null },
  { text: "2026-05-17", day: null, tags: null },
  { text: "2026-02-30", day: /no day. Needed: year, month and day/, tags: null },
  { text: "17 May", day: /"17 May" is no day/, tags: null },
  { text: "a,b,c,d,e,f,g,h,i,j,k,l,m", day: /no day/, tags: /13 tags.*12 tags at most/ },
  { text: "x".repeat(41), day: /no day/, tags: /of 41 letters/ },
])("$text as a day: $day, as tags: $tags", ({ text, day, tags }) => {
  if (day === null) expect(dayProblem(text)).toBeNull();
  else expect(dayProblem(text)).toMatch(day);
  if (tags === null) expect(tagsProblem(text)).toBeNull();
  else expect(tagsProblem(text)).toMatch(tags);
});

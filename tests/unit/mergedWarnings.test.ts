import { expect, test } from "vitest";
import { mergedWarnings } from "../../shared/quantity/mergedWarnings.ts";

test("what is said alike of several places is said once and names them; what differs stays", () => {
  const at = (code: string, where: string, message: string) => ({ code, where, message });
  const told = [
    at("a.b", "x", "m"),
    at("a.c", "x", "m"),
    at("a.b", "y", "m"),
    at("a.b", "x", "m"),
    at("a.b", "x", "n"),
  ];
  expect(mergedWarnings(told)).toEqual([at("a.b", "x; y", "m"), at("a.c", "x", "m"), at("a.b", "x", "n")]);
});

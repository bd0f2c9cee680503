import { expect, test } from "vitest";
import { signOwner, turnedRoles, withTurned } from "../../web/views/bench/columnSigns.ts";
import { withCorrection } from "../../web/views/bench/recipeEdits.ts";
import { recipeOf } from "./benchTable.ts";

const RECIPE = recipeOf([
  ["thrust", "N"],
  ["current", "A"],
]);

test("a channel is turned round by the sign of its factor, whose size and uncertainty stay", () => {
  const lever = withCorrection(RECIPE, "thrust", { factor: 2.5, relativeUncertainty: 0.01 });
  const turned = withTurned(lever, new Set(["thrust"] as const));
  expect(turned.corrections.thrust).toMatchObject({ factor: -2.5, relativeUncertainty: 0.01 });
  expect([...turnedRoles(turned)]).toEqual(["thrust"]);
  expect(withTurned(turned, new Set())).toEqual(lever);
});

test("a channel that keeps its sign gets no correction of its own", () => {
  expect(withTurned(RECIPE, new Set(["current"] as const)).corrections).toEqual({
    current: { factor: -1, offset: 0, relativeUncertainty: 0 },
  });
});

test("the sign is the instrument's where there is one, and nobody's where a channel has none", () => {
  expect(signOwner({ instrumentIds: { thrust: "11111111-1111-4111-8111-111111111111" } }, "thrust")).toBe("instrument");
  expect(signOwner({}, "thrust")).toBe("column");
  expect(signOwner({}, "time")).toBe("none");
});

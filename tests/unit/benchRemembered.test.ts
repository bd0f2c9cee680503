import { expect, test } from "vitest";
import { identityOf, remembered } from "../../shared/bench/remembered.ts";

function counted() {
  let done = 0;
  return { work: () => ++done, times: () => done };
}

test("work is done once while nothing it depends on changes, and again when something does", () => {
  const [anchor, { work, times }] = [{}, counted()];
  for (const dependsOn of [[1], [1], [2], [2]]) remembered(anchor, { stage: "s", dependsOn }, work);
  expect(times()).toBe(2);
});

test("another anchor and another stage are other work", () => {
  const { work, times } = counted();
  const anchor = {};
  remembered(anchor, { stage: "s", dependsOn: 1 }, work);
  remembered(anchor, { stage: "t", dependsOn: 1 }, work);
  remembered({}, { stage: "s", dependsOn: 1 }, work);
  expect(times()).toBe(3);
});

test("the oldest results go when together they weigh more than the budget", () => {
  const [anchor, { work, times }] = [{}, counted()];
  const ask = (dependsOn: number) => remembered(anchor, { stage: "s", dependsOn, weight: 2, budget: 4 }, work);
  for (const key of [1, 2, 1, 3]) ask(key);
  ask(1);
  expect(times()).toBe(3);
  ask(2);
  expect(times()).toBe(4);
});

test("work that throws is not remembered", () => {
  const anchor = {};
  const ask = (work: () => number) => remembered(anchor, { stage: "s", dependsOn: 1 }, work);
  expect(() =>
    ask(() => {
      throw new Error("no");
    }),
  ).toThrow("no");
  expect(ask(() => 5)).toBe(5);
});

test("an array keeps its identity, and an equal one has another", () => {
  const array = new Float64Array(3);
  expect(identityOf(array)).toBe(identityOf(array));
  expect(identityOf(new Float64Array(3))).not.toBe(identityOf(array));
});

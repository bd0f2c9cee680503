import { describe, expect, test } from "vitest";
import { type Uncertain, uncertain } from "../../shared/quantity/uncertain.ts";
import { commonInputs } from "../../shared/vehicle/check/commonInputs.ts";
import { differenceOf, isToldApart } from "../../shared/vehicle/check/differenceOf.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import { relative } from "../relative.ts";
import { TWO_THRUSTERS, vehicleFrom } from "./vehicleExample.ts";

const shared = () => true;
const own = () => false;
const result = (value: number, by: Readonly<Record<string, number>>) => ({
  value: uncertain(value, Math.hypot(...Object.values(by))),
  shares: Object.entries(by).map(([input, contribution]) => ({ input, contribution })),
});

describe("the difference of two results", () => {
  test.each([
    // u² of a difference is u₁² + u₂² − 2 r u₁ u₂ (JCGM 100:2008, eq. 16); r = 0, 1 and 0.6 by hand.
    { name: "of inputs of their own", first: { a: 3 }, second: { a: 4 }, isCommon: own, u: 5 },
    { name: "of one common input", first: { a: 3 }, second: { a: 4 }, isCommon: shared, u: 1 },
    {
      name: "of one common input and one each",
      ...{ first: { a: 3, b: 4 }, second: { a: 5, c: 0 }, isCommon: shared },
      u: Math.sqrt(25 + 25 - 2 * 0.6 * 25),
    },
    { name: "that go opposite ways", first: { a: 3 }, second: { a: -4 }, isCommon: shared, u: 7 },
  ])("$name", ({ first, second, isCommon, u }) => {
    const made = differenceOf(result(10, first), result(12, second as Record<string, number>), isCommon);
    expect(made.value).toBe(2);
    expect(made.standardUncertainty).toSatisfy(relative(u, 1e-12));
  });

  test("of results whose inputs are not told is as of independent ones", () => {
    const made = differenceOf({ ...result(1, { a: 3 }), shares: [] }, { ...result(1, { a: 4 }), shares: [] }, shared);
    expect(made.standardUncertainty).toSatisfy(relative(5, 1e-12));
  });

  test("is told apart where its interval leaves zero out", () => {
    expect([uncertain(2, 0.9), uncertain(2, 1.1), uncertain(-2, 0.9)].map(isToldApart)).toEqual([true, false, true]);
  });
});

describe("two vehicles", () => {
  const drag = { from: "typed", dragArea: 0.03, standardUncertainty: 0.006 } as const;
  const first = vehicleFrom({ ...TWO_THRUSTERS, drag: { surge: { forward: { drag } } } });
  const second = { ...first, supply: { pack: { ...first.supply.pack!, openCircuitVoltage: 14.8 } } };

  test("have in common what is described alike", () => {
    const isCommon = commonInputs(first, second);
    const alike = ["drag.ahead", "mass.added.ahead", "hotelPower", "thruster.stern.motor", "thruster.stern.ahead"];
    expect(alike.map(isCommon)).toEqual(alike.map(() => true));
    expect(["supplyVoltage", "supplyResistance", "thruster.other.motor", "unheard"].map(isCommon)).toEqual(
      [1, 2, 3, 4].map(() => false),
    );
  });

  test("of one hull are told apart by a voltage though each speed is doubtful by the drag", () => {
    const [one, other] = [first, second].map((vehicle) => {
      const { speed, shares } = vehicleAnswer(vehicle).motions[0]!;
      return { value: speed as Uncertain, shares };
    });
    expect(isToldApart(differenceOf(one!, other!, own))).toBe(false);
    const made = differenceOf(one!, other!, commonInputs(first, second));
    expect(isToldApart(made)).toBe(true);
    expect(made.standardUncertainty).toBeLessThan(one!.value.standardUncertainty / 2);
  });
});

import { expect, test } from "vitest";
import type { QualityCheck } from "../../shared/model/quality.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import { flaggedChecks, qualityCardModel } from "../../web/views/bench/qualityModel.ts";
import { withStandFact } from "../../web/views/bench/standEdits.ts";
import { runOf } from "./webBenchReduction.fixture.ts";

const check = (name: string, verdict: QualityCheck["verdict"]): QualityCheck => ({
  ...{ code: `bench.${name}`, name, verdict, limit: "less than 3 %", sentence: `${name} was looked at.` },
  measured: verdict === "unknown" ? null : { value: 4, unit: "%", text: "4 % over the run" },
  mend: verdict === "pass" ? "" : "Do something.",
});
const CARD = [check("Immersion", "unknown"), check("Ventilation", "pass"), check("Pack sag", "flag")];

test("the card opens with its sentence, then what to look at, then what is not known; what passed stands apart", () => {
  const { sentence, tone, open, fine } = qualityCardModel(CARD);
  expect(sentence).toBe("1 of 3 checks passed; look at: pack sag. Not known: immersion.");
  expect(tone).toBe("open");
  expect(open.map(({ name, word }) => `${word}: ${name}`)).toEqual(["Look: Pack sag", "Not known: Immersion"]);
  expect(fine.map(({ name, word }) => `${word}: ${name}`)).toEqual(["Passed: Ventilation"]);
});

test("each row sets what was measured against what is asked for, and an unmeasured one says only the latter", () => {
  const [sag, immersion] = qualityCardModel(CARD).open;
  expect(sag!.against).toBe("Here: 4 % over the run. Asked for: less than 3 %.");
  expect(immersion!.against).toBe("Asked for: less than 3 %.");
});

test("the checks of all runs of a variant that ask for a look are named once each, and none is said as nothing", () => {
  expect(flaggedChecks([CARD, CARD])).toBe("look at: pack sag");
  expect(flaggedChecks([CARD, [check("Zero drift", "flag")]])).toBe("look at: pack sag and zero drift");
  expect(flaggedChecks([[check("Ventilation", "pass")]])).toBe("");
});

test("a fact of the stand is stated, changed and taken back, and the last one taken back leaves no trace", () => {
  const { recipe } = runOf("run").document;
  const stated = withStandFact(recipe, "shaftImmersion", 0.2);
  expect(stated.stand).toEqual({ shaftImmersion: 0.2 });
  const both = withStandFact(stated, "tankWidth", 1.2);
  expect(both.stand).toEqual({ shaftImmersion: 0.2, tankWidth: 1.2 });
  expect(withStandFact(both, "tankWidth", null).stand).toEqual({ shaftImmersion: 0.2 });
  const none = withStandFact(stated, "shaftImmersion", null);
  expect(none).toEqual(recipe);
  expect(Recipe.parse(both).stand).toEqual(both.stand);
});

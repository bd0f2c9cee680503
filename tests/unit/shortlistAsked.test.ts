import { expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { Project } from "../../shared/model/project.ts";
import { ShortlistRequest, ShortlistRequirement } from "../../shared/model/shortlist.ts";
import { demandsInWords } from "../../shared/shortlist/demandsInWords.ts";
import { demandsOf } from "../../web/views/shortlist/demands.ts";
import { missingFrom, startOf } from "../../web/views/shortlist/requirementStart.ts";
import { BOX, REQUIREMENT, shortlist } from "./shortlistBox.ts";

const WATER = { kind: "fresh", temperature: 291.15 } as const;

test("a project without a requirement of its own begins with nothing asked, and can not be searched yet", () => {
  const start = startOf(Project.parse({ name: "Mine", water: WATER }));
  expect(start).toEqual({ demands: {}, position: "horizontal", thrusters: null, hotelPower: null });
  expect(missingFrom(start)).toMatch(/^Say first what is needed/);
  expect(missingFrom({ demands: { thrustAhead: 5 }, thrusters: null })).toMatch(/how many/);
  expect(missingFrom({ demands: { thrustAhead: 5 }, thrusters: 1 })).toBeNull();
});

test("the demonstration begins with what it states itself", () => {
  const { demands, thrusters, hotelPower } = startOf(Project.parse(DEMO.project));
  expect(demandsOf(demands)).toEqual({ thrustAhead: 15, thrustAstern: 6, diameter: 0.08 });
  expect({ thrusters, hotelPower }).toEqual({ thrusters: 2, hotelPower: 10 });
});

test("a demand of two halves is found again in the form", () => {
  const thrustAtSpeed = { thrust: 4, speed: 1.5 };
  const requirement = ShortlistRequirement.parse({ water: WATER, thrustAtSpeed });
  expect(demandsOf(startOf({ requirement }).demands)).toEqual({ thrustAtSpeed });
});

test("every demand is told with its unit, and on what terms", () => {
  const told = demandsInWords(ShortlistRequirement.parse({ ...REQUIREMENT, confidence: 0.95 }));
  expect(told.join(" ")).toBe(
    "Each thruster pushes at least 22 N ahead at rest. Current from the supply: at most 32 A. Winding: at most 80 °C. " +
      "A mean thrust of 7 N each is kept up for 60 min, with 20 % of the charge left. Propeller: at most 100 mm. " +
      "Mass of one thruster: at most 0.3 kg. Price of one thruster: at most 75. Tip speed: at most 15 m/s. " +
      "2 equal thrusters run together in fresh water of 18 °C, with a hotel load of 12 W; each demand must hold with a probability of 95 %.",
  );
});

test("where nothing is asked, nothing is said to meet it", () => {
  const requirement = ShortlistRequirement.parse({ water: WATER });
  expect(demandsInWords(requirement)[0]).toMatch(/^Nothing is asked/);
  const { answer } = shortlist(ShortlistRequest.parse({ requirement, box: BOX }));
  expect(answer).toMatch(/^The requirement asks nothing, so this is no choice yet/);
  expect(answer).not.toMatch(/meets? the requirement/);
});

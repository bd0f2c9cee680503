import type { TheoryInputs } from "../../web/views/theory/theoryModel.ts";
import { DENSITY, DIAMETER } from "./webBenchReduction.fixture.ts";

/** What a person states on the Theory screen, about the made run. */
export const INPUTS: TheoryInputs = {
  staticMerit: 0.6,
  diameter: DIAMETER,
  density: DENSITY,
  nozzleAreaRatio: null,
  driveEfficiency: 0.75,
  voltage: 12,
  duty: { given: "thrust", thrust: 20 },
};

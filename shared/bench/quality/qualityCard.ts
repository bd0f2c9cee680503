import type { QualityCheck } from "../../model/quality.ts";
import type { RunFacts } from "../runFacts.ts";
import { heating } from "./heating.ts";
import { immersion } from "./immersion.ts";
import { packSag } from "./packSag.ts";
import { plateauRange } from "./plateauRange.ts";
import { powerLaw } from "./powerLaw.ts";
import { returnFlow } from "./returnFlow.ts";
import { reynoldsRange } from "./reynoldsRange.ts";
import { saturation } from "./saturation.ts";
import { tachometerAliasing } from "./tachometerAliasing.ts";
import { tankSize } from "./tankSize.ts";
import { tareSize } from "./tareSize.ts";
import { temperatureDrift } from "./temperatureDrift.ts";
import { thrustCalibration } from "./thrustCalibration.ts";
import { ventilation } from "./ventilation.ts";

/** What can go wrong on a thrust stand, in the order a builder would look: the water, the supply, the instruments, the run. */
export const QUALITY_CHECKS: readonly ((facts: RunFacts) => QualityCheck)[] = [
  ...[immersion, tankSize, returnFlow, ventilation],
  ...[packSag, heating, temperatureDrift],
  ...[thrustCalibration, saturation, tachometerAliasing, tareSize],
  ...[plateauRange, powerLaw, reynoldsRange],
];

import type { QualityCheck } from "../../model/quality.ts";
import { shaftFromElectrical } from "../../motor/shaftFromElectrical.ts";
import { windingTemperatureRise } from "../../motor/windingTemperature.ts";
import { lineThroughOrigin } from "../../numeric/lineThroughOrigin.ts";
import { twoSidedPValue } from "../../numeric/studentT.ts";
import { formatNumber } from "../../quantity/format.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import type { MeasuredPlateau } from "../measuredPlateau.ts";
import { remembered } from "../remembered.ts";
import type { RunFacts } from "../runFacts.ts";
import type { WrittenPlateau } from "../writtenPlateau.ts";
import { type Change, changeWithin, pooledChange } from "./changeWithin.ts";
import { heldStretches } from "./heldStretches.ts";
import { repeatedRates } from "./repeatedRates.ts";
import { changeInPercent, flagged, passed, percentText, unjudged } from "./verdict.ts";

/** Growth of the power for one and the same work that matters. Common practice, no source. */
const RELEVANT = 0.02;
const TOO_RARE = 0.01;
/** Loss in the winding below this part of the power is too small to tell a resistance by. */
const LEAST_LOSS = 0.02;

const SUBJECT = {
  code: "bench.heating",
  name: "Heating",
  limit: `electrical power for the same speed grows by less than ${percentText(RELEVANT)} (common practice)`,
};

/** A growth of P/n³, from where. */
interface Growth {
  readonly change: number;
  readonly standardError: number;
  readonly pValue: number;
  readonly where: "over a plateau" | "from the first to the last visit of a speed";
}

/**
 * Does the motor need more power for the same work as time goes by? P/n³ within plateaus, and where a speed was visited
 * twice. With the motor's constants the growth is told as a rise of the winding's temperature: an estimate, because a
 * pivot, a bearing or the water may have taken the power as well.
 */
export function heating(facts: RunFacts): QualityCheck {
  const growths = [withinPlateaus(facts), betweenVisits(facts.used.map(({ measured }) => measured))].filter(
    (growth) => growth !== null,
  );
  if (growths.length === 0) {
    const electrical = facts.used.some(({ measured }) => measured.electricalPower !== null);
    return unjudged(
      SUBJECT,
      electrical
        ? "Electrical power was not logged long enough within plateaus to see it grow, and no speeds were visited twice."
        : "The log has no electrical power.",
      electrical ? "Go up and down again through the same steps." : "Log voltage and current.",
    );
  }
  const found = growths.find(tells) ?? growths.reduce((a, b) => (b.change > a.change ? b : a));
  const measured = changeInPercent(found.change, 2 * found.standardError, found.where);
  if (!tells(found)) return passed(SUBJECT, measured, "The same speed takes the same power all along.");
  return flagged(SUBJECT, {
    measured,
    sentence: `The same speed takes ${percentText(found.change)} more power ${found.where}.${windingText(found.change, facts)}`,
    mend: "Let the motor cool between steps, keep full-load steps under some ten seconds, and feel or measure the motor; a hot motor or controller is a burn and fire risk. Check bearing and pivot for rubbing too.",
  });
}

const tells = ({ change, pValue }: Growth) => change >= RELEVANT && pValue < TOO_RARE;

function withinPlateaus(facts: RunFacts): Growth | null {
  const pooled = pooledChange(
    heldStretches(facts).map(({ written }) =>
      remembered(written, { stage: "heating", dependsOn: null }, () => growthOf(written)),
    ),
  );
  return pooled && { ...pooled, where: "over a plateau" };
}

/** As a part, so that no calibration factor matters. */
function growthOf({ readings: { electricalPower, rotationRate } }: WrittenPlateau): Change | null {
  return electricalPower ? changeWithin(perCubeOf(electricalPower, rotationRate)) : null;
}

/** P/n³ row by row; NaN where nothing turned. */
function perCubeOf(power: Float64Array, rates: Float64Array): Float64Array {
  const ratios = new Float64Array(power.length);
  for (let i = 0; i < ratios.length; i++) {
    const rate = rates[i]!;
    ratios[i] = rate > 0 ? power[i]! / (rate * rate * rate) : Number.NaN;
  }
  return ratios;
}

/** Growth goes with the time between the visits; told for the longest. */
function betweenVisits(plateaus: readonly MeasuredPlateau[]): Growth | null {
  const perCube = ({ electricalPower, rotationRate }: MeasuredPlateau) =>
    electricalPower && electricalPower.mean > 0 ? electricalPower.mean / rotationRate.mean ** 3 : null;
  const visits = repeatedRates(plateaus).flatMap(([first, second]) => {
    const [a, b] = [perCube(first), perCube(second)];
    return a !== null && b !== null && Number.isFinite(b / a)
      ? [{ x: second.middle - first.middle, y: b / a - 1 }]
      : [];
  });
  if (visits.length < 2) return null;
  const [x, y] = [visits.map((visit) => visit.x), visits.map((visit) => visit.y)];
  const line = lineThroughOrigin({ x, y });
  const longest = Math.max(...x);
  const change = line.slope * longest;
  const standardError = Math.max(1e-4, (line.standardErrorFromScatter ?? 0) * longest);
  const pValue = twoSidedPValue(change / standardError, visits.length - 1);
  return { change, standardError, pValue, where: "from the first to the last visit of a speed" };
}

/** The growth as heat of the winding at the plateau with the greatest power: ΔP = I_m² ΔR. */
function windingText(growth: number, { used, standMotor }: RunFacts): string {
  if (!standMotor) return "";
  const strongest = used
    .map(({ measured }) => measured)
    .reduce((a, b) => ((b.electricalPower?.mean ?? 0) > (a.electricalPower?.mean ?? 0) ? b : a));
  const power = strongest.electricalPower?.mean ?? 0;
  const current = motorCurrent(power, strongest.rotationRate.mean, standMotor);
  const loss = current === null ? 0 : current ** 2 * standMotor.motor.resistance;
  if (loss < LEAST_LOSS * power || power <= 0) return "";
  const kelvin = windingTemperatureRise((growth * power) / loss);
  return ` If all of it is the winding's resistance, that is about ${formatNumber(kelvin, 2)}\u202fK warmer (estimate).`;
}

function motorCurrent(power: number, rotationRate: number, { motor, controller }: NonNullable<RunFacts["standMotor"]>) {
  try {
    const controllerResistance = controller?.resistance ?? 0;
    return shaftFromElectrical({ voltage: power, current: 1, rotationRate, motor, controllerResistance }).motorCurrent;
  } catch (error) {
    if (error instanceof OutOfDomain) return null;
    throw error;
  }
}

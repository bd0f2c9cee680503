import type { Pack } from "../../model/parts/pack.ts";
import type { PackAdvice, PackFit } from "../../model/vehicle/enduranceAnswer.ts";
import type { Mission } from "../../model/vehicle/mission.ts";
import { formatNumber } from "../../quantity/format.ts";
import { hasInterval, notBelowZero, type Told, withoutInterval } from "../../quantity/told.ts";
import { NORMAL_975, uncertain } from "../../quantity/uncertain.ts";
import { supplyOf } from "../../supply/supplyOf.ts";
import { type Battery, batteryOf } from "./battery.ts";
import { type MissionRun, missionRun, timesOf } from "./missionRun.ts";
import { type Drawn, drawing, type Leg, plannedLegs } from "./plan.ts";
import { CUT_OFF_WORDS, chargeWords, shareWords, shortfallWords, timeWords, uncertainChargeWords } from "./words.ts";

/**
 * Which of some packs do a mission with its reserve, each solved with its own voltage, resistance and limits.
 *
 * Assumes  the mass and size of the vehicle as they are: a heavier pack that has to be floated is a larger vehicle.
 */
export function packAdvice(
  on: Drawn,
  mission: Mission,
  { packs, neededCharge }: { readonly packs: readonly Pack[]; readonly neededCharge: Told | null },
): PackAdvice {
  const all = packs.map((pack) => packFit(on, mission, { pack, mission: neededCharge }));
  const fitting = all.filter(({ fits }) => fits).sort((a, b) => a.charge! - b.charge!);
  const missing = all.filter(({ fits }) => !fits).sort((a, b) => (b.times ?? -1) - (a.times ?? -1));
  const [best, nearest] = [fitting[0] ?? null, missing.find(({ times }) => times !== null) ?? null];
  return {
    ...{ neededCharge, packs: [...fitting, ...missing] },
    ...{ smallestThatFits: best?.name ?? null, nearestThatDoesNot: nearest?.name ?? null },
    sentence: adviceSentence({ neededCharge, mission, best, nearest, count: packs.length }),
  };
}

interface Candidate {
  readonly pack: Pack;
  /** Charge that the mission needs on the pack of the vehicle, C. */ readonly mission: Told | null;
}

function packFit(drawn: Drawn, mission: Mission, { pack, mission: known }: Candidate): PackFit {
  const { model, vehicle } = drawn;
  const supply = { ...vehicle.supply, pack };
  const { openCircuitVoltage, resistance, limits } = supplyOf(supply);
  const none = {
    name: pack.name,
    fits: false,
    times: null,
    chargeLeft: null,
    neededCharge: null,
    isSure: false,
    missingCharge: null,
    endedBy: null,
  };
  const found = batteryOf({ supply }, mission);
  if (found === null) {
    return {
      ...none,
      charge: null,
      openCircuitVoltage,
      resistance,
      sentence: `${pack.name}: its charge is not stated.`,
    };
  }
  const { battery } = found;
  const on = drawing(
    { ...drawn, model: { ...model, supplyLimits: limits }, vehicle: { ...vehicle, supply }, battery },
    { orders: [2] },
  );
  const legs = plannedLegs(on, mission.legs);
  const run = missionRun(battery, legs, { account: false });
  const { times } = timesOf(battery, legs);
  const value = times === null ? (run.endsAt === null ? 0 : null) : battery.rated / times;
  const needed = value === null ? null : likeMission(known, value);
  const isSure = needed !== null && isBeyond(battery.rated, needed, pack.uncertainties?.charge ?? 0);
  return {
    ...{ name: pack.name, fits: run.endsAt === null, charge: battery.rated, times, chargeLeft: run.left },
    ...{ openCircuitVoltage: battery.openCircuitVoltage(battery.start), resistance: battery.resistance },
    ...{ neededCharge: needed, isSure, missingCharge: needed === null ? null : needed.value - battery.rated },
    endedBy: run.endsAt === null ? null : run.legs[run.endsAt]!.endedBy,
    sentence: `${pack.name}: ${fitSentence(battery, legs, run, needed)}${isSure || needed === null ? "" : NOT_SURE}`,
  };
}

const NOT_SURE = " Not surely: that is within the doubt of the charges.";

/** Another charge for the same mission, as doubtful relative to itself. */
function likeMission(known: Told | null, value: number): Told {
  if (known === null || !(known.value > 0)) return uncertain(value, 0);
  if (!hasInterval(known)) return withoutInterval(value, known.why);
  return notBelowZero(uncertain(value, (known.standardUncertainty / known.value) * value));
}

/** Whether a charge (C) and what is needed are apart by more than their doubt; `own` is that of the charge. */
const isBeyond = (charge: number, needed: Told, own: number): boolean =>
  hasInterval(needed) && Math.abs(charge - needed.value) > NORMAL_975 * Math.hypot(needed.standardUncertainty, own);

function fitSentence(battery: Battery, legs: readonly Leg[], run: MissionRun, needed: Told | null): string {
  if (run.endsAt === null) {
    const spare =
      needed === null || needed.value === 0 ? "" : `, ${chargeWords(battery.rated - needed.value)} to spare`;
    return `fits, ${shareWords(run.left)} of ${chargeWords(battery.rated)} is left${spare}.`;
  }
  const ended = run.legs[run.endsAt]!;
  const leg = legs[run.endsAt]!;
  if (needed === null) {
    const why = leg.draw.can ? "" : ` ${shortfallWords(leg.draw.shortfall)}`;
    return `does not do leg ${run.endsAt + 1}, ${leg.leg.name}.${why}`;
  }
  const why = ended.endedBy === null ? "" : `, because ${CUT_OFF_WORDS[ended.endedBy]}`;
  return `ends after ${timeWords(run.time)} in leg ${run.endsAt + 1}, ${leg.leg.name}${why}; it would need ${uncertainChargeWords(needed)}, ${chargeWords(needed.value - battery.rated)} more than it has.`;
}

interface Advice {
  readonly neededCharge: Told | null;
  readonly mission: Mission;
  readonly best: PackFit | null;
  readonly nearest: PackFit | null;
  readonly count: number;
}

function adviceSentence({ neededCharge, mission, best, nearest, count }: Advice): string {
  const reserve = `${formatNumber(100 * mission.reserve)} %`;
  const need =
    neededCharge === null
      ? "No charge at this voltage and resistance does the mission."
      : `The mission needs ${uncertainChargeWords(neededCharge)} with ${reserve} in reserve, at the voltage and resistance of this pack.`;
  if (count === 0) return need;
  const fit =
    best === null
      ? " None of the packs at hand fits."
      : ` Smallest of the packs at hand that fits${best.isSure ? "" : ", by the best estimate"}: ${best.name}.`;
  const miss =
    nearest === null ? "" : ` Nearest that does not: ${nearest.name}, short of ${chargeWords(nearest.missingCharge!)}.`;
  return `${need}${fit}${miss}`;
}

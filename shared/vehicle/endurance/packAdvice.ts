import type { Pack } from "../../model/parts/pack.ts";
import type { PackAdvice, PackFit } from "../../model/vehicle/enduranceAnswer.ts";
import type { Mission } from "../../model/vehicle/mission.ts";
import { formatNumber } from "../../quantity/format.ts";
import { supplyOf } from "../../supply/supplyOf.ts";
import { type Battery, batteryOf } from "./battery.ts";
import { type MissionRun, missionRun, timesOf } from "./missionRun.ts";
import { type Drawn, drawing, type Leg, plannedLegs } from "./plan.ts";
import { CUT_OFF_WORDS, chargeWords, shareWords, shortfallWords, timeWords } from "./words.ts";

/**
 * Which of some packs do a mission with its reserve, each solved with its own voltage, resistance and limits.
 *
 * Assumes  the mass and size of the vehicle as they are: a heavier pack that has to be floated is a larger vehicle.
 */
export function packAdvice(
  on: Drawn,
  mission: Mission,
  { packs, neededCharge }: { readonly packs: readonly Pack[]; readonly neededCharge: number | null },
): PackAdvice {
  const all = packs.map((pack) => packFit(on, mission, pack));
  const fitting = all.filter(({ fits }) => fits).sort((a, b) => a.charge! - b.charge!);
  const missing = all.filter(({ fits }) => !fits).sort((a, b) => (b.times ?? -1) - (a.times ?? -1));
  const [best, nearest] = [fitting[0] ?? null, missing.find(({ times }) => times !== null) ?? null];
  return {
    ...{ neededCharge, packs: [...fitting, ...missing] },
    ...{ smallestThatFits: best?.name ?? null, nearestThatDoesNot: nearest?.name ?? null },
    sentence: adviceSentence({ neededCharge, mission, best, nearest, count: packs.length }),
  };
}

function packFit(drawn: Drawn, mission: Mission, pack: Pack): PackFit {
  const { model, vehicle } = drawn;
  const supply = { ...vehicle.supply, pack };
  const { openCircuitVoltage, resistance, limits } = supplyOf(supply);
  const none = {
    name: pack.name,
    fits: false,
    times: null,
    chargeLeft: null,
    neededCharge: null,
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
  const needed = times === null ? (run.endsAt === null ? 0 : null) : battery.rated / times;
  return {
    ...{ name: pack.name, fits: run.endsAt === null, charge: battery.rated, times, chargeLeft: run.left },
    ...{ openCircuitVoltage: battery.openCircuitVoltage(battery.start), resistance: battery.resistance },
    ...{ neededCharge: needed, missingCharge: needed === null ? null : needed - battery.rated },
    endedBy: run.endsAt === null ? null : run.legs[run.endsAt]!.endedBy,
    sentence: `${pack.name}: ${fitSentence(battery, legs, run, needed)}`,
  };
}

function fitSentence(battery: Battery, legs: readonly Leg[], run: MissionRun, needed: number | null): string {
  if (run.endsAt === null) {
    const spare = needed === null || needed === 0 ? "" : `, ${chargeWords(battery.rated - needed)} to spare`;
    return `fits, ${shareWords(run.left)} of ${chargeWords(battery.rated)} is left${spare}.`;
  }
  const ended = run.legs[run.endsAt]!;
  const leg = legs[run.endsAt]!;
  if (needed === null) {
    const why = leg.draw.can ? "" : ` ${shortfallWords(leg.draw.shortfall)}`;
    return `does not do leg ${run.endsAt + 1}, ${leg.leg.name}.${why}`;
  }
  const why = ended.endedBy === null ? "" : `, because ${CUT_OFF_WORDS[ended.endedBy]}`;
  return `ends after ${timeWords(run.time)} in leg ${run.endsAt + 1}, ${leg.leg.name}${why}; it would need ${chargeWords(needed)}, ${chargeWords(needed - battery.rated)} more than it has.`;
}

interface Advice {
  readonly neededCharge: number | null;
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
      : `The mission needs ${chargeWords(neededCharge)} with ${reserve} in reserve, at the voltage and resistance of this pack.`;
  if (count === 0) return need;
  const fit =
    best === null ? " None of the packs at hand fits." : ` Smallest of the packs at hand that fits: ${best.name}.`;
  const miss =
    nearest === null ? "" : ` Nearest that does not: ${nearest.name}, short of ${chargeWords(nearest.missingCharge!)}.`;
  return `${need}${fit}${miss}`;
}

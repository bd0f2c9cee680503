import type { LegAnswer, MissionAnswer } from "../../model/vehicle/enduranceAnswer.ts";
import type { Mission } from "../../model/vehicle/mission.ts";
import { normalProbability } from "../../numeric/normalProbability.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import { doubtShares, spreadOfLinear, uncertainOf } from "../propulsion/firstOrder.ts";
import { drainingAt } from "./drain.ts";
import { shortfallAt } from "./drainOf.ts";
import { type Changing, linearOfDrawing } from "./enduranceDoubts.ts";
import { type LegRun, type MissionRun, missionRun, timesOf, trackOf } from "./missionRun.ts";
import { endSentence, legSentence, missionSentence } from "./missionWords.ts";
import { type Drawing, type Leg, plannedLegs } from "./plan.ts";

export interface SolvedMission {
  readonly answer: MissionAnswer;
  readonly legs: readonly Leg[];
  readonly converged: boolean;
}

/** A mission on the battery of a vehicle: leg by leg, whether it fits, how often, and what that rests on. */
export function missionAnswer(on: Drawing, changing: Changing, mission: Mission): SolvedMission {
  const { battery } = on;
  const legs = plannedLegs(on, mission.legs);
  const run = missionRun(battery, legs);
  const answers = legs.map((leg, i) => legAnswer(on, leg, run.legs[i]!));
  const { times, converged } = timesOf(battery, legs);
  const durations = legs.map(({ duration }) => duration);
  const duration = durations.includes(null) ? null : durations.reduce<number>((sum, one) => sum + one!, 0);
  const doubts = doubtsOf(changing, mission, run, times, duration);
  const neededCharge = times === null ? (run.endsAt === null ? 0 : null) : battery.rated / times;
  const end = run.endsAt === null ? null : endOf(legs, run, answers[run.endsAt]!);
  const { time, charge, left: chargeLeft, energy } = run;
  const answer: MissionAnswer = {
    fits: end === null,
    sentence: missionSentence({ run, battery, end, times: doubts.times, lasts: doubts.lasts, neededCharge }),
    ...{ legs: answers, duration, time, charge, chargeLeft, energy, endsAt: end, neededCharge },
    missingCharge: neededCharge === null ? null : neededCharge - battery.rated,
    ...doubts,
    track: trackOf(battery, legs, run),
  };
  const drained = legs.every(({ draw }) => !draw.can || draw.drain.converged);
  return { answer, legs, converged: converged && drained };
}

function legAnswer({ model, battery }: Drawing, planned: Leg, run: LegRun): LegAnswer {
  const { leg, needs, draw, duration, pace } = planned;
  const impossible = run.state === "impossible" && duration !== null;
  const shortfall = !impossible ? null : draw.can ? shortfallAt(model, battery, needs, run.from) : draw.shortfall;
  const end = draw.can && run.time > 0 ? drainingAt(battery, draw.drain, run.to) : null;
  const onBus = run.energy.source - run.energy.supplyLoss;
  return {
    ...{ name: leg.name, does: leg.kind.does, state: run.state, sentence: legSentence(planned, run, shortfall) },
    ...{ duration, time: run.time, distance: Math.max(0, pace) * run.time, charge: run.charge },
    ...{ chargeBefore: run.from, chargeAfter: run.to, power: run.time > 0 ? onBus / run.time : null },
    ...{ greatestCurrent: end?.current ?? null, leastVoltage: end?.voltage ?? null },
    ...{ energy: run.energy, endedBy: run.endedBy, shortfall },
  };
}

function endOf(legs: readonly Leg[], run: MissionRun, leg: LegAnswer): MissionAnswer["endsAt"] {
  const sentence = endSentence(legs, run, leg);
  return { leg: run.endsAt!, name: leg.name, after: leg.time, by: leg.endedBy ?? "thrust", sentence };
}

type Doubts = Pick<MissionAnswer, "times" | "lasts" | "left" | "probabilityFits" | "shares">;

/** How often it fits, how long that is, and what is left at its end, by first order. */
function doubtsOf(
  changing: Changing,
  mission: Mission,
  run: MissionRun,
  times: number | null,
  duration: number | null,
): Doubts {
  const none = { times: null, lasts: null, left: null, probabilityFits: null, shares: [] };
  if (times === null || duration === null)
    return { ...none, left: run.endsAt === null ? uncertain(run.left, 0) : null };
  const { doubts } = changing;
  const [often, lasts, left] = linearOfDrawing(changing, [times, times * duration, run.left], (on) => {
    const legs = plannedLegs(on, mission.legs);
    const changed = timesOf(on.battery, legs, times).times;
    if (changed === null) return null;
    const whole = legs.reduce((sum, leg) => sum + leg.duration!, 0);
    return [
      changed,
      changed * whole,
      run.endsAt === null ? missionRun(on.battery, legs, { account: false }).left : run.left,
    ];
  });
  return {
    times: uncertainOf(doubts, often!),
    lasts: uncertainOf(doubts, lasts!),
    left: run.endsAt === null ? uncertainOf(doubts, left!) : null,
    probabilityFits: probabilityAbove(1, times, spreadOfLinear(doubts, often!)),
    shares: doubtShares(doubts, lasts!),
  };
}

/** Probability that a normal variable lies above a limit. */
function probabilityAbove(limit: number, value: Uncertain["value"], standardUncertainty: number): number {
  if (standardUncertainty === 0) return value >= limit ? 1 : 0;
  return normalProbability((value - limit) / standardUncertainty);
}

import type { LegAnswer, MissionAnswer } from "../../model/vehicle/enduranceAnswer.ts";
import type { Mission } from "../../model/vehicle/mission.ts";
import { normalProbability } from "../../numeric/normalProbability.ts";
import { asShare, type Told, withoutInterval } from "../../quantity/told.ts";
import { type Uncertain, uncertain } from "../../quantity/uncertain.ts";
import { doubtShares, type Linear, spreadOfLinear, toldOf, uncertainOf } from "../propulsion/firstOrder.ts";
import type { Battery } from "./battery.ts";
import { shortfallAt } from "./drainOf.ts";
import { type Changing, linearOfDrawing } from "./enduranceDoubts.ts";
import { LEG_NUMBERS, legNumbers, legTold } from "./legDoubts.ts";
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
  const { times, converged } = timesOf(battery, legs);
  const durations = legs.map(({ duration }) => duration);
  const duration = durations.includes(null) ? null : durations.reduce<number>((sum, one) => sum + one!, 0);
  const { legs: spreads, ...doubts } = doubtsOf(changing, mission, { legs, run, times, duration });
  const answers = legs.map((leg, i) => legAnswer(on, leg, run.legs[i]!, spreads[i]!));
  const end = run.endsAt === null ? null : endOf(legs, run, answers[run.endsAt]!);
  const { time, charge, left: chargeLeft, energy } = run;
  const answer: MissionAnswer = {
    fits: end === null,
    sentence: missionSentence({ run, battery, end, ...doubts }),
    ...{ legs: answers, duration, time, charge, chargeLeft, energy, endsAt: end },
    missingCharge: doubts.neededCharge === null ? null : doubts.neededCharge.value - battery.rated,
    ...doubts,
    track: trackOf(battery, legs, run),
  };
  const drained = legs.every(({ draw }) => !draw.can || draw.drain.converged);
  return { answer, legs, converged: converged && drained };
}

function legAnswer({ model, battery }: Drawing, planned: Leg, run: LegRun, spreads: readonly number[]): LegAnswer {
  const { leg, needs, draw, duration, pace } = planned;
  const impossible = run.state === "impossible" && duration !== null;
  const shortfall = !impossible ? null : draw.can ? shortfallAt(model, battery, needs, run.from) : draw.shortfall;
  const told = legTold(battery, planned, run, spreads);
  return {
    ...{
      name: leg.name,
      does: leg.kind.does,
      state: run.state,
      sentence: legSentence(planned, run, { shortfall, told }),
    },
    ...{ duration, time: run.time, distance: Math.max(0, pace) * run.time },
    ...{ charge: told?.charge ?? NOTHING, energyTaken: told?.energyTaken ?? NOTHING },
    ...{ chargeBefore: run.from, chargeAfter: told?.chargeAfter ?? uncertain(run.to, 0) },
    ...{ power: told?.power ?? null, greatestCurrent: told?.greatestCurrent ?? null },
    ...{ leastVoltage: told?.leastVoltage ?? null, energy: run.energy, endedBy: run.endedBy, shortfall },
  };
}

function endOf(legs: readonly Leg[], run: MissionRun, leg: LegAnswer): MissionAnswer["endsAt"] {
  const sentence = endSentence(legs, run, leg);
  return { leg: run.endsAt!, name: leg.name, after: leg.time, by: leg.endedBy ?? "thrust", sentence };
}

const NOTHING = uncertain(0, 0);

type Doubts = Pick<MissionAnswer, "times" | "lasts" | "left" | "neededCharge" | "probabilityFits" | "shares"> & {
  /** Standard uncertainties of each leg, as `legNumbers`. */ readonly legs: readonly (readonly number[])[];
};

interface Known {
  readonly legs: readonly Leg[];
  readonly run: MissionRun;
  /** How often it fits; null: not at all, or without end. */ readonly times: number | null;
  /** s; null: a leg makes no way. */ readonly duration: number | null;
}

/** How often it fits, how long that is, what is left at its end, and what each leg draws, by first order. */
function doubtsOf(changing: Changing, mission: Mission, { legs, run, times, duration }: Known): Doubts {
  const { doubts, battery, why } = changing;
  const tell = (linear: Linear) => toldOf(doubts, linear, why);
  const isCounted = times !== null && duration !== null;
  const drawn = (legs: readonly Leg[], runs: readonly LegRun[], by: Battery) =>
    legs.flatMap((leg, i) => legNumbers(by, leg, runs[i]!));
  const whole = [times ?? 0, (times ?? 0) * (duration ?? 0), times === null ? 0 : battery.rated / times];
  const values = [...whole, run.left, ...drawn(legs, run.legs, battery)];
  const [often, lasts, needed, left, ...ofLegs] = linearOfDrawing(changing, values, (on) => {
    const planned = plannedLegs(on, mission.legs);
    const changed = isCounted ? timesOf(on.battery, planned, times).times : 0;
    if (changed === null) return null;
    const lasting = planned.reduce((sum, leg) => sum + (leg.duration ?? 0), 0);
    const after = missionRun(on.battery, planned, { account: false });
    return [
      changed,
      changed * lasting,
      on.battery.rated / changed,
      after.left,
      ...drawn(planned, after.legs, on.battery),
    ];
  });
  const spreads = ofLegs.map((one) => spreadOfLinear(doubts, one));
  const byLeg = legs.map((_, i) => spreads.slice(LEG_NUMBERS * i, LEG_NUMBERS * (i + 1)));
  const remains = run.endsAt === null ? shareLeft(uncertainOf(doubts, left!), why) : null;
  const neededCharge = times !== null ? tell(needed!) : run.endsAt === null ? NOTHING : null;
  const none = {
    times: null,
    lasts: null,
    left: remains,
    neededCharge,
    probabilityFits: null,
    shares: [],
    legs: byLeg,
  };
  if (!isCounted) return none;
  return {
    ...none,
    times: tell(often!),
    lasts: tell(lasts!),
    probabilityFits: why === null ? probabilityAbove(1, times, spreadOfLinear(doubts, often!)) : null,
    shares: doubtShares(doubts, lasts!),
  };
}

const shareLeft = (left: Uncertain, why: string | null): Told =>
  why === null ? asShare(left) : withoutInterval(left.value, why);

/** Probability that a normal variable lies above a limit. */
function probabilityAbove(limit: number, value: Uncertain["value"], standardUncertainty: number): number {
  if (standardUncertainty === 0) return value >= limit ? 1 : 0;
  return normalProbability((value - limit) / standardUncertainty);
}

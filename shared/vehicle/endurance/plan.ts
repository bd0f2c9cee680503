import type { MissionLeg } from "../../model/vehicle/mission.ts";
import type { Vehicle } from "../../model/vehicle/vehicle.ts";
import type { PropulsionModel } from "../propulsion/propulsionModel.ts";
import type { Battery } from "./battery.ts";
import { type DrainAnswer, drainOf } from "./drainOf.ts";
import type { PlannedLeg } from "./missionRun.ts";
import { type Needs, needsOf, type Wish } from "./needs.ts";
import type { TableOptions } from "./powerTable.ts";
import type { PullBook } from "./pullBook.ts";
import { wishOfLeg } from "./wishes.ts";

/** A leg with what it asks and what it draws. */
export interface Leg extends PlannedLeg {
  readonly leg: MissionLeg;
  readonly needs: Needs;
  /** Way over the ground, or change of depth, in a second, m/s. */ readonly pace: number;
}

/** A vehicle on a battery. */
export interface Drawn {
  readonly model: PropulsionModel;
  readonly vehicle: Vehicle;
  readonly battery: Battery;
  readonly pulls: PullBook;
}

/** A vehicle on a battery: whatever it is asked, what that draws. Equal questions are worked out once. */
export interface Drawing extends Drawn {
  readonly needs: (wish: Wish) => Needs;
  readonly draw: (needs: Needs) => DrainAnswer;
}

export function drawing(drawn: Drawn, options: TableOptions = {}): Drawing {
  const { model, battery, pulls } = drawn;
  const asked = new Map<string, Needs>();
  const answers = new Map<Needs, DrainAnswer>();
  return {
    ...drawn,
    needs: (wish) => {
      const key = JSON.stringify(wish);
      const needs = asked.get(key) ?? needsOf(model, pulls, wish);
      asked.set(key, needs);
      return needs;
    },
    draw: (needs) => {
      const answer = answers.get(needs) ?? drainOf(model, battery, needs, options);
      answers.set(needs, answer);
      return answer;
    },
  };
}

/** Every leg of a mission with what it draws. */
export function plannedLegs(on: Drawing, legs: readonly MissionLeg[]): Leg[] {
  return legs.map((leg) => {
    const { wish, duration, pace } = wishOfLeg(on.vehicle, on.model.numbers, leg);
    const needs = on.needs(wish);
    return { leg, needs, duration, pace, draw: on.draw(needs) };
  });
}

import type { Vehicle } from "../../../shared/model/vehicle/vehicle.ts";
import type { VehicleAnswer } from "../../../shared/model/vehicle/vehicleAnswer.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { computeVehicle } from "../../api/vehicles.ts";
import { parts } from "../../app/session.ts";

export type Answered =
  | { readonly state: "none" }
  | { readonly state: "answered"; readonly of: Vehicle; readonly answer: VehicleAnswer }
  | { readonly state: "refused"; readonly of: Vehicle; readonly why: string };

export const NONE: Answered = { state: "none" };

const remembered = new WeakMap<Vehicle, Answered>();

/** The answer of a vehicle where it is known already. */
export const knownAnswer = (vehicle: Vehicle): Answered | undefined => remembered.get(vehicle);

/** A question on its way, and how many wait for its answer. */
interface Asked {
  readonly answer: Promise<Answered>;
  readonly stop: AbortController;
  waiting: number;
}

const onItsWay = new WeakMap<Vehicle, Asked>();

/** The same vehicle is asked for once; the work is stopped when nobody waits for it any more. */
export function answerOf(vehicle: Vehicle, signal: AbortSignal): Promise<Answered> {
  const known = remembered.get(vehicle);
  if (known) return Promise.resolve(known);
  const asked = onItsWay.get(vehicle) ?? askFor(vehicle);
  asked.waiting++;
  signal.addEventListener("abort", () => {
    if (--asked.waiting > 0) return;
    asked.stop.abort();
    forget(vehicle, asked);
  });
  return asked.answer;
}

function askFor(vehicle: Vehicle): Asked {
  const stop = new AbortController();
  const answer = freshAnswer(vehicle, stop.signal).then((made) => {
    // What was refused may be answered the next time, such as after the workbench was out of reach.
    if (made.state === "answered") remembered.set(vehicle, made);
    forget(vehicle, asked);
    return made;
  });
  const asked: Asked = { answer, stop, waiting: 0 };
  onItsWay.set(vehicle, asked);
  return asked;
}

function forget(vehicle: Vehicle, asked: Asked): void {
  if (onItsWay.get(vehicle) === asked) onItsWay.delete(vehicle);
}

async function freshAnswer(vehicle: Vehicle, signal: AbortSignal): Promise<Answered> {
  try {
    const packs = parts.value.packs.map(({ document }) => document);
    return { state: "answered", of: vehicle, answer: await computeVehicle({ vehicle, packs }, signal) };
  } catch (thrown) {
    return { state: "refused", of: vehicle, why: sentenceOf(thrown) };
  }
}

import { Mission, type MissionLeg } from "../../../../shared/model/vehicle/mission.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { freeName, without } from "./buildModel.ts";

export type LegKind = MissionLeg["kind"];
export type Does = LegKind["does"];

export const DOES_WORDS: Readonly<Record<Does, string>> = {
  swim: "swim ahead",
  hold: "hold its place",
  climb: "change depth",
  push: "push steadily",
  rest: "rest",
};

/** A leg of each kind to begin with. */
const STARTS: { readonly [D in Does]: Extract<LegKind, { does: D }> } = {
  swim: { does: "swim", speed: 0.5, extent: { by: "duration", duration: 600 } },
  hold: { does: "hold", duration: 600 },
  climb: { does: "climb", speed: 0.2, distance: 10 },
  push: { does: "push", force: 10, duration: 120 },
  rest: { does: "rest", duration: 300 },
};
export const LONGEST_MISSION = 200;

/** The same leg doing something else; how long it takes is kept where both take a time. */
export function withDoes(leg: MissionLeg, does: Does): MissionLeg {
  if (leg.kind.does === does) return leg;
  const start = STARTS[does];
  const lasted = durationOf(leg.kind);
  if (lasted === null) return { ...leg, kind: start };
  if (start.does === "swim") return { ...leg, kind: { ...start, extent: { by: "duration", duration: lasted } } };
  return { ...leg, kind: "duration" in start ? { ...start, duration: lasted } : start };
}

function durationOf(kind: LegKind): number | null {
  if ("duration" in kind) return kind.duration;
  return kind.does === "swim" && kind.extent.by === "duration" ? kind.extent.duration : null;
}

/** A first mission: down, swim, hold, up. */
export function withMission(build: VehicleBuild): VehicleBuild {
  const legs: MissionLeg[] = [
    { name: "Down", repeats: 1, kind: { does: "climb", speed: -0.2, distance: 10 } },
    { name: "Along the net", repeats: 1, kind: STARTS.swim },
    { name: "Look", repeats: 1, kind: STARTS.hold },
    { name: "Up", repeats: 1, kind: STARTS.climb },
  ];
  return { ...build, mission: Mission.parse({ legs }) };
}

export const withoutMission = (build: VehicleBuild): VehicleBuild => without(build, "mission") as VehicleBuild;

const withLegs = (build: VehicleBuild, change: (legs: readonly MissionLeg[]) => MissionLeg[]): VehicleBuild => {
  if (build.mission === undefined) return build;
  const legs = change(build.mission.legs);
  return legs.length === 0 ? withoutMission(build) : { ...build, mission: { ...build.mission, legs } };
};

export const withLeg = (build: VehicleBuild, at: number, change: (leg: MissionLeg) => MissionLeg): VehicleBuild =>
  withLegs(build, (legs) => (legs[at] === undefined ? [...legs] : legs.with(at, change(legs[at]))));

export const withLegAdded = (build: VehicleBuild): VehicleBuild =>
  withLegs(build, (legs) => {
    const name = freeName(
      "Leg",
      legs.map((leg) => leg.name),
    );
    return legs.length >= LONGEST_MISSION ? [...legs] : [...legs, { name, repeats: 1, kind: STARTS.swim }];
  });

export const withoutLeg = (build: VehicleBuild, at: number): VehicleBuild =>
  withLegs(build, (legs) => legs.toSpliced(at, 1));

/** A leg one place earlier (−1) or later (1). */
export const withLegMoved = (build: VehicleBuild, at: number, by: -1 | 1): VehicleBuild =>
  withLegs(build, (legs) => {
    const to = at + by;
    if (legs[at] === undefined || legs[to] === undefined) return [...legs];
    return legs.with(at, legs[to]).with(to, legs[at]);
  });

/** How long a leg takes once, s; null where that hangs on a speed over the ground in a current. */
export function legTime({ kind }: MissionLeg): number | null {
  if (kind.does === "climb") return kind.speed === 0 ? null : Math.abs(kind.distance / kind.speed);
  return durationOf(kind);
}

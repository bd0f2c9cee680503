import { computed, signal } from "@preact/signals";
import { LayoutRequest } from "../../../../shared/model/vehicle/layoutRequest.ts";
import type { LayoutAnswer } from "../../../../shared/model/vehicle/layoutAnswer.ts";
import type { VehicleBuild } from "../../../../shared/model/vehicle/vehicleBuild.ts";
import { layoutAnswer } from "../../../../shared/vehicle/layout/layoutAnswer.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { chosenBuild } from "../build/buildState.ts";

/** Thrust that one thruster of a drive makes, typed, N. */
export interface TypedLimit {
  readonly forward: number;
  readonly reverse: number;
  /** Relative standard uncertainty of both. */
  readonly doubt: number;
}

/** What a small thruster makes. Common practice, no source. */
export const FIRST_LIMIT: TypedLimit = { forward: 20, reverse: 12, doubt: 0.05 };

const typed = signal<Readonly<Record<string, TypedLimit>>>({});

export const limitOf = (drive: string): TypedLimit => typed.value[drive] ?? FIRST_LIMIT;

export function typeLimit(drive: string, change: Partial<TypedLimit>): void {
  typed.value = { ...typed.value, [drive]: { ...limitOf(drive), ...change } };
}

/** The layout of a build with stated thrusts; currents and torques are not known then. */
export function requestOf(build: VehicleBuild, limit: (drive: string) => TypedLimit): LayoutRequest {
  return LayoutRequest.parse({
    thrusters: build.thrusters.map(({ drive, ...place }) => {
      const { forward, reverse, doubt } = limit(drive);
      const known = (value: number) => ({ value, standardUncertainty: doubt * value });
      return { ...place, drive, limits: { forward: known(forward), reverse: known(reverse) } };
    }),
  });
}

export interface TypedLayout {
  readonly request: LayoutRequest;
  readonly layout: LayoutAnswer;
}

export const typedLayout = computed((): TypedLayout | { readonly problem: string } | null => {
  const build = chosenBuild.value;
  if (build === null) return null;
  try {
    const request = requestOf(build, limitOf);
    return { request, layout: layoutAnswer(request) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
});

import { computed, signal } from "@preact/signals";
import type { LayoutAnswer } from "../../../../shared/model/vehicle/layoutAnswer.ts";
import type { LayoutRequest } from "../../../../shared/model/vehicle/layoutRequest.ts";
import { layoutAnswer } from "../../../../shared/vehicle/layout/layoutAnswer.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { chosenBuild } from "../build/buildState.ts";
import { FIRST_LIMIT, requestOf, type TypedLimit } from "./typedLayoutRequest.ts";

const typed = signal<Readonly<Record<string, TypedLimit>>>({});

export const limitOf = (drive: string): TypedLimit => typed.value[drive] ?? FIRST_LIMIT;

export function typeLimit(drive: string, change: Partial<TypedLimit>): void {
  typed.value = { ...typed.value, [drive]: { ...limitOf(drive), ...change } };
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

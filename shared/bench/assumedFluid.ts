import type { FluidState } from "../model/fluid.ts";

/** Until a person says otherwise, a stand is taken to stand in fresh water of a room; a recipe says that it was taken. */
export const ASSUMED_FLUID: FluidState = { kind: "fresh", temperature: 291.15 };

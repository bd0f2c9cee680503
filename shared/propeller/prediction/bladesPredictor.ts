import type { Predictor } from "./predictor.ts";
export function bladesPredictor(_: unknown): Predictor {
  throw new Error("soon");
}

import type { Warning } from "../../quantity/warning.ts";

/** How a propeller runs. */
export interface Working {
  /** Rotation rate, rev/s. */
  readonly rotationRate: number;
  /** Advance speed, m/s; 0 at bollard. */
  readonly advanceSpeed: number;
}

/** What a prediction gives for one way of running; or in words why it gives nothing. */
export type Predicted =
  | {
      readonly state: "known";
      readonly thrustCoefficient: number;
      readonly torqueCoefficient: number;
      /** What to know of these numbers beyond what holds of the whole prediction. */
      readonly warnings: readonly Warning[];
    }
  | { readonly state: "unknown"; readonly reason: string };

/**
 * A propeller whose coefficients can be computed for any way of running: a series, or blade elements. One face for all
 * of them, so that a picture, a table and a report draw each prediction alike.
 */
export interface Predictor {
  /** Diameter over the blade tips, m. */
  readonly diameter: number;
  /** K_T and K_Q; never throws for finite input. */
  readonly at: (working: Working) => Predicted;
  /** What a reader must know of every number of this prediction. */
  readonly warnings: readonly Warning[];
}

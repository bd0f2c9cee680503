import type { UsedInstruments } from "../../shared/model/instrument.ts";
import type { LogInspection } from "../../shared/model/log.ts";
import type { Controller, Motor, Propeller } from "../../shared/model/parts.ts";
import type { Recipe } from "../../shared/model/recipe.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import type { Trace } from "../../shared/model/trace.ts";
import type { Problem } from "../../shared/quantity/problem.ts";

/** A log on disk. The hash names its bytes, so that a table once read can be used again. */
export interface LogFile {
  readonly path: string;
  readonly sha256: string;
  /** Its name as it came, for messages. */
  readonly name: string;
}

export interface InspectJob {
  readonly kind: "inspect";
  readonly file: LogFile;
}

export interface ReduceJob {
  readonly kind: "reduce";
  readonly file: LogFile;
  readonly recipe: Recipe;
  readonly propeller: Propeller;
  readonly motor?: Motor;
  readonly controller?: Controller;
  readonly instruments?: UsedInstruments;
  /** Program and version, printed in the result. */
  readonly program: string;
}

export interface TraceJob {
  readonly kind: "trace";
  readonly file: LogFile;
  readonly recipe: Recipe;
  readonly instruments?: UsedInstruments;
  /** Span of time to show, s; absent ends are those of the log. */
  readonly from?: number;
  readonly to?: number;
  /** Steps the span is divided into. */
  readonly points: number;
}

export type Job = InspectJob | ReduceJob | TraceJob;

/** What each kind of job gives. */
export interface Outcomes {
  inspect: LogInspection;
  reduce: Reduction;
  trace: Trace;
}
export type OutcomeOf<J extends Job> = Outcomes[J["kind"]];

/** From the server to a thread. A thread gets one job at a time. */
export type Order = { readonly id: number; readonly job: Job } | { readonly id: number; readonly cancel: true };

/** From a thread to the server: any number of shares done, then one of the others. */
export type Report = { readonly id: number } & (
  | { readonly fraction: number }
  | { readonly outcome: Outcomes[keyof Outcomes] }
  | { readonly refusal: "input" | "domain"; readonly problem: Problem }
  | { readonly cancelled: true }
  | { readonly fault: string }
);

import type { RejectedStretch } from "../model/reduction.ts";
import type { Rejection } from "./plateauSpans.ts";
import type { RowSpan } from "./rest.ts";
import type { RunFacts } from "./runFacts.ts";

const WORDS: { readonly [R in Rejection]: string } = {
  "at rest": "at rest",
  "too short": "too short",
  "settled too late": "too short once it had settled",
  "still settling": "still settling, or creeping on",
  ramp: "a ramp, not a held step",
  "without readings": "thrust or rotation rate missing",
};

/**
 * Every stretch that did not become a plateau and why, in order, so that no good one goes without a word. Rests that the
 * tare was taken from are told as tare windows, and bins of a sweep that are at rest are no loss.
 */
export function rejectedStretches(facts: RunFacts): RejectedStretch[] {
  const { spans, table, timeline, thrustTare } = facts;
  const { times } = timeline;
  const isTare = ({ from, to }: RowSpan) =>
    thrustTare.windows.some(({ start, end }) => start <= times[to - 1]! && end >= times[from]!);
  const told = spans.rejected
    .filter(({ span, because }) => because !== "at rest" || !(facts.sweep || isTare(span)))
    .map(({ span, because }) => ({ span, because: WORDS[because] }));
  const passed = spans.passedOver.map(({ span, because }) => ({
    span,
    because: WORDS[because as Rejection] ?? because,
  }));
  return [...told, ...passed]
    .filter(({ span }) => span.to > span.from)
    .sort((a, b) => a.span.from - b.span.from)
    .map(({ span: { from, to }, because }) => ({
      start: times[from]!,
      end: times[to - 1]!,
      firstLine: table.lineNumbers[from]!,
      lastLine: table.lineNumbers[to - 1]!,
      because,
    }));
}

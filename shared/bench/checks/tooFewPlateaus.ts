import { InputProblem } from "../../quantity/problem.ts";
import type { JudgedPlateau } from "../judgedPlateau.ts";
import type { PlateauSpans, Rejection } from "../plateauSpans.ts";

const MENDS: { readonly [R in Rejection]: string } = {
  "at rest": "check the unit and column of the rotation rate if the propeller did turn",
  "too short": "hold each step for longer, or set a shorter minimum duration",
  "settled too late":
    "hold each step for longer, so that a second is left once it has settled, or set a shorter minimum duration",
  "still settling": "hold each step until the reading has settled",
  ramp: "reduce a slow ramp as a sweep, by regression on the whole trace, or hold steps",
  "without readings": "check that thrust and rotation rate were both logged",
};

/** Too few plateaus in a log that holds a ramp. */
const RAMP_CODE = "bench.ramp-without-plateaus";

/** The refusal where fewer than two plateaus can be fitted: how many there are, and why the others are not. */
export function tooFewPlateaus(
  fileName: string,
  spans: PlateauSpans,
  plateaus: readonly JudgedPlateau[],
): InputProblem {
  const used = plateaus.filter((plateau) => plateau.used).length;
  const counts = new Map<string, number>();
  for (const { because } of spans.rejected) counts.set(because, (counts.get(because) ?? 0) + 1);
  for (const { leftOutBecause } of plateaus) {
    if (leftOutBecause)
      counts.set(`left out (${leftOutBecause})`, (counts.get(`left out (${leftOutBecause})`) ?? 0) + 1);
  }
  const because = [...counts].map(([reason, count]) => `${count} ${reason}`).join(", ");
  const moving = (Object.keys(MENDS) as Rejection[]).filter((reason) => reason !== "at rest" && counts.has(reason));
  // Every good log has rests: they are the reason only where there is nothing else.
  const reasons = moving.length > 0 || plateaus.length > 0 ? moving : (["at rest"] as const);
  const mends = reasons.map((reason) => MENDS[reason]);
  const advice = mends.length > 0 ? mends.join("; ") : "run a sweep with several held throttle steps";
  return new InputProblem({
    // Its own code: the page offers the sweep beside it.
    code: counts.has("ramp") && spans.foundBy !== "bins of rotation rate" ? RAMP_CODE : "bench.too-few-plateaus",
    where: fileName,
    found: `${used} usable ${used === 1 ? "plateau was" : "plateaus were"} found by ${spans.foundBy}${because && `; not usable: ${because}`}`,
    needed: "at least two stretches of steady running at different rotation rates",
    mend: `${advice[0]!.toUpperCase()}${advice.slice(1)}; or mark the plateaus by hand`,
  });
}

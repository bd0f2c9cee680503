import type { DriveDirection } from "../model/driveTrainPoint.ts";
import type { ControllerCommand } from "../model/parts/controller.ts";
import { formatNumber } from "../quantity/format.ts";
import { InputProblem } from "../quantity/problem.ts";

/** Pulses of a controller by direction of turning. */
export interface CommandScale {
  readonly stop: number;
  /** Pulse, µs, at a throttle of 0 to 1; throttle 0 is the end of the dead band. */
  readonly pulse: (direction: DriveDirection, throttle: number) => number;
  /** Distance from stop in the direction of full ahead, µs: rises from full astern to full ahead. */
  readonly offset: (pulse: number) => number;
  readonly canReverse: boolean;
}

/**
 * The scale of a controller: throttle rises in a straight line from the end of the dead band, where it is 0, to the pulse
 * of full throttle, where it is 1 (common practice, no source: some controllers count from the stop pulse; the maker's
 * data tells).
 *
 * Throws   InputProblem `drive.command-range` where the dead band swallows a direction, or both lie on one side of stop.
 */
export function commandScale(command: ControllerCommand): CommandScale {
  const { stop, fullForward, fullReverse, deadBand } = command;
  const ahead = fullForward - stop;
  const astern = fullReverse === null ? null : fullReverse - stop;
  if (Math.abs(ahead) <= deadBand) throw swallowed("fullForward", fullForward, command);
  if (astern !== null && (Math.abs(astern) <= deadBand || Math.sign(astern) === Math.sign(ahead))) {
    throw swallowed("fullReverse", fullReverse!, command);
  }
  const sense = Math.sign(ahead);
  const reach = { ahead: Math.abs(ahead), astern: Math.abs(astern ?? 0) };
  return {
    stop,
    pulse: (direction, throttle) => {
      const sign = direction === "ahead" ? sense : -sense;
      return stop + sign * (deadBand + throttle * (reach[direction] - deadBand));
    },
    offset: (pulse) => sense * (pulse - stop),
    canReverse: astern !== null,
  };
}

function swallowed(field: string, pulse: number, { stop, deadBand }: ControllerCommand): InputProblem {
  return new InputProblem({
    code: "drive.command-range",
    where: `train.controller.command.${field}`,
    found: `${formatNumber(pulse, 4)} µs with stop at ${formatNumber(stop, 4)} µs and a dead band of ${formatNumber(deadBand)} µs`,
    needed: "full throttle ahead on one side of the dead band, and full throttle astern on the other",
    mend: "Check the three pulses; usual ones are 1100, 1500 and 1900 µs with a dead band of 25 µs (common practice, no source)",
  });
}

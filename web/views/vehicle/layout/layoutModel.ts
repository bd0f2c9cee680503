import type { AxisReach, LayoutAnswer } from "../../../../shared/model/vehicle/layoutAnswer.ts";
import { formatNumber, formatUncertain } from "../../../../shared/quantity/format.ts";
import { NORMAL_975, scaled } from "../../../../shared/quantity/uncertain.ts";
import { capital, listed } from "../../../../shared/vehicle/layout/axes.ts";
import { AMPERE } from "../../bench/shownUnits.ts";
import { shownUncertain } from "../answer/units.ts";

const DEGREE = Math.PI / 180;

export interface ReachRow {
  readonly axis: string;
  readonly way: string;
  readonly greatest: string;
  /** Empty where no current of the bus is known. */
  readonly withinBus: string;
  readonly bounds: string;
  readonly current: string;
  readonly tilt: string;
}

/** One line for each commanded motion and way. */
export function reachRows({ reach, thrusters }: Pick<LayoutAnswer, "reach" | "thrusters">): ReachRow[] {
  return reach.flatMap(({ axis, unit, ways }) =>
    ways.map(({ way, word, greatest, withBusLimit, tilt }): ReachRow => {
      const sign = way === "positive" ? 1 : -1;
      const text = (value: typeof greatest.value) => formatUncertain(scaled(value, sign), { symbol: unit, factor: 1 });
      const bounds = greatest.governedBy.map(
        ({ thruster, limit }) => `${thrusters[thruster]} ${limit === "forward" ? "ahead" : "astern"}`,
      );
      return {
        axis: capital(axis),
        way: word,
        greatest: text(greatest.value),
        withinBus: withBusLimit === null ? "" : text(withBusLimit.value),
        bounds: bounds.length === 0 ? "nothing pushes this way" : listed(bounds),
        current: greatest.current === null ? "not known" : shownUncertain(greatest.current, AMPERE),
        tilt: tiltInWords(tilt),
      };
    }),
  );
}

function tiltInWords(tilt: AxisReach["ways"][number]["tilt"]): string {
  if (tilt === null) return "";
  if (tilt.roll === null || tilt.pitch === null) return "it would turn over";
  const angle = (radians: number, word: string) =>
    Math.abs(radians) < 0.05 * DEGREE ? [] : [`${word} ${formatNumber(Math.abs(radians) / DEGREE, 2)}°`];
  return listed([...angle(tilt.roll, "heels"), ...angle(tilt.pitch, "trims")]) || "level";
}

export interface LossTable {
  readonly heads: readonly string[];
  /** How doubtful the numbers are. */ readonly caption: string;
  readonly rows: readonly { readonly thruster: string; readonly kept: readonly string[]; readonly sentence: string }[];
}

/** What is left of each motion when one thruster makes no thrust: share of what it was. */
export function lossTable({ losses, thrusters }: Pick<LayoutAnswer, "losses" | "thrusters">): LossTable {
  const heads = losses[0]?.axes.map(({ axis, word }) => `${capital(axis)} ${word}`) ?? [];
  return {
    heads,
    caption: lossCaption({ losses, thrusters }),
    rows: losses.map(({ thruster, axes, sentence }) => ({
      thruster: thrusters[thruster]!,
      kept: axes.map(({ kept }) => (kept === null ? "none before" : `${formatNumber(100 * kept, 2)} %`)),
      sentence,
    })),
  };
}

/** Both forces of a share go with the same drives, so that it is less doubtful than either: the worst of them is told. */
function lossCaption({ losses, thrusters }: Pick<LayoutAnswer, "losses" | "thrusters">): string {
  const left = losses.flatMap(({ thruster, axes }) =>
    axes.flatMap(({ axis, word, after }) =>
      after.value === 0
        ? []
        : [{ thruster, axis, word, after, doubt: after.standardUncertainty / Math.abs(after.value) }],
    ),
  );
  const said = "Shares of what it was, best estimates, the current of the bus not counted: “Up and down” counts it";
  if (left.length === 0) return `${said}.`;
  const worst = left.reduce((most, one) => (one.doubt > most.doubt ? one : most));
  const percent = formatNumber(100 * NORMAL_975 * worst.doubt, 2);
  return `${said}. The forces and moments behind them are known to ±\u202f${percent}\u202f% at worst: ${worst.axis} ${worst.word} without ${thrusters[worst.thruster]}.`;
}

import type { RunFacts } from "../model/factor.ts";
import type { Reduction } from "../model/reduction.ts";
import type { QuantityChoice, RunQuantityName } from "../model/trend.ts";
import { staticMerit } from "../propeller/staticMerit.ts";
import { formatNumber } from "../quantity/format.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type RunLaw, runLaw } from "./runLaw.ts";
import { powerCoefficientOf, type RunQuantity, staticMeritOf, thrustCoefficientOf } from "./runQuantity.ts";

/** A run with what is known of it: the unit of replication. */
export interface StudiedRun {
  readonly facts: RunFacts;
  readonly reduction: Reduction;
}

/** The same, with the group it was put in. */
export interface GroupedRun extends StudiedRun {
  readonly variant: string;
}

export const RUN_QUANTITIES: { readonly [Q in RunQuantityName]: { readonly title: string; readonly unit: string } } = {
  thrustCoefficient: { title: "thrust coefficient", unit: "1" },
  powerCoefficient: { title: "power coefficient", unit: "1" },
  staticMerit: { title: "static merit", unit: "1" },
  thrustAtElectricalPower: { title: "thrust at equal electrical power", unit: "N" },
  thrustAtThrottle: { title: "thrust at equal throttle", unit: "N" },
};

/** Static merit over K_T^(3/2)/C_P. */
const MERIT_SCALE = staticMerit({ thrustCoefficient: 1, powerCoefficient: 1 });

/** The chosen quantity of every run, in order, and what it is called with its condition. */
interface QuantityOfRuns {
  readonly quantities: readonly RunQuantity[];
  readonly title: string;
}

/**
 * A quantity of each run, and the condition in words where it hangs on one. The power or command is by default the middle
 * of what all runs cover.
 *
 * Throws   InputProblem `compare.quantity-not-known` where a run does not tell it.
 */
export function quantityOfRuns(runs: readonly StudiedRun[], { quantity, at }: QuantityChoice): QuantityOfRuns {
  const { title } = RUN_QUANTITIES[quantity];
  switch (quantity) {
    case "thrustCoefficient":
      return { title, quantities: runs.map(({ reduction }) => thrustCoefficientOf(reduction)) };
    case "powerCoefficient":
      return { title, quantities: withPower(runs, title, powerCoefficientOf) };
    case "staticMerit":
      return {
        title,
        quantities: withPower(runs, title, staticMeritOf).map((one) => ({ ...one, value: one.value * MERIT_SCALE })),
      };
    case "thrustAtElectricalPower":
      return byLaw(runs, at, {
        name: "thrustByElectricalPower",
        title: "thrust at an electrical power of",
        unit: " W",
      });
    case "thrustAtThrottle":
      return byLaw(runs, at, { name: "thrustByThrottle", title: "thrust at a command of", unit: "" });
  }
}

function withPower(runs: readonly StudiedRun[], title: string, of: (run: Reduction) => RunQuantity): RunQuantity[] {
  return runs.map(({ reduction, facts }) => {
    if (reduction.powerFit !== null) return of(reduction);
    return refuse(
      facts.name,
      title,
      "its shaft power is not known",
      "Give a torque column or the constants of the motor",
    );
  });
}

interface LawToAsk {
  readonly name: "thrustByElectricalPower" | "thrustByThrottle";
  readonly title: string;
  readonly unit: string;
}

function byLaw(
  runs: readonly StudiedRun[],
  wanted: number | undefined,
  { name, title, unit }: LawToAsk,
): QuantityOfRuns {
  const laws: RunLaw[] = runs.map(({ reduction, facts }) => {
    const law = runLaw(reduction, name);
    return "why" in law
      ? refuse(facts.name, title, law.why, "Leave the run out, or ask for the thrust coefficient")
      : law;
  });
  const low = Math.max(...laws.map((law) => law.low));
  const high = Math.min(...laws.map((law) => law.high));
  const at = wanted ?? (low + high) / 2;
  const shown = `${title} ${formatNumber(at)}${unit}`;
  if (!(low <= at && at <= high)) {
    const range =
      low < high
        ? `all runs cover ${formatNumber(low)} to ${formatNumber(high)}${unit}`
        : "no value is covered by all runs";
    return refuse("condition", shown, range, "Ask for a value inside");
  }
  const quantities = laws.map((law, i) => {
    return law.at(at) ?? refuse(runs[i]!.facts.name, shown, "its curve gives no thrust there", "Ask for another value");
  });
  return { title: shown, quantities };
}

function refuse(where: string, title: string, found: string, mend: string): never {
  throw new InputProblem({
    code: "compare.quantity-not-known",
    where,
    found: `The ${title} can not be told: ${found}`,
    needed: "a quantity that every run tells",
    mend,
  });
}

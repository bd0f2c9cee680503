import { ASSUMED_FLUID } from "../../shared/bench/assumedFluid.ts";
import { describeFluid } from "../../shared/fluid/parseFluid.ts";
import { ROLE_NAMES } from "../../shared/log/roleUnits.ts";
import type { Reduction } from "../../shared/model/reduction.ts";
import { formatNumber } from "../../shared/quantity/format.ts";

const DOUBTFUL = new Set(["cli.doubtful-guess", "bench.reading-doubtful"]);

/** What was taken as likely because nobody stated it, in one line beside the numbers; empty where nothing was. */
export function assumedLine({ warnings, columns, diameter }: Reduction): string[] {
  const told = (code: string) => warnings.some((warning) => warning.code === code);
  const doubtful = new Set(warnings.filter(({ code }) => DOUBTFUL.has(code)).map(({ where }) => where));
  const parts = [
    ...(told("bench.fluid-assumed") ? [describeFluid(ASSUMED_FLUID)] : []),
    ...(told("cli.diameter-exact") ? [`a diameter of exactly ${formatNumber(1000 * diameter.value)} mm`] : []),
    ...columns
      .filter(({ header, column }) => doubtful.has(`column ${header === "" ? `#${column + 1}` : header}`))
      .map(({ role, unit }) => `${ROLE_NAMES[role]} written in ${unit}`),
  ];
  return parts.length === 0 ? [] : [`Assumed, as nobody stated it: ${parts.join("; ")}. See the notes below.`, ""];
}

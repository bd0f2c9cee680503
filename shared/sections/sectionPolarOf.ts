import { readLog } from "../log/readLog.ts";
import type { SectionPolar } from "../model/sectionPolar.ts";
import { checkedPolar } from "../propeller/section/checkedPolar.ts";
import { polarOfTable } from "./polarTable.ts";

/** A checked polar of delimited text. Throws InputProblem as `polarOfTable` and `checkedPolar`, or `log.*`. */
export function sectionPolarOf(text: string, name = "the table"): SectionPolar {
  return checkedPolar(polarOfTable(readLog(new TextEncoder().encode(text), name)));
}

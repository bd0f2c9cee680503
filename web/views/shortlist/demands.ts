import type { ShortlistRequirementInput } from "../../../shared/model/shortlist.ts";
import { DEMAND_GROUPS, type DemandField, PAIRED } from "./requirementFields.ts";

/** What was typed, SI, by the path of the field; absent: not asked. */
export type Demands = Readonly<Record<string, number>>;

/** Name of a field among the demands. */
export const keyOf = ({ path }: Pick<DemandField, "path">): string => path.filter(Boolean).join(".");

/** Demands with one of them changed; null takes it away. */
export function withDemand(demands: Demands, key: string, si: number | null): Demands {
  const { [key]: _old, ...others } = demands;
  return si === null ? others : { ...others, [key]: si };
}

/** The demands as they stand in a requirement. A pair of which one half is missing is left out; `unpaired` tells of it. */
export function demandsOf(demands: Demands): Partial<ShortlistRequirementInput> {
  const whole: Record<string, unknown> = {};
  for (const { path } of DEMAND_GROUPS.flatMap(({ fields }) => fields)) {
    const [outer, inner] = path;
    const typed = demands[keyOf({ path })];
    if (typed === undefined || missingHalf(demands, outer) !== null) continue;
    if (inner === undefined) whole[outer] = typed;
    else whole[outer] = { ...(whole[outer] as object | undefined), [inner]: typed };
  }
  return whole as Partial<ShortlistRequirementInput>;
}

/** A sentence for each demand of which only one half was typed. */
export function unpaired(demands: Demands): string[] {
  return DEMAND_GROUPS.flatMap(({ fields }) => fields).flatMap((field) => {
    const [outer, inner] = field.path;
    return missingHalf(demands, outer) === inner && inner !== undefined
      ? `“${field.label}” is missing, so that demand is not asked.`
      : [];
  });
}

/** The half of a paired demand that is missing while another part of it was typed; null where nothing is. */
function missingHalf(demands: Demands, outer: string): string | null {
  const halves: readonly string[] | undefined = PAIRED[outer as keyof typeof PAIRED];
  if (halves === undefined) return null;
  const typed = Object.keys(demands).some((key) => key.startsWith(`${outer}.`));
  return typed ? (halves.find((half) => demands[`${outer}.${half}`] === undefined) ?? null) : null;
}

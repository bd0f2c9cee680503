import type { Project } from "../../../shared/model/project.ts";
import type { ShortlistRequirement } from "../../../shared/model/shortlist.ts";
import { type Demands, keyOf } from "./demands.ts";
import { DEMAND_GROUPS } from "./requirementFields.ts";

/** What the form begins with. Null: the field is empty until somebody types. */
export interface RequirementStart {
  readonly demands: Demands;
  readonly position: string;
  readonly thrusters: number | null;
  readonly hotelPower: number | null;
}

const NOTHING_ASKED: RequirementStart = { demands: {}, position: "horizontal", thrusters: null, hotelPower: null };

/** What the form of a project begins with: the requirement that it states, else nothing at all. */
export function startOf({ requirement }: Pick<Project, "requirement">): RequirementStart {
  if (requirement === undefined) return NOTHING_ASKED;
  const { position, thrusters, hotelPower } = requirement;
  return { demands: demandsIn(requirement), position, thrusters, hotelPower };
}

/** The demands of a requirement by the path of their fields. */
function demandsIn(requirement: ShortlistRequirement): Demands {
  const fields = DEMAND_GROUPS.flatMap((group) => group.fields);
  return Object.fromEntries(
    fields.flatMap((field) => {
      const [outer, inner] = field.path;
      const asked: unknown = requirement[outer];
      const value = inner === undefined ? asked : (asked as Readonly<Record<string, unknown>> | undefined)?.[inner];
      return typeof value === "number" ? [[keyOf(field), value]] : [];
    }),
  );
}

interface Said {
  /** As they stand in the requirement: half of a pair is none. */ readonly demands: object;
  readonly thrusters: number | null;
}

/** What must be said before there is anything to search for, in one sentence; null where enough is said. */
export function missingFrom({ demands, thrusters }: Said): string | null {
  if (Object.keys(demands).length === 0)
    return "Say first what is needed: a thrust, a size, a current, any one of them.";
  return thrusters === null ? "Say first how many equal thrusters run together." : null;
}

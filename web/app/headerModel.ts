import { describeFluid } from "../../shared/fluid/parseFluid.ts";
import type { Project } from "../../shared/model/project.ts";
import type { Run } from "../../shared/model/run.ts";

export interface HeaderModel {
  readonly name: string;
  readonly workingWater: string;
  /** What the runs were measured in; null before there are any. */
  readonly benchWater: string | null;
  readonly invented: boolean;
}

const MOST_NAMED = 2;

export function headerModel(project: Project, runs: readonly Run[]): HeaderModel {
  const fluids = [
    ...new Set(runs.map(({ recipe }) => `${describeFluid(recipe.fluid)}${recipe.fluidAssumed ? " (assumed)" : ""}`)),
  ];
  return {
    name: project.name,
    workingWater: describeFluid(project.water),
    benchWater: benchWords(fluids),
    invented: project.invented,
  };
}

function benchWords(fluids: readonly string[]): string | null {
  if (fluids.length === 0) return null;
  return fluids.length <= MOST_NAMED ? fluids.join("; ") : `${fluids.length} different fluids`;
}

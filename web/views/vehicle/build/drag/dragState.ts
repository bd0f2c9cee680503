import { computed } from "@preact/signals";
import { fluidProperties } from "../../../../../shared/fluid/fluidProperties.ts";
import type { AxisDrag, VehicleDrag } from "../../../../../shared/model/vehicle/drag.ts";
import { axisDrag } from "../../../../../shared/vehicle/drag/axisDrag.ts";
import { sentenceOf } from "../../../../api/apiProblem.ts";
import { project } from "../../../../app/session.ts";
import { chosenBuild, editBuild } from "../buildState.ts";

/** The water that the vehicle works in. */
export const water = computed(() => chosenBuild.value?.drag.fluid ?? project.value!.document.water);

/** Density (kg/m³) and kinematic viscosity (m²/s) of that water; null where it has none. */
export const waterProperties = computed(() => {
  try {
    return fluidProperties(water.value);
  } catch {
    return null;
  }
});

/** Drag of every direction as it is used, or the sentence why there is none. */
export const resolved = computed((): { readonly drag: AxisDrag | null; readonly problem: string } => {
  const build = chosenBuild.value;
  if (build === null) return { drag: null, problem: "" };
  try {
    return { drag: axisDrag(build.drag, project.value!.document.water), problem: "" };
  } catch (thrown) {
    return { drag: null, problem: sentenceOf(thrown) };
  }
});

export const editDrag = (change: (drag: VehicleDrag) => VehicleDrag, what: string): Promise<boolean> =>
  editBuild((build) => ({ ...build, drag: change(build.drag) }), what);

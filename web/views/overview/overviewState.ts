import { computed } from "@preact/signals";
import { operatingPoint } from "../../../shared/drive/operatingPoint.ts";
import { fluidProperties } from "../../../shared/fluid/fluidProperties.ts";
import type { OperatingPoint } from "../../../shared/model/drive.ts";
import { InputProblem, OutOfDomain } from "../../../shared/quantity/problem.ts";
import { reductions } from "../../app/reductions.ts";
import { parts, project, runs } from "../../app/session.ts";
import { joined } from "../../app/words.ts";
import type { ChartSpec } from "../../charts/chartSpec.ts";
import { type Chosen, driveRequest } from "../drive/driveModel.ts";
import { drivenPropellers } from "../drive/drivenPropellers.ts";
import { overlayChart } from "../variants/variantsChart.ts";
import { againstBaseline, allGroups } from "../variants/variantsState.ts";
import { overviewModel } from "./overviewModel.ts";

/** One thruster with the first motor, controller and pack of the project, in its working water. */
const firstDrive = computed((): Chosen | null => {
  const { motors, controllers, packs } = parts.value;
  if (!motors[0] || !packs[0] || !project.value) return null;
  return {
    motor: motors[0].document,
    controller: controllers[0]?.document ?? null,
    pack: packs[0].document,
    thrusters: 1,
    hotelPower: 0,
    density: fluidProperties(project.value.document.water).density,
  };
});

/** Stands in for a torque that was not measured; the overview shows no thrust that rests on it. */
const UNUSED_MERIT = 0.5;

const fullThrottle = computed((): ReadonlyMap<string, OperatingPoint | null> => {
  const drive = firstDrive.value;
  if (drive === null) return new Map();
  const propellers = drivenPropellers(allGroups.value, UNUSED_MERIT, null);
  return new Map(
    propellers.map((propeller) => [
      propeller.name,
      pointOrNull(() => operatingPoint(driveRequest(drive, propeller, 1))),
    ]),
  );
});

/** Where a supply collapses or a part is implausible the drive screen says why; here the place stays empty. */
function pointOrNull(work: () => OperatingPoint): OperatingPoint | null {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof OutOfDomain || thrown instanceof InputProblem) return null;
    throw thrown;
  }
}

export const overview = computed(() =>
  overviewModel({
    project: project.value!.document,
    parts: parts.value,
    runs: runs.value,
    groups: allGroups.value,
    comparisons: againstBaseline.value,
    reductionOf: (id) => reductions.value.get(id),
    fullThrottle: fullThrottle.value,
  }),
);

/** The variants of the answer, drawn over one another. */
export const picture = computed((): ChartSpec => {
  const { drawn } = overview.value;
  const spec = overlayChart(allGroups.value.filter(({ name }) => drawn.includes(name)));
  return { ...spec, title: `Thrust against rotation rate: ${joined(drawn)}` };
});

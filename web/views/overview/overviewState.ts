import { computed } from "@preact/signals";
import { driveRequestOf } from "../../../shared/drive/driveRequestOf.ts";
import { operatingPoint } from "../../../shared/drive/operatingPoint.ts";
import type { OperatingPoint } from "../../../shared/model/drive.ts";
import type { DriveTrain } from "../../../shared/model/driveTrain.ts";
import { InputProblem, OutOfDomain } from "../../../shared/quantity/problem.ts";
import { reductions } from "../../app/reductions.ts";
import { parts, project, runs } from "../../app/session.ts";
import { joined } from "../../app/words.ts";
import type { ChartSpec } from "../../charts/chartSpec.ts";
import { drivePropellers } from "../drive/drivePropellers.ts";
import { overlayChart } from "../variants/variantsChart.ts";
import { againstBaseline, allGroups } from "../variants/variantsState.ts";
import { overviewModel } from "./overviewModel.ts";

/** One thruster with the first motor, controller and pack of the project, in its working water. */
const firstDrive = computed((): Omit<DriveTrain, "propeller"> | null => {
  const { motors, controllers, packs } = parts.value;
  if (!motors[0] || !packs[0] || !project.value) return null;
  return {
    supply: { pack: packs[0].document },
    motor: motors[0].document,
    ...(controllers[0] && { controller: controllers[0].document }),
    ...{ thrusters: 1, hotelPower: 0, hotelPowerUncertainty: 0 },
    water: project.value.document.water,
  };
});

const FULL = { throttle: 1, direction: "ahead", advanceSpeed: 0 } as const;

const fullThrottle = computed((): ReadonlyMap<string, OperatingPoint | null> => {
  const drive = firstDrive.value;
  if (drive === null) return new Map();
  return new Map(
    drivePropellers.value.map(({ name, propeller }) => [
      name,
      pointOrNull(() => operatingPoint(driveRequestOf({ ...drive, propeller }, FULL).request)),
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

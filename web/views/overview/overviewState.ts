import { computed, signal } from "@preact/signals";
import { driveRequestOf } from "../../../shared/drive/driveRequestOf.ts";
import { operatingPoint } from "../../../shared/drive/operatingPoint.ts";
import { withinLimits } from "../../../shared/drive/withinLimits.ts";
import type { DriveTrain } from "../../../shared/model/driveTrain.ts";
import { InputProblem, OutOfDomain } from "../../../shared/quantity/problem.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { listShortlists } from "../../api/shortlists.ts";
import { reductions } from "../../app/reductions.ts";
import { openProjectId, parts, project, runs } from "../../app/session.ts";
import { tell } from "../../app/toast.ts";
import { joined } from "../../app/words.ts";
import type { ChartSpec } from "../../charts/chartSpec.ts";
import { carriedToWater } from "../drive/carriedToWater.ts";
import { reynoldsCarried } from "../drive/driveChoices.ts";
import { drivePropellers } from "../drive/drivePropellers.ts";
import { overlayChart } from "../variants/variantsChart.ts";
import { againstBaseline, allGroups } from "../variants/variantsState.ts";
import { besideEachOther } from "../vehicle/besides.ts";
import { builds, chosenPlace } from "../vehicle/build/buildState.ts";
import { type OverviewInput, overviewModel } from "./overviewModel.ts";

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

const fullThrottle = computed((): OverviewInput["fullThrottle"] => {
  const drive = firstDrive.value;
  if (drive === null) return new Map();
  return new Map(
    drivePropellers.value.map((inHand) => [
      inHand.name,
      orNull(() => {
        const { name, stand } = inHand;
        const carried = reynoldsCarried.value ? carriedToWater(inHand, drive, FULL) : null;
        const propeller = carried?.propeller ?? inHand.propeller;
        const { request } = driveRequestOf({ ...drive, propeller }, FULL);
        const point = operatingPoint(request);
        return { point, within: withinLimits(name, request, point), measuredRate: stand?.topRate ?? null };
      }),
    ]),
  );
});

/** Where a supply collapses or a part is implausible the drive screen says why; here the place stays empty. */
function orNull<T>(work: () => T): T | null {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof OutOfDomain || thrown instanceof InputProblem) return null;
    throw thrown;
  }
}

/** Searches that are kept; null: not read yet. */
const shortlists = signal<number | null>(null);

/** Reads what no other screen holds: how many searches are kept. */
export async function readForOverview(): Promise<void> {
  shortlists.value = null;
  try {
    shortlists.value = (await listShortlists(openProjectId())).length;
  } catch (thrown) {
    tell({ tone: "problem", text: sentenceOf(thrown) });
  }
}

/** Every vehicle; one that nothing has been asked of yet is still to be worked out. */
const vehicles = computed(() => {
  const told = besideEachOther.value;
  const isOfThese =
    told.length === builds.value.length && told.every(({ name }, at) => name === builds.value[at]!.name);
  return isOfThese ? told : builds.value.map(({ name }) => ({ name, answered: { state: "none" } as const, gap: "" }));
});

export const overview = computed(() =>
  overviewModel({
    project: project.value!.document,
    parts: parts.value,
    runs: runs.value,
    groups: allGroups.value,
    comparisons: againstBaseline.value,
    reductionOf: (id) => reductions.value.get(id),
    fullThrottle: fullThrottle.value,
    isReynoldsCarried: reynoldsCarried.value,
    propellers: drivePropellers.value.length,
    vehicles: vehicles.value,
    shownVehicle: chosenPlace.value,
    shortlists: shortlists.value,
  }),
);

/** The variants of the answer, drawn over one another. */
export const picture = computed((): ChartSpec => {
  const { drawn } = overview.value;
  const spec = overlayChart(allGroups.value.filter(({ name }) => drawn.includes(name)));
  return { ...spec, title: `Thrust against rotation rate: ${joined(drawn)}` };
});

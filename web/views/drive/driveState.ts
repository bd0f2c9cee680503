import { computed } from "@preact/signals";
import { driveRequestOf, type PreparedDrive } from "../../../shared/drive/driveRequestOf.ts";
import { operatingPoint } from "../../../shared/drive/operatingPoint.ts";
import { throttleSweep } from "../../../shared/drive/throttleSweep.ts";
import type { OperatingPoint } from "../../../shared/model/drive.ts";
import type { DriveTrain } from "../../../shared/model/driveTrain.ts";
import type { DriveRunning } from "../../../shared/model/driveTrainPoint.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { carriedToWater } from "./carriedToWater.ts";
import { SWEEP_STEPS } from "./driveCharts.ts";
import {
  advanceSpeed,
  charge,
  controller,
  depth,
  direction,
  fluid,
  gear,
  hotelPower,
  motor,
  pack,
  reynoldsCarried,
  supplyTemperature,
  tether,
  throttle,
  thrusters,
} from "./driveChoices.ts";
import { type Driven, driveAnswer } from "./driveModel.ts";
import { propellers } from "./drivePropellers.ts";
import type { PropellerInHand } from "./measuredPropeller.ts";

/** Everything but the propeller; null while a motor or a pack is missing. */
const trainWithoutPropeller = computed((): Omit<DriveTrain, "propeller"> | null => {
  if (motor.value === undefined || pack.value === undefined) return null;
  return {
    supply: {
      pack: pack.value.document,
      ...(tether.value && { tether: tether.value.document }),
      ...(charge.value !== null && { charge: charge.value }),
      ...(supplyTemperature.value !== null && { temperature: supplyTemperature.value }),
    },
    ...(controller.value && { controller: controller.value.document }),
    motor: motor.value.document,
    ...(gear.value && { gear: gear.value.document }),
    thrusters: thrusters.value,
    ...{ hotelPower: hotelPower.value, hotelPowerUncertainty: 0 },
    water: fluid.value,
    ...(depth.value !== null && { depth: depth.value }),
  };
});

const running = computed(
  (): DriveRunning => ({ throttle: 0, direction: direction.value, advanceSpeed: advanceSpeed.value }),
);

/** One propeller on the chosen parts: the whole sweep, which does not hang on the throttle. */
interface Swept extends Pick<Driven, "inHand" | "carried" | "problem" | "sweep"> {
  readonly train: DriveTrain | null;
  readonly prepared: PreparedDrive | null;
}

const swept = computed((): Swept[] => {
  const rest = trainWithoutPropeller.value;
  if (rest === null) return [];
  return propellers.value.map((inHand) => {
    const none = { inHand, carried: null, train: null, prepared: null, sweep: [] };
    try {
      const carried = reynoldsCarried.value ? carriedToWater(inHand, rest, running.value) : null;
      const train = { ...rest, propeller: carried?.propeller ?? inHand.propeller };
      const prepared = driveRequestOf(train, running.value);
      const sweep = throttleSweep(prepared.request, SWEEP_STEPS);
      return { ...none, carried: carried?.told ?? null, train, prepared, sweep, problem: "" };
    } catch (thrown) {
      return { ...none, problem: sentenceOf(thrown) };
    }
  });
});

export const driven = computed((): Driven[] =>
  swept.value.map((one) => {
    if (one.prepared === null) return { ...one, point: null };
    try {
      const request = { ...one.prepared.request, throttle: throttle.value };
      return { ...one, point: operatingPoint(request) };
    } catch (thrown) {
      return { ...one, point: null, problem: sentenceOf(thrown) };
    }
  }),
);

/** The question behind one propeller at the chosen throttle, for the cards that ask more of it. */
export const trains = computed(() =>
  swept.value.flatMap(({ inHand, train, prepared }) =>
    train === null || prepared === null ? [] : [{ inHand, train, prepared }],
  ),
);

/** Supply voltages around that of the chosen supply, as shares of it. */
const VOLTAGE_SHARES = [0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2];

export interface AgainstVoltage {
  readonly inHand: PropellerInHand;
  readonly points: readonly { readonly voltage: number; readonly point: OperatingPoint }[];
}

/** The points at the chosen throttle when the supply has more or less voltage. */
export const againstVoltage = computed((): AgainstVoltage[] =>
  swept.value.flatMap(({ inHand, prepared }) => {
    if (prepared === null) return [];
    const { request } = prepared;
    const points = VOLTAGE_SHARES.flatMap((share) => {
      const voltage = share * request.supplyVoltage;
      try {
        return [{ voltage, point: operatingPoint({ ...request, supplyVoltage: voltage, throttle: throttle.value }) }];
      } catch {
        // A supply that collapses at this voltage has no point to show there.
        return [];
      }
    });
    return [{ inHand, points }];
  }),
);

export const answer = computed(() => driveAnswer(driven.value, throttle.value, thrusters.value));

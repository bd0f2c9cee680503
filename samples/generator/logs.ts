import { commaFormat, motorFormat, semicolonFormat, tabFormat, towFormat } from "./logFormats.ts";
import { randomSource } from "./random.ts";
import { scaleTable } from "./scaleTable.ts";
import { stairs, tow } from "./schedule.ts";
import { type StandRun, standLog } from "./standLog.ts";
import { CARRIAGE_STAND, FLEXURE_STAND, TANK_STAND, TELEMETRY_STAND } from "./stands.ts";
import type { Thruster } from "./thruster.ts";
import {
  BENCH_SUPPLY,
  CONTROLLER_RESISTANCE,
  MOUNTING_SCATTER,
  MOUNTING_SCATTER_TORQUE,
  TRUE_FALL,
  TRUE_MOTORS,
  TRUE_PROPELLERS,
  TRUE_WET_LOSS,
  WATER_DENSITY,
} from "./truth.ts";

/** Seed of the whole demonstration; another one gives another, equally likely, set of logs. */
const DEMO_SEED = 20260914;

export interface SampleLog {
  readonly fileName: string;
  readonly text: string;
  /** Coefficients of the propeller in this very mounting: what a good reduction must find. */
  readonly truth: { readonly thrustCoefficient: number; readonly torqueCoefficient: number };
}

type PropellerName = keyof typeof TRUE_PROPELLERS;
type MotorName = keyof typeof TRUE_MOTORS;

/** One run: which propeller on which motor, and how its log is written. */
interface Plan {
  readonly fileName: string;
  readonly propeller: PropellerName;
  readonly motor: MotorName;
  /** The rotor runs flooded. */
  readonly wet?: boolean;
  /** The stand hangs under a carriage. */
  readonly speedAt?: (time: number) => number;
  readonly log: { readonly stand: Omit<StandRun, "thruster"> } | { readonly scale: readonly number[] };
}

const FINISH_STAIRS = stairs({ levels: [0.25, 0.4, 0.55, 0.7, 0.85, 1], hold: 7, rest: 8 });
const PITCH_STAIRS = stairs({ levels: [0.3, 0.44, 0.58, 0.72, 0.86, 1], hold: 8, rest: 9 });
const NO_LOAD_STAIRS = stairs({ levels: [0.2, 0.36, 0.52, 0.68, 0.84, 1], hold: 8, rest: 8 });
const TOW = tow({ throttle: 0.5, speeds: [0, 0.4, 0.8, 1.2, 1.6, 2, 2.4, 2.8, 3.1, 3.4], hold: 6, change: 2, rest: 9 });
const TORQUE_STAIRS = stairs({ levels: [0.2, 0.35, 0.5, 0.65, 0.8], hold: 10, rest: 10 });

function finishPlan(name: string, propeller: PropellerName, mounting: number, special: Partial<StandRun> = {}): Plan {
  return {
    fileName: `finish-${name}-${mounting}.csv`,
    propeller,
    motor: "a",
    log: {
      stand: {
        schedule: FINISH_STAIRS,
        stand: TANK_STAND,
        format: commaFormat(`propeller ${name.replace("-", " ")}, mounting ${mounting}, motor A, tank 18 degC`),
        interval: 0.05,
        jitter: 0.004,
        faults: { missing: 3, spikes: 2, overflows: 0 },
        ...special,
      },
    },
  };
}

function noLoadPlan(name: "dry" | "wet", how: string): Plan {
  return {
    fileName: `no-load-${name}.csv`,
    propeller: "none",
    motor: "a",
    wet: name === "wet",
    log: {
      stand: {
        schedule: NO_LOAD_STAIRS,
        stand: TANK_STAND,
        format: motorFormat(`motor A without propeller, ${how}`),
        interval: 0.05,
        jitter: 0.004,
        faults: { missing: 2, spikes: 0, overflows: 0 },
      },
    },
  };
}

function pitchPlan(name: string, propeller: PropellerName): Plan {
  return {
    fileName: `pitch-${name}.csv`,
    propeller,
    motor: "a",
    log: {
      stand: {
        schedule: PITCH_STAIRS,
        stand: TELEMETRY_STAND,
        format: semicolonFormat(`propeller of pitch ratio ${name.replace("-", ".")}, sanded, motor A, tank 18 degC`),
        interval: 0.08,
        jitter: 0.006,
        faults: { missing: 2, spikes: 1, overflows: 0 },
      },
    },
  };
}

const PLANS: readonly Plan[] = [
  finishPlan("as-printed", "asPrinted", 1),
  finishPlan("as-printed", "asPrinted", 2, { faults: { missing: 4, spikes: 1, overflows: 3 } }),
  finishPlan("as-printed", "asPrinted", 3),
  finishPlan("sanded", "sanded", 1),
  finishPlan("sanded", "sanded", 2, { restart: { at: 39.4, silence: 2.6 } }),
  finishPlan("sanded", "sanded", 3),
  pitchPlan("0-8", "pitch08"),
  pitchPlan("1-0", "pitch10"),
  pitchPlan("1-2", "pitch12"),
  {
    fileName: "torque-motor-b.tsv",
    propeller: "sanded",
    motor: "b",
    log: {
      stand: {
        schedule: TORQUE_STAIRS,
        stand: FLEXURE_STAND,
        format: tabFormat("propeller sanded, mounting 4, motor B, tank 18 degC"),
        interval: 0.1,
        jitter: 0.01,
        faults: { missing: 2, spikes: 0, overflows: 0 },
      },
    },
  },
  {
    fileName: "kitchen-scale.txt",
    propeller: "asPrinted",
    motor: "a",
    log: { scale: [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1] },
  },
  noLoadPlan("dry", "clamped in air"),
  noLoadPlan("wet", "flooded in the tank, 18 degC"),
  {
    fileName: "tow-pitch-1-0.csv",
    propeller: "pitch10",
    motor: "b",
    speedAt: TOW.speedAt,
    log: {
      stand: {
        schedule: TOW.schedule,
        stand: CARRIAGE_STAND,
        format: towFormat("propeller of pitch ratio 1.0, sanded, motor B, towing tank 18 degC"),
        interval: 0.05,
        jitter: 0.004,
        faults: { missing: 2, spikes: 1, overflows: 0 },
      },
    },
  },
];

const SCALE_COMMENTS = [
  "# invented demonstration data: nobody measured this",
  "# propeller as printed, motor A, tank 18 degC",
  "# kitchen scale under the beam, set to zero before each row",
  "# pivot to scale 300 mm, pivot to propeller 240 mm",
];

/** All logs of the demonstration; the same text on every call. */
export function sampleLogs(seed = DEMO_SEED): SampleLog[] {
  // Mountings and the seeds of the single logs come from one sequence: neighbouring streams of one seed start alike.
  const master = randomSource(seed, 0);
  return PLANS.map((plan, index) => {
    const mounting = master.normal();
    const random = randomSource(master.integer(0, 2 ** 32 - 1), index + 1);
    const propeller = TRUE_PROPELLERS[plan.propeller];
    const mounted = {
      ...propeller,
      thrustCoefficient: propeller.thrustCoefficient * (1 + MOUNTING_SCATTER * mounting),
      torqueCoefficient: propeller.torqueCoefficient * (1 + MOUNTING_SCATTER_TORQUE * mounting),
    };
    const thruster: Thruster = {
      motor: TRUE_MOTORS[plan.motor],
      propeller: mounted,
      controllerResistance: CONTROLLER_RESISTANCE,
      supply: BENCH_SUPPLY,
      density: WATER_DENSITY,
      ...(plan.wet && { wetLoss: TRUE_WET_LOSS }),
      ...(plan.speedAt && { towed: { speedAt: plan.speedAt, fall: TRUE_FALL } }),
    };
    const text =
      "scale" in plan.log
        ? scaleTable(thruster, plan.log.scale, SCALE_COMMENTS, random)
        : standLog({ ...plan.log.stand, thruster }, random);
    const { thrustCoefficient, torqueCoefficient } = mounted;
    return { fileName: plan.fileName, text, truth: { thrustCoefficient, torqueCoefficient } };
  });
}

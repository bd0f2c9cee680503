import type { z } from "zod";
import type { Instrument } from "../shared/model/instrument.ts";
import type { Propeller } from "../shared/model/parts/propeller.ts";
import type { Project } from "../shared/model/project.ts";
import type { ColumnRole, Recipe } from "../shared/model/recipe.ts";
import type { VehicleBuildInput } from "../shared/model/vehicle/vehicleBuild.ts";
import { plainGeometry } from "../shared/propeller/blade/plainGeometry.ts";
import { DEMO_BOX, type DemoBox, INVENTED } from "./demoBox.ts";
import { demoRequirement } from "./demoRequirement.ts";
import { DEMO_VEHICLES } from "./demoVehicles.ts";

/** One log of the demonstration: which file, what was on the stand, and how the file is to be read. */
export interface DemoRun {
  /** Name of the file in `samples/logs/`. */
  readonly file: string;
  readonly name: string;
  /** Keys into the parts of the demonstration. */
  /** None where nothing was on the shaft. */
  readonly propeller?: string;
  readonly purpose?: "propeller" | "noLoadDry" | "noLoadWet";
  readonly motor: string;
  readonly controller: string;
  /** Instrument behind the thrust, if one was calibrated. */
  readonly thrustInstrument?: string;
  readonly variant: string;
  readonly mounting: string;
  /** Whole recipe but for the identities of motor, controller and instrument, which the store gives. */
  readonly recipe: Omit<z.input<typeof Recipe>, "motorId" | "controllerId" | "instrumentIds">;
  readonly note: string;
}

/** A demonstration project as plain data; documents still lack their defaults, so parse them with their schemas. */
export interface Demo extends DemoBox {
  readonly project: z.input<typeof Project>;
  readonly propellers: Readonly<Record<string, z.input<typeof Propeller>>>;
  readonly instruments: Readonly<Record<string, z.input<typeof Instrument>>>;
  readonly runs: readonly DemoRun[];
  /** In place of identities of parts stand their keys. */
  readonly vehicles: readonly VehicleBuildInput[];
}

/** A run with a propeller on the shaft. */
export type PropellerDemoRun = DemoRun & { readonly propeller: string };

/** The runs that give coefficients; the others tell the constants of a motor. */
export function propellerRuns({ runs }: Demo): PropellerDemoRun[] {
  return runs.filter((run): run is PropellerDemoRun => run.propeller !== undefined);
}

/** Sea water at the farm. */
const CO_OP_WATER = { kind: "sea", temperature: 273.15 + 12, salinity: 33 } as const;

const TANK_WATER = { kind: "fresh", temperature: 273.15 + 18 } as const;

type Columns = readonly (readonly [ColumnRole, string])[];

/** Column uses in the order of the file. */
const inOrder = (columns: Columns) => columns.map(([role, unit], column) => ({ column, role, unit }));

/** Meters of the tank: what their papers say, as relative standard uncertainties. */
const METERS = { voltage: { relativeUncertainty: 0.003 }, current: { relativeUncertainty: 0.006 } };

const propeller = (name: string, pitchRatio: number, finish: string): z.input<typeof Propeller> => ({
  name,
  diameter: 0.076,
  diameterUncertainty: 0.0001,
  bladeCount: 3,
  pitchRatio,
  chordAt07: 0.021,
  finish,
  geometry: plainGeometry({
    from: "outline",
    outline: "elliptic",
    bladeCount: 3,
    diameter: 0.076,
    hubDiameter: 0.016,
    pitchRatio,
    areaRatio: 0.42,
    thicknessRatio: 0.09,
    camberRatio: 0,
  }),
  mass: 0.018,
  price: 4,
  note: INVENTED,
});

/** Weights laid on the cell of the tank and taken off again: gram on it, gram-force read. */
const DEAD_WEIGHTS = [
  [0, 42],
  [500, 540],
  [1000, 1045],
  [1500, 1545],
  [2000, 2047],
  [2500, 2550],
  [3000, 3051],
  [3500, 3555],
  [3000, 3053],
  [2500, 2553],
  [2000, 2053],
  [1500, 1548],
  [1000, 1046],
  [500, 546],
  [0, 41],
] as const;

/** The load cell over the beam of the tank, with both arms measured by a rule. */
const BEAM_CELL: z.input<typeof Instrument> = {
  name: "Load cell over the beam",
  role: "thrust",
  calibration: {
    kind: "deadWeights",
    appliedUnit: "g",
    readingUnit: "gf",
    points: DEAD_WEIGHTS.map(([applied, reading]) => ({ applied, reading })),
    appliedTolerance: 0.003,
    lever: {
      scaleArm: { length: 0.2, tolerance: 0.0003 },
      propellerArm: { length: 0.2, tolerance: 0.0003 },
    },
  },
  note: INVENTED,
};

function finishRun(file: string, variant: string, key: string, mounting: number, note: string): DemoRun {
  return {
    file: `${file}-${mounting}.csv`,
    name: `Net propeller ${variant}, mounting ${mounting}`,
    propeller: key,
    motor: "a",
    controller: "stand",
    thrustInstrument: "beamCell",
    variant,
    mounting: String(mounting),
    recipe: {
      columns: inOrder([
        ["time", "s"],
        ["command", "µs"],
        ["thrust", "gf"],
        ["rotationRate", "rpm"],
        ["voltage", "V"],
        ["current", "A"],
      ]),
      fluid: TANK_WATER,
      corrections: METERS,
    },
    note,
  };
}

function pitchRun(file: string, key: string, pitchRatio: string): DemoRun {
  return {
    file,
    name: `Pitch ratio ${pitchRatio}`,
    propeller: key,
    motor: "a",
    controller: "stand",
    variant: `pitch ${pitchRatio}`,
    mounting: "1",
    recipe: {
      columns: inOrder([
        ["time", "ms"],
        ["command", "µs"],
        ["thrust", "N"],
        ["rotationRate", "erpm"],
        ["voltage", "V"],
        ["current", "A"],
      ]),
      polePairs: 7,
      fluid: TANK_WATER,
      corrections: { ...METERS, thrust: { relativeUncertainty: 0.006 } },
    },
    note: `Rotation rate from the controller, in electrical turns. ${INVENTED}`,
  };
}

const TORQUE_RUN: DemoRun = {
  file: "torque-motor-b.tsv",
  name: "Net propeller sanded, motor B with torque cell",
  propeller: "sanded",
  motor: "b",
  controller: "stand",
  variant: "sanded, motor B",
  mounting: "4",
  recipe: {
    columns: inOrder([
      ["time", "s"],
      ["command", "%"],
      ["thrust", "N"],
      ["torque", "N·mm"],
      ["rotationRate", "rpm"],
      ["voltage", "V"],
      ["current", "A"],
    ]),
    fluid: TANK_WATER,
    corrections: { ...METERS, thrust: { relativeUncertainty: 0.004 }, torque: { relativeUncertainty: 0.008 } },
  },
  note: `The throttle stops at 80 %: the bench supply gives no more than 20 A. ${INVENTED}`,
};

const SCALE_RUN: DemoRun = {
  file: "kitchen-scale.txt",
  name: "Net propeller as printed, kitchen scale",
  propeller: "asPrinted",
  motor: "a",
  controller: "stand",
  variant: "as printed, kitchen scale",
  mounting: "4",
  recipe: {
    columns: inOrder([
      ["thrust", "g"],
      ["rotationRate", "rpm"],
      ["voltage", "V"],
      ["current", "A"],
    ]),
    fluid: TANK_WATER,
    corrections: {
      ...METERS,
      // The scale sits on the long arm, 300 mm, and the propeller on the short one, 240 mm.
      thrust: { factor: 300 / 240, relativeUncertainty: 0.01, resolution: 1 },
      rotationRate: { resolution: 10 },
    },
    tare: { mode: "none" },
  },
  note: `Typed from a notebook: each row is one reading by eye, so the log shows no spread. ${INVENTED}`,
};

function noLoadRun(purpose: "noLoadDry" | "noLoadWet", file: string, name: string, note: string): DemoRun {
  return {
    ...{ file, name, purpose, motor: "a", controller: "stand", variant: "", mounting: "", note },
    recipe: {
      columns: inOrder([
        ["time", "s"],
        ["command", "µs"],
        ["rotationRate", "rpm"],
        ["voltage", "V"],
        ["current", "A"],
      ]),
      fluid:
        purpose === "noLoadWet"
          ? TANK_WATER
          : { kind: "air", temperature: 273.15 + 18, pressure: 101325, humidity: 0.5 },
      corrections: METERS,
    },
  };
}

const TOW_RUN: DemoRun = {
  file: "tow-pitch-1-0.csv",
  name: "Pitch ratio 1.0 under a towing carriage",
  propeller: "pitch10",
  motor: "b",
  controller: "stand",
  variant: "pitch 1.0, towed",
  mounting: "2",
  recipe: {
    columns: inOrder([
      ["time", "s"],
      ["command", "%"],
      ["thrust", "N"],
      ["torque", "N·mm"],
      ["rotationRate", "rpm"],
      ["advanceSpeed", "m/s"],
    ]),
    fluid: TANK_WATER,
    corrections: {
      thrust: { relativeUncertainty: 0.004 },
      torque: { relativeUncertainty: 0.008 },
      advanceSpeed: { relativeUncertainty: 0.006 },
    },
  },
  note: `Half throttle, ten carriage speeds from 0 to 3.4 m/s. ${INVENTED}`,
};

/** Net inspection vehicle of an invented shellfish-farm co-op. Nobody measured any of this. */
export const DEMO: Demo = {
  project: {
    name: "Dabchick",
    note: "Invented demonstration: a shellfish-farm co-op's net inspection vehicle. A seeded generator made the logs; nobody measured them. Prices are in the currency of the co-op.",
    water: CO_OP_WATER,
    invented: true,
    thrustClaim: { factor: 2, source: "a message to the co-op about sanded propellers, invented like the rest" },
    requirement: demoRequirement(CO_OP_WATER),
    predictions: [
      {
        name: "B 3-38, P/D 1.00",
        source: {
          kind: "series",
          diameter: 0.076,
          series: { family: "wageningen-b", blades: 3, areaRatio: 0.38, pitchRatio: 1 },
        },
      },
    ],
  },
  propellers: {
    asPrinted: propeller("Net propeller, as printed", 1, "as printed"),
    sanded: propeller("Net propeller, sanded", 1, "sanded"),
    pitch08: propeller("Net propeller, pitch ratio 0.8", 0.8, "sanded"),
    pitch10: propeller("Net propeller, pitch ratio 1.0", 1, "sanded"),
    pitch12: propeller("Net propeller, pitch ratio 1.2", 1.2, "sanded"),
  },
  ...DEMO_BOX,
  instruments: { beamCell: BEAM_CELL },
  vehicles: DEMO_VEHICLES,
  runs: [
    finishRun("finish-as-printed", "as printed", "asPrinted", 1, INVENTED),
    finishRun("finish-as-printed", "as printed", "asPrinted", 2, `The load cell ran over three times. ${INVENTED}`),
    finishRun("finish-as-printed", "as printed", "asPrinted", 3, INVENTED),
    finishRun("finish-sanded", "sanded", "sanded", 1, INVENTED),
    finishRun("finish-sanded", "sanded", "sanded", 2, `The logger lost power once and began anew. ${INVENTED}`),
    finishRun("finish-sanded", "sanded", "sanded", 3, INVENTED),
    pitchRun("pitch-0-8.csv", "pitch08", "0.8"),
    pitchRun("pitch-1-0.csv", "pitch10", "1.0"),
    pitchRun("pitch-1-2.csv", "pitch12", "1.2"),
    TORQUE_RUN,
    SCALE_RUN,
    TOW_RUN,
    noLoadRun("noLoadDry", "no-load-dry.csv", "Motor A without propeller, in air", INVENTED),
    noLoadRun(
      "noLoadWet",
      "no-load-wet.csv",
      "Motor A without propeller, flooded",
      `As it will run on the vehicle. ${INVENTED}`,
    ),
  ],
};

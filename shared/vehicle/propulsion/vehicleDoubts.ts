import { inputValue, withInput } from "../../drive/uncertainInput.ts";
import type { DriveRequest, UncertainInput } from "../../model/drive.ts";
import type { MotionWay } from "../../model/vehicle/motionAnswer.ts";
import type { DriveWays, VehicleFacts, VehicleNumbers } from "./vehicleNumbers.ts";

/** What a doubtful input acts on, so that what it does not touch need not be worked out again. */
export type DoubtOf = "propulsion" | "drag" | "tether" | "mass" | "weight" | "current";

/** One doubtful input of a vehicle. */
export interface Doubt {
  readonly key: string;
  /** Inputs of one group are told together; correlated ones share a group. */ readonly group: string;
  /** The group in words. */ readonly name: string;
  readonly mend: string;
  readonly of: DoubtOf;
  /** Its unit. */ readonly standardUncertainty: number;
  /** The numbers with the input changed by so much. */
  readonly shift: (numbers: VehicleNumbers, by: number) => VehicleNumbers;
}

export interface DoubtCorrelation {
  /** Places in the list of doubts. */ readonly a: number;
  readonly b: number;
  readonly coefficient: number;
}

export interface VehicleDoubts {
  readonly list: readonly Doubt[];
  readonly correlations: readonly DoubtCorrelation[];
}

/**
 * Every doubtful input of a vehicle with how to change it. Thrusters of one drive share its doubts; the motor's hold ahead
 * and astern; those of the supply count once.
 */
export function vehicleDoubts(facts: VehicleFacts): VehicleDoubts {
  const list = [
    ...dragDoubts(facts),
    ...interactionDoubts(facts),
    ...facts.numbers.drives.flatMap(driveDoubts),
    ...supplyDoubts(facts),
    ...bodyDoubts(facts),
    ...tetherDoubts(facts),
  ].filter(({ standardUncertainty }) => standardUncertainty > 0);
  const placeOf = new Map(list.map(({ key }, i) => [key, i]));
  const correlations = facts.numbers.drives
    .flatMap((ways, d) => driveCorrelations(ways, d))
    .flatMap(({ of, and, coefficient }) => {
      const [a, b] = [placeOf.get(of), placeOf.get(and)];
      return a === undefined || b === undefined || a === b ? [] : [{ a, b, coefficient }];
    });
  return { list, correlations };
}

const plain =
  (key: "wakeFraction" | "thrustDeduction" | "hotelPower" | "mass" | "netBuoyancy" | "payload" | "currentSpeed") =>
  (numbers: VehicleNumbers, by: number): VehicleNumbers => ({ ...numbers, [key]: numbers[key] + by });

const DRAG_WORDS: Readonly<Record<MotionWay, string>> = {
  ...{ ahead: "drag ahead", astern: "drag astern", starboard: "drag sideways", port: "drag sideways" },
  ...{ up: "drag upwards", down: "drag downwards" },
};

function dragDoubts({ numbers, resolved }: VehicleFacts): Doubt[] {
  const seen = new Set<object>();
  return (Object.keys(resolved) as MotionWay[]).flatMap((way) => {
    const [one, drag] = [resolved[way], numbers.drag[way]];
    if (one === null || drag === null || seen.has(drag)) return [];
    seen.add(drag);
    const ways = (Object.keys(numbers.drag) as MotionWay[]).filter((other) => numbers.drag[other] === drag);
    const change =
      (field: "dragArea" | "linear" | "addedMass") =>
      (from: VehicleNumbers, by: number): VehicleNumbers => {
        const now = from.drag[way]!;
        const next = { ...now, [field]: now[field] + by };
        return { ...from, drag: { ...from.drag, ...Object.fromEntries(ways.map((other) => [other, next])) } };
      };
    const word = DRAG_WORDS[way];
    const mend = "Measure it: a tow, a coast-down or timed runs";
    const common = { group: `drag.${way}`, name: word, mend, of: "drag" as const };
    return [
      {
        ...common,
        key: `drag.${way}.area`,
        standardUncertainty: one.dragArea.standardUncertainty,
        shift: change("dragArea"),
      },
      {
        ...common,
        key: `drag.${way}.linear`,
        standardUncertainty: one.linear.standardUncertainty,
        shift: change("linear"),
      },
      {
        ...{ key: `mass.added.${way}`, group: `mass.added.${way}`, name: `added mass (${word})`, of: "mass" as const },
        ...{
          mend: "Coast down from a known speed",
          standardUncertainty: one.addedMass.standardUncertainty,
          shift: change("addedMass"),
        },
      },
    ];
  });
}

function interactionDoubts({ vehicle: { interaction } }: VehicleFacts): Doubt[] {
  const mend =
    "Measure the pull of the whole vehicle on a line beside that of the thrusters alone, or its speed at a known throttle";
  return [
    {
      ...{ key: "wakeFraction", group: "wakeFraction", name: "wake fraction", mend, of: "propulsion" },
      ...{ standardUncertainty: interaction.wakeFraction.standardUncertainty, shift: plain("wakeFraction") },
    },
    {
      ...{ key: "thrustDeduction", group: "thrustDeduction", name: "thrust deduction", mend, of: "propulsion" },
      ...{ standardUncertainty: interaction.thrustDeduction.standardUncertainty, shift: plain("thrustDeduction") },
    },
  ];
}

type Side = "ahead" | "astern";
/** Inputs of a propeller that differ with the way it turns; all others belong to the thruster as it is. */
const BY_SIDE: readonly UncertainInput[] = ["thrustCoefficient", "torqueCoefficient"];
const OF_PROPELLER: readonly UncertainInput[] = ["diameter"];
/** Counted for the vehicle as a whole. */
const ELSEWHERE: readonly UncertainInput[] = ["supplyVoltage", "supplyResistance", "hotelPower", "density"];

function driveDoubts(ways: DriveWays, d: number): Doubt[] {
  const sides: readonly Side[] = ways.astern ? ["ahead", "astern"] : ["ahead"];
  const seen = new Set<string>();
  return sides.flatMap((side) =>
    (Object.entries(ways[side]!.uncertainties) as [UncertainInput, number][]).flatMap(
      ([input, standardUncertainty]) => {
        const key = keyOf(ways.name, side, input);
        if (ELSEWHERE.includes(input) || seen.has(key)) return [];
        seen.add(key);
        const only = BY_SIDE.includes(input) ? side : null;
        return [
          {
            key,
            ...groupOf(ways.name, side, input),
            of: "propulsion" as const,
            standardUncertainty,
            shift: driveShift(d, input, only),
          },
        ];
      },
    ),
  );
}

function keyOf(drive: string, side: Side, input: UncertainInput): string {
  return BY_SIDE.includes(input) ? `thruster.${drive}.${side}.${input}` : `thruster.${drive}.${input}`;
}

function groupOf(drive: string, side: Side, input: UncertainInput): Pick<Doubt, "group" | "name" | "mend"> {
  if (BY_SIDE.includes(input)) {
    const mend = `Measure the propeller turning ${side} on the stand, several mountings`;
    return { group: `thruster.${drive}.${side}`, name: `propeller coefficients ${side} of ${drive}`, mend };
  }
  if (OF_PROPELLER.includes(input)) {
    return {
      group: `thruster.${drive}.diameter`,
      name: `propeller diameter of ${drive}`,
      mend: "Measure it with a caliper",
    };
  }
  const mend = "Identify the motor from its own runs with and without the propeller";
  return { group: `thruster.${drive}.motor`, name: `motor constants of ${drive}`, mend };
}

function driveShift(d: number, input: UncertainInput, only: Side | null): Doubt["shift"] {
  const changed = (request: DriveRequest, by: number) => {
    const now = inputValue(request, input);
    return now === null ? request : withInput(request, input, now + by);
  };
  return (numbers, by) => {
    const { ahead, astern, ...rest } = numbers.drives[d]!;
    const ways: DriveWays = {
      ...rest,
      ahead: only === "astern" ? ahead : changed(ahead, by),
      astern: astern === null || only === "ahead" ? astern : changed(astern, by),
    };
    return { ...numbers, drives: numbers.drives.map((one, i) => (i === d ? ways : one)) };
  };
}

function driveCorrelations(ways: DriveWays, _d: number): { of: string; and: string; coefficient: number }[] {
  const all = [
    ...ways.ahead.correlations.map((one) => ({ ...one, side: "ahead" as const })),
    // The motor's are in both lists; its keys do not name a side, so they are taken once.
    ...(ways.astern?.correlations ?? [])
      .filter(({ of }) => BY_SIDE.includes(of))
      .map((one) => ({ ...one, side: "astern" as const })),
  ];
  return all.map(({ of, and, coefficient, side }) => ({
    ...{ of: keyOf(ways.name, side, of), and: keyOf(ways.name, side, and), coefficient },
  }));
}

function supplyDoubts({ supply: { uncertainties }, vehicle }: VehicleFacts): Doubt[] {
  const shift =
    (field: "openCircuitVoltage" | "resistance") =>
    (numbers: VehicleNumbers, by: number): VehicleNumbers => ({
      ...numbers,
      supply: { ...numbers.supply, [field]: numbers.supply[field] + by },
    });
  return [
    {
      ...{
        key: "supplyVoltage",
        group: "supplyVoltage",
        name: "open-circuit voltage of the supply",
        of: "propulsion",
      },
      ...{
        mend: "Read it with a meter, rested",
        standardUncertainty: uncertainties.openCircuitVoltage,
        shift: shift("openCircuitVoltage"),
      },
    },
    {
      ...{ key: "supplyResistance", group: "supplyResistance", name: "resistance of the supply", of: "propulsion" },
      ...{
        mend: "Measure the sag at a known current, cold",
        standardUncertainty: uncertainties.resistance,
        shift: shift("resistance"),
      },
    },
    {
      ...{
        key: "hotelPower",
        group: "hotelPower",
        name: "hotel load",
        of: "propulsion",
        mend: "Read current and voltage with the thrusters off",
      },
      ...{ standardUncertainty: vehicle.hotelPower.standardUncertainty, shift: plain("hotelPower") },
    },
  ];
}

function bodyDoubts({ vehicle: { mass, netBuoyancy, scenario } }: VehicleFacts): Doubt[] {
  return [
    {
      ...{ key: "mass", group: "mass", name: "mass", of: "mass", mend: "Weigh it, with the water it encloses" },
      ...{ standardUncertainty: mass.standardUncertainty, shift: plain("mass") },
    },
    {
      ...{
        key: "netBuoyancy",
        group: "netBuoyancy",
        name: "net buoyancy",
        of: "weight",
        mend: "Hang it on a scale in the water it works in",
      },
      ...{ standardUncertainty: netBuoyancy.standardUncertainty, shift: plain("netBuoyancy") },
    },
    {
      ...{ key: "payload", group: "payload", name: "payload", of: "weight", mend: "Weigh it in water" },
      ...{ standardUncertainty: scenario.payload.standardUncertainty, shift: plain("payload") },
    },
    {
      ...{
        key: "currentSpeed",
        group: "currentSpeed",
        name: "current",
        of: "current",
        mend: "Measure it at the depth, at that state of the tide",
      },
      ...{ standardUncertainty: scenario.currentSpeedUncertainty, shift: plain("currentSpeed") },
    },
  ];
}

function tetherDoubts({ vehicle: { tether, scenario } }: VehicleFacts): Doubt[] {
  if (tether === undefined || scenario.tetherLength === 0) return [];
  const { diameter, normalDragCoefficient, tangentialDragCoefficient, netWeightPerLength } =
    tether.cable.relativeUncertainties;
  const shift =
    (...fields: readonly (keyof VehicleNumbers["tether"])[]) =>
    (numbers: VehicleNumbers, by: number): VehicleNumbers => ({
      ...numbers,
      tether: { ...numbers.tether, ...Object.fromEntries(fields.map((field) => [field, numbers.tether[field] + by])) },
    });
  const common = {
    group: "tether",
    name: "drag and weight of the tether",
    of: "tether" as const,
    mend: "Tow a length of it, and see whether it strums",
  };
  return [
    { ...common, key: "tether.diameter", standardUncertainty: diameter, shift: shift("normal", "tangential") },
    { ...common, key: "tether.normal", standardUncertainty: normalDragCoefficient, shift: shift("normal") },
    { ...common, key: "tether.tangential", standardUncertainty: tangentialDragCoefficient, shift: shift("tangential") },
    { ...common, key: "tether.weight", standardUncertainty: netWeightPerLength, shift: shift("weight") },
  ];
}

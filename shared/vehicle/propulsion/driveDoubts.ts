import { inputValue, withInput } from "../../drive/uncertainInput.ts";
import type { DriveRequest, UncertainInput } from "../../model/drive.ts";
import type { Doubt } from "./doubt.ts";
import type { DriveWays } from "./vehicleNumbers.ts";

type Side = "ahead" | "astern";
/** Inputs of a propeller that differ with the way it turns; all others belong to the thruster as it is. */
const BY_SIDE: readonly UncertainInput[] = ["thrustCoefficient", "torqueCoefficient"];
const OF_PROPELLER: readonly UncertainInput[] = ["diameter"];
/** Counted for the vehicle as a whole. */
const ELSEWHERE: readonly UncertainInput[] = ["supplyVoltage", "supplyResistance", "hotelPower", "density"];

/** Propeller and motor of a drive; the motor's hold ahead and astern. */
export function driveDoubts(ways: DriveWays, d: number): Doubt[] {
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

/** Which of these doubts go together, by their keys. */
export function driveCorrelations(ways: DriveWays): { of: string; and: string; coefficient: number }[] {
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

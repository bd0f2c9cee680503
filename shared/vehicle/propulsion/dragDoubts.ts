import type { MotionWay } from "../../model/vehicle/motionAnswer.ts";
import type { Doubt } from "./doubt.ts";
import type { VehicleFacts, VehicleNumbers } from "./vehicleNumbers.ts";

const DRAG_WORDS: Readonly<Record<MotionWay, string>> = {
  ...{ ahead: "drag ahead", astern: "drag astern", starboard: "drag sideways", port: "drag sideways" },
  ...{ up: "drag upwards", down: "drag downwards" },
};

/** Drag and added mass of each way; ways that share a drag share its doubt. */
export function dragDoubts({ numbers, resolved }: VehicleFacts): Doubt[] {
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

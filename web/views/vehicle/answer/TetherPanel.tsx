import type { SpeedOverTether } from "../../../../shared/model/vehicle/speedOverTether.ts";
import type { TetherSolution } from "../../../../shared/model/vehicle/tetherShape.ts";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import type { ChartSpec } from "../../../charts/chartSpec.ts";
import { METRE, NEWTON } from "../../bench/shownUnits.ts";
import { Findings } from "../../theory/Findings.tsx";
import { tetherLimitPicture } from "./tetherLimitPicture.ts";
import { shown, shownUncertain } from "./units.ts";

interface Props {
  readonly tether: TetherSolution | null;
  /** Speed over the length paid out. */ readonly limit: SpeedOverTether | null;
}

/** The shape of the tether at the steady speed ahead, what it pulls with, and what its length does to the speed. */
export function TetherPanel({ tether, limit }: Props) {
  return (
    <>
      <Shape tether={tether} />
      {limit && <Limit limit={limit} />}
    </>
  );
}

function Limit({ limit }: { readonly limit: SpeedOverTether }) {
  const without = limit.points.filter(({ reason }) => reason !== null);
  return (
    <>
      <p>{limit.sentence}</p>
      {without.length < limit.points.length && <Chart spec={tetherLimitPicture(limit)} height={260} />}
      {without.map(({ length, reason }) => (
        <p class="hint" key={length}>
          With {shown(length, METRE)}: {reason}
        </p>
      ))}
      <p class="hint">{limit.assumption}</p>
    </>
  );
}

function Shape({ tether }: Pick<Props, "tether">) {
  if (tether === null)
    return <p class="hint">No tether is out. Pay some out in the scenario, if the vehicle has one.</p>;
  if (tether.state !== "solved")
    return (
      <>
        <p>
          {tether.state === "failed"
            ? tether.reason
            : "No current and no weight: the tether is slack and pulls at nothing."}
        </p>
        <Warnings items={tether.warnings} />
      </>
    );
  const { forceOnVehicle, belly, greatestTension, dragBound } = tether;
  return (
    <>
      <Warnings items={tether.warnings} />
      <Chart spec={tetherPicture(tether.points)} height={300} />
      <Findings
        caption="What the tether does"
        rows={[
          {
            name: "Pull on the vehicle, ahead positive",
            value: shownUncertain(forceOnVehicle.forward, NEWTON),
            how: "",
          },
          { name: "Pull to starboard", value: shownUncertain(forceOnVehicle.starboard, NEWTON), how: "" },
          { name: "Pull down", value: shownUncertain(forceOnVehicle.down, NEWTON), how: "" },
          {
            name: "Greatest tension",
            value: shownUncertain(greatestTension.tension, NEWTON),
            how: `${shown(greatestTension.along, METRE)} from the vehicle`,
          },
          {
            name: "Belly",
            value: shownUncertain(belly.distance, METRE),
            how: "off the straight line between its ends",
          },
          {
            name: "Drag of the same length square to the flow",
            value: shown(dragBound, NEWTON),
            how: "an upper bound for all of it, by the best estimates",
          },
        ]}
      />
      <p class="hint">{tether.assumption}</p>
    </>
  );
}

type Points = Extract<TetherSolution, { state: "solved" }>["points"];

/** From the side: ahead to the right, the surface on top. */
function tetherPicture(points: Points): ChartSpec {
  const off = (axis: "forward" | "starboard") => Math.max(...points.map((point) => Math.abs(point[axis])));
  const sideways = off("starboard") > off("forward");
  const axis = sideways ? "starboard" : "forward";
  return {
    title: "Shape of the tether from the side, depth downwards as negative height",
    x: { label: sideways ? "To starboard of the vehicle" : "Ahead of the vehicle", unit: "m" },
    y: { label: "Height over the surface", unit: "m" },
    series: [
      {
        ...{ id: "tether", name: "Tether", style: 0 },
        kind: "fit",
        points: points.map((point) => ({
          x: point[axis],
          y: -point.depth,
          note: `${point.along.toPrecision(3)} m from the vehicle, tension ${point.tension.toPrecision(3)} N`,
        })),
      },
    ],
  };
}

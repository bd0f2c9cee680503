import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { NEWTON, WATT } from "../../bench/shownUnits.ts";
import { Findings } from "../../theory/Findings.tsx";
import { METRE_PER_SECOND, shown, shownUncertain } from "./units.ts";

/** Trim, lift, climb and descent, power to hold the depth, and what a dead thruster leaves. */
export function VerticalPanel({ answer: { vertical } }: { readonly answer: VehicleAnswer }) {
  const { sentence, netForce, ballast, climb, descent, holdPower, holdPowerNeutral, greatestPayload, climbRate } =
    vertical;
  const rows = [
    {
      name: "Net force without thrust, payload aboard, down positive",
      value: shownUncertain(netForce, NEWTON),
      how: "",
    },
    { name: "Ballast to neither float nor sink", value: shownUncertain(ballast, NEWTON), how: "" },
    { name: "Climbs at", value: shownUncertain(climb, METRE_PER_SECOND), how: "" },
    { name: "Descends at", value: shownUncertain(descent, METRE_PER_SECOND), how: "" },
    { name: "Power to hold the depth, hotel load included", value: shown(holdPower, WATT), how: "" },
    { name: "The same trimmed to nothing", value: shown(holdPowerNeutral, WATT), how: "" },
    {
      name: `Greatest payload, its weight in water, at a climb of ${shown(climbRate, METRE_PER_SECOND, 2)}`,
      value: shownUncertain(greatestPayload, NEWTON),
      how: "",
    },
  ];
  return (
    <>
      <p>{sentence}</p>
      <Findings caption="Up and down" rows={rows} />
      <p>{vertical.withoutPower.text}</p>
      {vertical.losses.length > 0 && (
        <>
          <h3>With one thruster lost</h3>
          <ul>
            {vertical.losses.map(({ thruster, sentence: told, holdsDepth }) => (
              <li key={thruster} class={holdsDepth ? "" : "vehicle-missed"}>
                {told}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

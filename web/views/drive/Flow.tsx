import { Warnings } from "../../app/Warnings.tsx";
import { Chart } from "../../charts/Chart.tsx";
import { Swatch } from "../../charts/Swatch.tsx";
import { chainPicture } from "./driveCharts.ts";
import { hotelPower, throttle, thrusters } from "./driveChoices.ts";
import type { Driven } from "./driveModel.ts";
import { driven } from "./driveState.ts";
import { WattStrip } from "./watts/WattStrip.tsx";
import { wattFlow } from "./watts/wattFlow.ts";

/** Where the power goes and how well each link does, one propeller after the other. */
export function Flow() {
  return (
    <>
      {driven.value.map((one) => (
        <FlowOf key={one.inHand.name} driven={one} />
      ))}
    </>
  );
}

function FlowOf({ driven: one }: { readonly driven: Driven }) {
  const { inHand, point, problem, prepared } = one;
  if (point === null || prepared === null)
    return problem === "" ? null : <p class="warning">{`${inHand.name}: ${problem}`}</p>;
  const flows = wattFlow(point, {
    thrusters: thrusters.value,
    hotelPower: hotelPower.value,
    supplyParts: prepared.supply.parts,
  });
  const all = thrusters.value > 1 ? `, all ${thrusters.value} thrusters together` : "";
  return (
    <section class="drive-card" aria-label={`${inHand.name}: from supply to water`}>
      <h3>
        <Swatch kind="prediction" style={inHand.style} /> {inHand.name}
      </h3>
      <Warnings items={[...prepared.warnings, ...point.warnings]} />
      <WattStrip flows={flows} title={`Power at ${Math.round(100 * throttle.value)} % throttle${all}`} />
      <details>
        <summary>Efficiency of each link over the throttle</summary>
        <Chart spec={chainPicture(one)} height={300} />
      </details>
    </section>
  );
}

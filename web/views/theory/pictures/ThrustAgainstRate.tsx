import { Chart } from "../../../charts/Chart.tsx";
import { rateChart } from "../theoryState.ts";
import { MeritSlider } from "./MeritSlider.tsx";
import { NothingToDraw } from "./NothingToDraw.tsx";

/** Thrust over the rotation rate. */
export function ThrustAgainstRate() {
  const spec = rateChart.value;
  return (
    <>
      <div class="theory-controls">
        <MeritSlider />
      </div>
      {spec !== null && spec.series.length > 0 ? <Chart spec={spec} height={400} /> : <NothingToDraw needed="a run" />}
    </>
  );
}

import { Chart } from "../../../charts/Chart.tsx";
import { powerChart, powerKind } from "../theoryState.ts";
import { MeritSlider } from "./MeritSlider.tsx";

/** Thrust over the power at the shaft or the electrical one. */
export function ThrustAgainstPower() {
  return (
    <>
      <div class="theory-controls">
        <MeritSlider />
        <fieldset class="row theory-choice">
          <legend>Power</legend>
          {(
            [
              ["shaftPower", "at the shaft"],
              ["electricalPower", "electrical"],
            ] as const
          ).map(([kind, label]) => (
            <label key={kind}>
              <input
                type="radio"
                name="theory-power"
                checked={powerKind.value === kind}
                onChange={() => {
                  powerKind.value = kind;
                }}
              />{" "}
              {label}
            </label>
          ))}
        </fieldset>
      </div>
      {powerChart.value && <Chart spec={powerChart.value} height={400} />}
    </>
  );
}

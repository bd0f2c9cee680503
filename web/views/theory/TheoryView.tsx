import { useSignalEffect } from "@preact/signals";
import { needReductions } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { runs } from "../../app/session.ts";
import { Chart } from "../../charts/Chart.tsx";
import { Slider } from "../../forms/Slider.tsx";
import { VariantChecks } from "../variants/VariantChecks.tsx";
import { EstimatePanel } from "./EstimatePanel.tsx";
import "./theory.css";
import { MERIT_RANGE, MODEL_TEXT, readout } from "./theoryModel.ts";
import {
  answer,
  benchInputs,
  fluidProblem,
  measured,
  powerChart,
  powerKind,
  rateChart,
  staticMerit,
} from "./theoryState.ts";

export default function TheoryView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  const known = measured.value.some((variant) => variant.staticMerit !== null);
  return (
    <Screen
      question="How close to the ideal is it?"
      answer={fluidProblem.value || answer.value}
      tone={fluidProblem.value ? "problem" : known ? "known" : "open"}
      basis="± and ranges are 95 % intervals of what was measured. A prediction from a stated static merit has no interval: it is as good as the merit stated."
      picture={<Pictures />}
    >
      <div class="theory-layout">
        <EstimatePanel />
        <Readouts />
        <ModelText />
      </div>
    </Screen>
  );
}

function Pictures() {
  return (
    <>
      <div class="theory-controls">
        <Slider
          label="Stated static merit"
          symbol="FM"
          value={staticMerit.value}
          min={MERIT_RANGE.low}
          max={MERIT_RANGE.high}
          step={MERIT_RANGE.step}
          onChange={(merit) => {
            staticMerit.value = merit;
          }}
        />
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
      <VariantChecks />
      <div class="theory-pictures">
        <PowerPicture />
        <RatePicture />
      </div>
    </>
  );
}

function PowerPicture() {
  return powerChart.value && <Chart spec={powerChart.value} height={360} />;
}

function RatePicture() {
  const spec = rateChart.value;
  return spec !== null && spec.series.length > 0 ? <Chart spec={spec} height={360} /> : null;
}

/** One sentence a variant. */
function Readouts() {
  const now = benchInputs.value;
  if (now === null || measured.value.length === 0) return null;
  return (
    <section class="card" aria-labelledby="theory-readouts">
      <h2 id="theory-readouts">Measured variants</h2>
      <ul>
        {measured.value.map((variant) => (
          <li key={variant.name}>{readout(variant, now)}</li>
        ))}
      </ul>
    </section>
  );
}

function ModelText() {
  return (
    <details class="card">
      <summary>The model behind the limit</summary>
      <dl>
        {MODEL_TEXT.map(({ name, text }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

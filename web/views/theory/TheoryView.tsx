import { useSignalEffect } from "@preact/signals";
import { needReductions } from "../../app/reductions.ts";
import { Screen } from "../../app/Screen.tsx";
import { runs } from "../../app/session.ts";
import { VariantChecks } from "../variants/VariantChecks.tsx";
import { BladePanel } from "./blade/BladePanel.tsx";
import { CarryOverPanel } from "./carryOver/CarryOverPanel.tsx";
import { EstimatePanel } from "./EstimatePanel.tsx";
import { FinishPanel } from "./finish/FinishPanel.tsx";
import { LossesPanel } from "./losses/LossesPanel.tsx";
import { MethodsPanel } from "./methods/MethodsPanel.tsx";
import { Pictures } from "./Pictures.tsx";
import { PitchPanel } from "./pitch/PitchPanel.tsx";
import { PredictionsPanel } from "./predictions/PredictionsPanel.tsx";
import "./theory.css";
import { fluidProblem } from "./theoryFluid.ts";
import { readout } from "./theoryModel.ts";
import { answer, benchInputs, measured } from "./theoryState.ts";
import { WaterPanel } from "./water/WaterPanel.tsx";

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
        <VariantChecks />
        <PredictionsPanel />
        <FinishPanel />
        <LossesPanel />
        <BladePanel />
        <WaterPanel />
        <CarryOverPanel />
        <PitchPanel />
        <EstimatePanel />
        <Readouts />
        <MethodsPanel />
      </div>
    </Screen>
  );
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

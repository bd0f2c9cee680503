import { useSignalEffect } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { isReducing, needReductions } from "../../app/reductions.ts";
import { addressOf } from "../../app/route.ts";
import { Screen } from "../../app/Screen.tsx";
import { runs } from "../../app/session.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { Warnings } from "../../app/Warnings.tsx";
import { Swatch } from "../../charts/Swatch.tsx";
import { bound } from "../../forms/bound.ts";
import { SelectField } from "../../forms/SelectField.tsx";
import { AnovaPanel } from "./anova/AnovaPanel.tsx";
import { ClaimFields } from "./ClaimFields.tsx";
import { ForestPlot } from "./ForestPlot.tsx";
import { FactorsPanel } from "./factors/FactorsPanel.tsx";
import { doubts } from "./groupedRuns.ts";
import { VariantPictures } from "./pictures/VariantPictures.tsx";
import { PlannerPanel } from "./planner/PlannerPanel.tsx";
import { RunAssignment } from "./RunAssignment.tsx";
import { RobustnessPanel } from "./robustness/RobustnessPanel.tsx";
import { TrendPanel } from "./trend/TrendPanel.tsx";
import { VariantChecks } from "./VariantChecks.tsx";
import "./variants.css";
import { basisText, forest, spreadLines, variantsAnswer, variantsQuestion, variantTable } from "./variantsModel.ts";
import {
  againstBaseline,
  baseline,
  baselineBecause,
  chooseBaseline,
  claim,
  claimIsReadable,
  compared,
  groups,
  judgedClaim,
  pairs,
  spreads,
} from "./variantsState.ts";

export default function VariantsView() {
  useSignalEffect(() => needReductions(runs.value.map(({ id }) => id)));
  const { comparisons, problem } = compared.value;
  const all = groups.value;
  const names = all.map(({ name }) => name);
  const claimed = claim.value?.factor ?? null;
  const plot = useMemo(() => forest(comparisons, all, claimed), [comparisons, all, claimed]);
  return (
    <Screen
      question={variantsQuestion(names, baseline.value?.name ?? null)}
      answer={problem || variantsAnswer(againstBaseline.value, all)}
      tone={problem ? "problem" : comparisons.length > 0 ? "known" : "open"}
      isBusy={isReducing.value}
      basis={comparisons.length > 0 && basisText(spreads.value)}
      actions={all.length > 1 && <Choices />}
      picture={
        comparisons.length > 0 && (
          <>
            <VariantChecks />
            <ForestPlot forest={plot} claimed={claimed} />
            <ClaimPanel />
            <VariantPictures />
          </>
        )
      }
    >
      <div class="variants-cards">
        <Warnings items={doubts.value} />
        {comparisons.length > 0 && (
          <>
            <ComparisonTable />
            <FactorsPanel />
            <RobustnessPanel />
            <PlannerPanel />
            <TrendPanel />
            <AnovaPanel />
          </>
        )}
        <RunAssignment />
      </div>
      {runs.value.length === 0 && (
        <p class="hint">
          No run yet. <a href={addressOf("bench")}>Drop the logs on the Bench screen</a> first.
        </p>
      )}
    </Screen>
  );
}

/** What is held against what, and which spread serves whom. */
function Choices() {
  const all = groups.value;
  return (
    <>
      <SelectField
        label="Measured against"
        value={baseline.value?.name ?? ""}
        options={all.map(({ name }) => ({ value: name, label: name }))}
        help={baselineBecause.value}
        onChange={chooseBaseline}
      />
      {all.length > 2 && (
        <SelectField
          label="Pairs"
          {...bound(pairs)}
          options={[
            { value: "baseline", label: "each against it" },
            { value: "all", label: "every pair" },
          ]}
        />
      )}
      <SpreadField />
    </>
  );
}

/** One spread for both variants or one for each; there is a choice only where both were mounted more than once. */
function SpreadField() {
  if (compared.value.comparisons.every(({ thrustCoefficientRatio: ratio }) => ratio.spreads === null)) return null;
  return (
    <SelectField
      label="Spread of the mountings"
      {...bound(spreads)}
      options={[
        { value: "tested", label: "one, unless they differ" },
        { value: "pooled", label: "one for both" },
        { value: "separate", label: "one for each" },
      ]}
    />
  );
}

/** What the measurements say of a gain that somebody claims. */
function ClaimPanel() {
  return (
    <div class="claim">
      <div class="claim-fields">
        <ClaimFields />
      </div>
      <div role="status">
        {claimIsReadable.value && judgedClaim.value?.verdicts.map(({ sentence }) => <p key={sentence}>{sentence}</p>)}
      </div>
    </div>
  );
}

function ComparisonTable() {
  const { columns, rows } = variantTable(againstBaseline.value, groups.value);
  return (
    <section class="card variants-table" aria-labelledby="variants-table">
      <h2 id="variants-table">Variants, and their ratios to the baseline</h2>
      <TableBox label="Variants and their ratios">
        <table>
          <thead>
            <tr>
              <th scope="col">Quantity</th>
              {columns.map(({ name, style, isBaseline }) => (
                <th key={name} scope="col" class="number">
                  <Swatch kind="measured" style={style} /> {name} {isBaseline && <span class="chip">baseline</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, cells }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {columns.map((column, at) => (
                  <td key={column.name} class="number">
                    {cells[at]}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      {spreadLines(againstBaseline.value).map((line) => (
        <p key={line} class="hint">
          {line}
        </p>
      ))}
    </section>
  );
}

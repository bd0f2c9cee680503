import type { MountingPlan } from "../../../../shared/model/mountingPlan.ts";
import { Fold } from "../../../app/Fold.tsx";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { planRows } from "./plannerModel.ts";
import { draft, planned, setDraft } from "./plannerState.ts";
import { RunSheetPage } from "./RunSheetPage.tsx";

/** How many more mountings show a difference, and the sheet to run them by. */
export function PlannerPanel() {
  const told = planned.value;
  return (
    <Fold
      id="variants-planner"
      title="Is it worth another test?"
      note={"plan" in told ? told.plan.sentence : undefined}
      open={false}
    >
      <PlanFields />
      {"problem" in told ? (
        <p class="warning">{told.problem}</p>
      ) : (
        <>
          <p role="status">
            <strong>{told.plan.sentence}</strong>
          </p>
          <Warnings items={told.plan.warnings} />
          <OtherNumbers plan={told.plan} />
          {told.plan.sheet && <RunSheetPage sheet={told.plan.sheet} />}
        </>
      )}
    </Fold>
  );
}

function OtherNumbers({ plan }: { readonly plan: MountingPlan }) {
  return (
    <TableBox label="What other numbers of mountings show">
      <table>
        <Heads
          columns={[
            { numbers: "Mountings of each" },
            { numbers: "Chance of seeing the difference" },
            { numbers: "Smallest difference seen with the wanted chance" },
          ]}
        />
        <tbody>
          {planRows(plan).map(({ mountings, chance, smallest }) => (
            <tr key={mountings}>
              <td class="number">{mountings}</td>
              <td class="number">{chance}</td>
              <td class="number">{smallest}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function PlanFields() {
  const { difference, power, seed } = draft.value;
  return (
    <div class="form-grid">
      <QuantityField
        label="Difference to be seen"
        dimension="fraction"
        unit="%"
        value={difference}
        positive
        max={10}
        help="Of thrust at equal rotation rate."
        onChange={(value) => {
          if (value !== null) setDraft({ difference: value });
        }}
      />
      <QuantityField
        label="Chance of seeing it"
        dimension="fraction"
        unit="%"
        value={power}
        min={0.5}
        max={0.999}
        help="Where it is there; 80 % is common."
        onChange={(value) => {
          if (value !== null) setDraft({ power: value });
        }}
      />
      <DesignField />
      <QuantityField
        label="Seed of the order"
        dimension="number"
        value={seed}
        min={0}
        max={2 ** 32 - 1}
        help="The same seed gives the same sheet."
        onChange={(value) => {
          if (value !== null) setDraft({ seed: Math.round(value) });
        }}
      />
    </div>
  );
}

function DesignField() {
  return (
    <SelectField
      label="Design"
      value={draft.value.paired ? "paired" : "separate"}
      options={[
        { value: "separate", label: "mountings in one order" },
        { value: "paired", label: "one of each in a block" },
      ]}
      help="In blocks, what differs from day to day or pack to pack cancels."
      onChange={(design) => setDraft({ paired: design === "paired" })}
    />
  );
}

import { Fold } from "../../../app/Fold.tsx";
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
          <TableBox label="What other numbers of mountings show">
            <table>
              <thead>
                <tr>
                  <th scope="col" class="number">
                    Mountings of each
                  </th>
                  <th scope="col" class="number">
                    Chance of seeing the difference
                  </th>
                  <th scope="col" class="number">
                    Smallest difference seen with the wanted chance
                  </th>
                </tr>
              </thead>
              <tbody>
                {planRows(told.plan).map(({ mountings, chance, smallest }) => (
                  <tr key={mountings}>
                    <td class="number">{mountings}</td>
                    <td class="number">{chance}</td>
                    <td class="number">{smallest}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableBox>
          {told.plan.sheet && <RunSheetPage sheet={told.plan.sheet} />}
        </>
      )}
    </Fold>
  );
}

function PlanFields() {
  const { difference, power, paired, seed } = draft.value;
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
      <SelectField
        label="Design"
        value={paired ? "paired" : "separate"}
        options={[
          { value: "separate", label: "mountings in one order" },
          { value: "paired", label: "one of each in a block" },
        ]}
        help="In blocks, what differs from day to day or pack to pack cancels."
        onChange={(design) => setDraft({ paired: design === "paired" })}
      />
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

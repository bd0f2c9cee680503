import { useMemo } from "preact/hooks";
import type { AdvanceFit } from "../../../shared/model/advance.ts";
import type { Recipe } from "../../../shared/model/recipe.ts";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { Fold } from "../../app/Fold.tsx";
import { Heads } from "../../app/Heads.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { Chart } from "../../charts/Chart.tsx";
import { SelectField } from "../../forms/SelectField.tsx";
import { ADVANCE_HEADS, advanceRows, advanceWords, openWaterChart, withOrder } from "./advanceModel.ts";
import { editRecipe } from "./benchState.ts";

interface AdvancePanelProps {
  readonly reduction: Reduction;
  readonly advance: AdvanceFit;
  readonly recipe: Recipe;
}

const ORDERS = [1, 2, 3, 4];

/** Curves of a run with advance speed: the sentence, the diagram, and every plateau. */
export function AdvancePanel({ reduction, advance, recipe }: AdvancePanelProps) {
  const spec = useMemo(() => openWaterChart(advance), [advance]);
  const words = advanceWords(reduction)!;
  return (
    <Fold id="bench-advance" title="At speed">
      <p>{words.answer}</p>
      <Chart spec={spec} height={380} />
      <div class="form-grid">
        <SelectField
          label="Order of the curves"
          value={String(recipe.advanceOrder ?? "auto")}
          options={[
            { value: "auto", label: "Chosen by the points" },
            ...ORDERS.map((order) => ({ value: String(order), label: `Order ${order}` })),
          ]}
          help={words.orders}
          onChange={(order) =>
            editRecipe("Set the order of the curves", (now) => withOrder(now, order === "auto" ? null : Number(order)))
          }
        />
      </div>
      <PlateausAgainstAdvance advance={advance} />
    </Fold>
  );
}

function PlateausAgainstAdvance({ advance }: { readonly advance: AdvanceFit }) {
  return (
    <details>
      <summary>Every plateau against the advance ratio</summary>
      <TableBox label="Plateaus against the advance ratio">
        <table class="bench-plateaus">
          <Heads columns={["Plateau", ...ADVANCE_HEADS]} />
          <tbody>
            {advanceRows(advance).map(({ name, cells }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {cells.map((cell, i) => (
                  <td key={ADVANCE_HEADS[i]} class="number">
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </details>
  );
}

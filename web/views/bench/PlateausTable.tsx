import type { Reduction } from "../../../shared/model/reduction.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { editRecipe, pickedPlateau } from "./benchState.ts";
import { Fold } from "./Fold.tsx";
import { PlateauActions } from "./PlateauActions.tsx";
import { additionGap, plateauTable } from "./plateausModel.ts";
import { RejectedList } from "./RejectedList.tsx";
import { withPlateauAdded } from "./recipeEdits.ts";
import { SpanForm } from "./SpanForm.tsx";

interface PlateausTableProps {
  readonly reduction: Reduction;
  readonly hasClock: boolean;
}

/** Every plateau with its numbers, how it was found, the lines of the file it rests on, and whether it counts. */
export function PlateausTable({ reduction, hasClock }: PlateausTableProps) {
  const table = plateauTable(reduction);
  const picked = pickedPlateau.value;
  const unit = hasClock ? "s" : "";
  return (
    <Fold
      id="bench-plateaus"
      title="Plateaus"
      note={table.summary}
      open={false}
      wanted={picked !== null}
      class="bench-plateaus"
    >
      <TableBox label="Plateaus">
        <table>
          <thead>
            <tr>
              <th scope="col">{reduction.sweep ? "Bin" : "Plateau"}</th>
              <th scope="col">In the fit</th>
              {table.heads.map((head) => (
                <th key={head} scope="col" class="number">
                  {head}
                </th>
              ))}
              <th scope="col" class="number">
                Tare taken off
              </th>
              <th scope="col" class="number">
                Residual, standard uncertainties
              </th>
              <th scope="col">Time</th>
              <th scope="col">Found by</th>
              <th scope="col" class="number">
                Settled after
              </th>
              <th scope="col">Lines of the file</th>
              <th scope="col" class="number">
                Samples
              </th>
            </tr>
          </thead>
          <tbody>
            {table.rows.map((row) => (
              <tr key={row.index} class={row.index === picked ? "bench-picked" : row.used ? "" : "bench-aside"}>
                <th scope="row">{row.name}</th>
                <td>
                  <PlateauActions row={row} reduction={reduction} unit={unit} />
                </td>
                {row.cells.map((cell, at) => (
                  <td key={at} class="number">
                    {cell}
                  </td>
                ))}
                <td class="number">{row.tare}</td>
                <td class="number">{row.residual}</td>
                <td>{row.when || "–"}</td>
                <td>{row.foundBy}</td>
                <td class="number">{row.settling}</td>
                <td>{row.lines}</td>
                <td class="number">{row.samples}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      <p class="hint">
        “Settled after” is estimated: from the step until rotation rate and thrust over its square stayed within the
        scatter of the second half. Plateaus set by hand stay as they are when calibration, pole pairs or water change.
      </p>
      <RejectedList reduction={reduction} hasClock={hasClock} />
      {table.rows.some((row) => row.movable) && (
        <SpanForm
          what="a plateau"
          unit={unit}
          gap={(span) => additionGap(reduction.plateaus, span)}
          onSpan={(span) =>
            void editRecipe("Added a plateau", (recipe) => withPlateauAdded(recipe, reduction.plateaus, span))
          }
        />
      )}
    </Fold>
  );
}

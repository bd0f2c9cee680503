import type { ComponentChildren } from "preact";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { Fold } from "../../app/Fold.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { editRecipe, pickedPlateau } from "./benchState.ts";
import { PlateauActions } from "./PlateauActions.tsx";
import { additionGap, OWN_DOUBT_HINT, type PlateauRow, plateauTable } from "./plateausModel.ts";
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
            <PlateauHeads heads={table.heads} first={reduction.sweep ? "Bin" : "Plateau"} />
          </thead>
          <tbody>
            {table.rows.map((row) => (
              <PlateauLine
                key={row.index}
                row={row}
                picked={row.index === picked}
                actions={<PlateauActions row={row} reduction={reduction} unit={unit} />}
              />
            ))}
          </tbody>
        </table>
      </TableBox>
      <p class="hint">{OWN_DOUBT_HINT}</p>
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

/** Columns that say which plateau it is, rotation rate and thrust: before the buttons, so that a telephone shows them. */
const LEADING = 2;

function PlateauHeads({ heads, first }: { readonly heads: readonly string[]; readonly first: string }) {
  const number = (head: string) => (
    <th key={head} scope="col" class="number">
      {head}
    </th>
  );
  return (
    <tr>
      <th scope="col">{first}</th>
      {heads.slice(0, LEADING).map(number)}
      <th scope="col">In the fit</th>
      {[...heads.slice(LEADING), "Tare taken off", "Residual, standard uncertainties"].map(number)}
      <th scope="col">Time</th>
      <th scope="col">Found by</th>
      {number("Settled after")}
      <th scope="col">Lines of the file</th>
      {number("Samples")}
    </tr>
  );
}

interface PlateauLineProps {
  readonly row: PlateauRow;
  readonly picked: boolean;
  readonly actions: ComponentChildren;
}

function PlateauLine({ row, picked, actions }: PlateauLineProps) {
  const number = (cell: string, at: number) => (
    <td key={at} class="number">
      {cell}
    </td>
  );
  return (
    <tr class={picked ? "bench-picked" : row.used ? "" : "bench-aside"}>
      <th scope="row">{row.name}</th>
      {row.cells.slice(0, LEADING).map(number)}
      <td>{actions}</td>
      {[...row.cells.slice(LEADING), row.tare, row.residual].map(number)}
      <td>{row.when || "–"}</td>
      <td>{row.foundBy}</td>
      <td class="number">{row.settling}</td>
      <td>{row.lines}</td>
      <td class="number">{row.samples}</td>
    </tr>
  );
}

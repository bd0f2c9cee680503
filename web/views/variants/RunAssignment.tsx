import { formatUncertain } from "../../../shared/quantity/format.ts";
import { reductions } from "../../app/reductions.ts";
import { addressOf } from "../../app/route.ts";
import { runs } from "../../app/session.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { useChosen } from "../../forms/useChosen.ts";
import { NoteField } from "../bench/NoteField.tsx";
import { DRAGGED_RUN, DropStrip } from "./DropStrip.tsx";
import { GroupingFields } from "./GroupingFields.tsx";
import { moveRun } from "./moveRun.ts";
import { variantNames } from "./variantGroups.ts";
import { type AssignmentRow, assignmentRows } from "./variantsModel.ts";

/** Which run belongs to which variant; a run is moved by choosing, or writing, another name. */
export function RunAssignment() {
  const names = variantNames(runs.value);
  const rows = assignmentRows(runs.value);
  if (rows.length === 0) return null;
  return (
    <section class="card" aria-labelledby="variants-runs">
      <h2 id="variants-runs">Runs</h2>
      <GroupingFields />
      {names.length > 1 && <DropStrip names={names} />}
      <TableBox label="Runs and their variants">
        <table>
          <thead>
            <tr>
              <th scope="col">Run</th>
              <th scope="col">Variant</th>
              <th scope="col">Mounting</th>
              <th scope="col" class="number">
                K<sub>T</sub>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <RunLine key={row.id} row={row} names={names} />
            ))}
          </tbody>
        </table>
      </TableBox>
    </section>
  );
}

interface RunLineProps {
  readonly row: AssignmentRow;
  readonly names: readonly string[];
}

function RunLine({ row: { id, name, variant, mounting }, names }: RunLineProps) {
  return (
    <tr draggable onDragStart={(event) => event.dataTransfer?.setData(DRAGGED_RUN, id)}>
      <th scope="row">
        <span class="drag-handle" aria-hidden="true" title="Drag onto a variant above">
          ⠿
        </span>{" "}
        <a href={addressOf("bench", { run: id })}>{name}</a>
      </th>
      <td>
        <VariantChoice id={id} name={name} variant={variant} names={names} />
      </td>
      <td>{mounting || "–"}</td>
      <td class="number">
        <ThrustCoefficientOf id={id} />
      </td>
    </tr>
  );
}

function ThrustCoefficientOf({ id }: { readonly id: string }) {
  const state = reductions.value.get(id);
  if (state?.reduction) return <>{formatUncertain(state.reduction.thrustCoefficient)}</>;
  return state?.problem ? <a href={addressOf("bench", { run: id })}>no result: see why</a> : <>reading …</>;
}

interface VariantChoiceProps {
  readonly id: string;
  readonly name: string;
  readonly variant: string;
  readonly names: readonly string[];
}

function VariantChoice({ id, name, variant, names }: VariantChoiceProps) {
  const [shown, move] = useChosen(variant, (to) => moveRun({ id, name }, to));
  return (
    <div class="variant-choice">
      <select aria-label={`Variant of ${name}`} value={shown} onChange={(event) => move(event.currentTarget.value)}>
        <option value="" selected={shown === ""}>
          none, not compared
        </option>
        {names.map((one) => (
          <option key={one} value={one} selected={one === shown}>
            {one}
          </option>
        ))}
      </select>
      <details>
        <summary>New variant</summary>
        <NoteField label={`New variant for ${name}`} value="" onCommit={move} />
      </details>
    </div>
  );
}

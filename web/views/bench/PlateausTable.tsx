import { useEffect, useState } from "preact/hooks";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { editRecipe, pickedPlateau } from "./benchState.ts";
import { type PlateauRow, plateauTable } from "./plateausModel.ts";
import { leavingOut, puttingBack, withPlateauAdded } from "./recipeEdits.ts";

/** Every plateau with its numbers, the lines of the file it rests on, and whether it counts. */
export function PlateausTable({ reduction }: { readonly reduction: Reduction }) {
  const table = plateauTable(reduction);
  const picked = pickedPlateau.value;
  const [open, setOpen] = useState(false);
  // A plateau picked on the picture is wanted here.
  useEffect(() => {
    if (picked !== null) setOpen(true);
  }, [picked]);
  return (
    <details class="card bench-plateaus" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Plateaus: {table.summary}</summary>
      <TableBox label="Plateaus">
        <table>
          <thead>
            <tr>
              <th scope="col">Plateau</th>
              <th scope="col">In the fit</th>
              {table.heads.map((head) => (
                <th key={head} scope="col" class="number">
                  {head}
                </th>
              ))}
              <th scope="col" class="number">
                Residual, standard uncertainties
              </th>
              <th scope="col">Time</th>
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
                  <UseOfPlateau row={row} />
                </td>
                {row.cells.map((cell, at) => (
                  <td key={at} class="number">
                    {cell}
                  </td>
                ))}
                <td class="number">{row.residual}</td>
                <td>{row.when || "–"}</td>
                <td>{row.lines}</td>
                <td class="number">{row.samples}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
      {table.rows.some((row) => row.span !== null) && <AddPlateau reduction={reduction} />}
    </details>
  );
}

/** A steady stretch that the search did not take, given by its ends. */
function AddPlateau({ reduction }: { readonly reduction: Reduction }) {
  const [start, setStart] = useState<number | null>(null);
  const [end, setEnd] = useState<number | null>(null);
  const ready = start !== null && end !== null && end > start;
  return (
    <form
      class="bench-add"
      onSubmit={(event) => {
        event.preventDefault();
        if (!ready) return;
        const span = { start, end };
        void editRecipe("Added a plateau", (recipe) => withPlateauAdded(recipe, reduction.plateaus, span));
        setStart(null);
        setEnd(null);
      }}
    >
      <QuantityField
        label="Add a plateau from"
        dimension="time"
        unit="s"
        value={start}
        min={0}
        optional
        onChange={setStart}
      />
      <QuantityField label="to" dimension="time" unit="s" value={end} min={0} optional onChange={setEnd} />
      <button type="submit" disabled={!ready}>
        Add
      </button>
    </form>
  );
}

function UseOfPlateau({ row }: { readonly row: PlateauRow }) {
  const [asking, setAsking] = useState(false);
  const { span } = row;
  if (span === null) return <span>{row.used ? "yes" : row.reason}</span>;
  if (!row.used) {
    return (
      <>
        <span>no: {row.reason}</span>
        <button
          type="button"
          class="quiet"
          onClick={() => void editRecipe(`Put ${row.name.toLowerCase()} back`, (recipe) => puttingBack(recipe, span))}
        >
          Put back
        </button>
      </>
    );
  }
  if (!asking) {
    return (
      <button type="button" class="quiet" aria-label={`Leave out ${row.name}`} onClick={() => setAsking(true)}>
        Leave out …
      </button>
    );
  }
  return (
    <ReasonForm
      name={row.name}
      onCancel={() => setAsking(false)}
      onReason={(reason) => {
        setAsking(false);
        void editRecipe(`Left out ${row.name.toLowerCase()}`, (recipe) => leavingOut(recipe, span, reason));
      }}
    />
  );
}

const USUAL_REASONS = [
  "still settling",
  "air drawn from the surface",
  "something caught on the blades",
  "supply sagging",
  "lever touched a stop",
];

interface ReasonFormProps {
  readonly name: string;
  readonly onReason: (reason: string) => void;
  readonly onCancel: () => void;
}

/** A plateau is never left out without saying why. */
function ReasonForm({ name, onReason, onCancel }: ReasonFormProps) {
  const [reason, setReason] = useState("");
  return (
    <form
      class="bench-reason"
      onSubmit={(event) => {
        event.preventDefault();
        if (reason.trim() !== "") onReason(reason);
      }}
    >
      <input
        type="text"
        list="bench-reasons"
        maxLength={200}
        placeholder="Why?"
        aria-label={`Why ${name} is left out`}
        autofocus
        value={reason}
        onInput={(event) => setReason(event.currentTarget.value)}
      />
      <datalist id="bench-reasons">
        {USUAL_REASONS.map((one) => (
          <option key={one} value={one} />
        ))}
      </datalist>
      <button type="submit" disabled={reason.trim() === ""}>
        Leave out
      </button>
      <button type="button" class="quiet" onClick={onCancel}>
        Keep
      </button>
    </form>
  );
}

import { useState } from "preact/hooks";
import type { Reduction } from "../../../shared/model/reduction.ts";
import { editRecipe } from "./benchState.ts";
import type { PlateauRow } from "./plateausModel.ts";
import { leavingOut, puttingBack, withPlateauSplit, withPlateausMerged } from "./recipeEdits.ts";

interface PlateauActionsProps {
  readonly row: PlateauRow;
  readonly reduction: Reduction;
  readonly unit: string;
}

type Asking = "reason" | "split" | null;

/** What a person can do with one plateau: leave it out with a reason, put it back, split it, merge it with the next. */
export function PlateauActions({ row, reduction, unit }: PlateauActionsProps) {
  const [asking, setAsking] = useState<Asking>(null);
  const done = () => setAsking(null);
  const { plateau, name } = row;
  const byHand = name.toLowerCase();
  if (asking === "reason") {
    return (
      <ReasonForm
        name={name}
        onCancel={done}
        onReason={(reason) => {
          done();
          void editRecipe(`Left out ${byHand}`, (recipe) => leavingOut(recipe, plateau, reason));
        }}
      />
    );
  }
  if (asking === "split") {
    return (
      <SplitForm
        row={row}
        unit={unit}
        onCancel={done}
        onSplit={(at) => {
          done();
          void editRecipe(`Split ${byHand}`, (recipe) => withPlateauSplit(recipe, reduction.plateaus, row.index, at));
        }}
      />
    );
  }
  const last = row.index === reduction.plateaus.length - 1;
  return (
    <>
      {!row.used && <span>no: {row.reason} </span>}
      {row.used ? (
        <button type="button" class="quiet" aria-label={`Leave out ${name}`} onClick={() => setAsking("reason")}>
          Leave out …
        </button>
      ) : (
        <button
          type="button"
          class="quiet"
          aria-label={`Put ${name} back`}
          onClick={() => void editRecipe(`Put ${byHand} back`, (recipe) => puttingBack(recipe, plateau))}
        >
          Put back
        </button>
      )}
      {row.movable && (
        <button type="button" class="quiet" aria-label={`Split ${name}`} onClick={() => setAsking("split")}>
          Split …
        </button>
      )}
      {row.movable && !last && (
        <button
          type="button"
          class="quiet"
          aria-label={`Merge ${name} with the next`}
          onClick={() =>
            void editRecipe(`Merged ${byHand} with the next`, (recipe) =>
              withPlateausMerged(recipe, reduction.plateaus, row.index),
            )
          }
        >
          Merge with next
        </button>
      )}
    </>
  );
}

interface SplitFormProps {
  readonly row: PlateauRow;
  readonly unit: string;
  readonly onSplit: (at: number) => void;
  readonly onCancel: () => void;
}

function SplitForm({ row, unit, onSplit, onCancel }: SplitFormProps) {
  const { start, end } = row.plateau.span;
  const [at, setAt] = useState(((start + end) / 2).toPrecision(5));
  const inside = at !== "" && Number(at) > start && Number(at) < end;
  return (
    <form
      class="bench-reason"
      onSubmit={(event) => {
        event.preventDefault();
        if (inside) onSplit(Number(at));
      }}
    >
      <label>
        Split at {unit === "" && "row "}
        <input
          type="number"
          step="any"
          min={start}
          max={end}
          aria-label={`Where ${row.name} is split${unit && `, ${unit}`}`}
          autofocus
          value={at}
          onInput={(event) => setAt(event.currentTarget.value)}
        />{" "}
        {unit}
      </label>
      <button type="submit" disabled={!inside}>
        Split
      </button>
      <button type="button" class="quiet" onClick={onCancel}>
        Keep whole
      </button>
    </form>
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

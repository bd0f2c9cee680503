import { useLayoutEffect, useRef, useState } from "preact/hooks";
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
  const box = useFocusKept(asking);
  const done = () => setAsking(null);
  const { plateau, name } = row;
  const byHand = name.toLowerCase();
  const leaveOut = (reason: string) => {
    done();
    void editRecipe(`Left out ${byHand}`, (recipe) => leavingOut(recipe, plateau, reason));
  };
  const split = (at: number) => {
    done();
    void editRecipe(`Split ${byHand}`, (recipe) => withPlateauSplit(recipe, reduction.plateaus, row.index, at));
  };
  return (
    <div ref={box} class="bench-actions">
      {asking === "reason" && <ReasonForm name={name} onCancel={done} onReason={leaveOut} />}
      {asking === "split" && <SplitForm row={row} unit={unit} onCancel={done} onSplit={split} />}
      {asking === null && <PlateauButtons row={row} reduction={reduction} onAsk={setAsking} />}
    </div>
  );
}

/** Keeps the keyboard at a plateau when its buttons give way to a question, and the question to the buttons. */
function useFocusKept(asking: Asking) {
  const box = useRef<HTMLDivElement>(null);
  const before = useRef(asking);
  useLayoutEffect(() => {
    if (before.current !== asking) box.current?.querySelector<HTMLElement>("input, button")?.focus();
    before.current = asking;
  }, [asking]);
  return box;
}

interface PlateauButtonsProps {
  readonly row: PlateauRow;
  readonly reduction: Reduction;
  readonly onAsk: (asking: Asking) => void;
}

function PlateauButtons({ row, reduction, onAsk }: PlateauButtonsProps) {
  const { plateau, name } = row;
  const byHand = name.toLowerCase();
  const last = row.index === reduction.plateaus.length - 1;
  const putBack = () => void editRecipe(`Put ${byHand} back`, (recipe) => puttingBack(recipe, plateau));
  const merge = () =>
    void editRecipe(`Merged ${byHand} with the next`, (recipe) =>
      withPlateausMerged(recipe, reduction.plateaus, row.index),
    );
  return (
    <>
      {!row.used && <span>no: {row.reason} </span>}
      {row.used ? (
        <Act words="Leave out …" name={`Leave out ${name}`} run={() => onAsk("reason")} />
      ) : (
        <Act words="Put back" name={`Put ${name} back`} run={putBack} />
      )}
      {row.movable && <Act words="Split …" name={`Split ${name}`} run={() => onAsk("split")} />}
      {row.movable && !last && <Act words="Merge with next" name={`Merge with next: ${name}`} run={merge} />}
    </>
  );
}

interface ActProps {
  readonly words: string;
  /** With the plateau it is about, for the ear. */
  readonly name: string;
  readonly run: () => void;
}

function Act({ words, name, run }: ActProps) {
  return (
    <button type="button" class="quiet" aria-label={name} onClick={run}>
      {words}
    </button>
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

import { useState } from "preact/hooks";
import { runs } from "../../app/session.ts";
import { moveRun } from "./moveRun.ts";

/** Kind under which a dragged row carries the id of its run. */
export const DRAGGED_RUN = "application/x-bollard-run";

/** One place a variant to drop a run on; the lists in the table do the same from the keyboard. */
export function DropStrip({ names }: { readonly names: readonly string[] }) {
  if (names.length === 0) return null;
  return (
    <ul class="drop-strip" aria-label="Drag a run onto a variant">
      {names.map((name) => (
        <DropPlace key={name} name={name} />
      ))}
    </ul>
  );
}

function DropPlace({ name }: { readonly name: string }) {
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const id = event.dataTransfer?.getData(DRAGGED_RUN);
    const run = runs.value.find((one) => one.id === id);
    if (run !== undefined && run.document.variant !== name) void moveRun({ id: run.id, name: run.document.name }, name);
  };
  return (
    <li
      class={over ? "drop-place drop-over" : "drop-place"}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      {name}
    </li>
  );
}

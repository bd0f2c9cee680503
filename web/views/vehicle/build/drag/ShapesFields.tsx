import { useState } from "preact/hooks";
import type { DragSource } from "../../../../../shared/model/vehicle/drag.ts";
import type { ShapeItem } from "../../../../../shared/model/vehicle/dragShapes.ts";
import { Dialog } from "../../../../app/Dialog.tsx";
import { TableBox } from "../../../../app/TableBox.tsx";
import { PrintedSymbol } from "../../../../forms/Field.tsx";
import { KeptQuantity } from "../KeptQuantity.tsx";
import { type DragWay, resolvedDrag } from "./directions.ts";
import { resolved } from "./dragState.ts";
import { type ShapeRowText, shapeRowText } from "./dragText.ts";
import { ShapeForm } from "./ShapeForm.tsx";

type ShapesSource = Extract<DragSource, { from: "shapes" }>;

interface ShapesFieldsProps {
  readonly source: ShapesSource;
  readonly way: DragWay;
  readonly keep: (source: DragSource) => unknown;
}

/** A drag built up from shapes: the list, and which part is which share. */
export function ShapesFields({ source, way, keep }: ShapesFieldsProps) {
  /** Place of the part that is changed; the length of the list for a new one. */
  const [open, setOpen] = useState<number | null>(null);
  const { items } = source;
  const store = async (item: ShapeItem) => {
    const next = open === items.length ? [...items, item] : items.with(open!, item);
    if ((await keep({ ...source, items: next })) !== false) setOpen(null);
  };
  return (
    <>
      <ShapesTable {...{ source, way, keep }} onChange={setOpen} />
      <div class="row">
        <button type="button" onClick={() => setOpen(items.length)}>
          Add a part
        </button>
      </div>
      <SumFields source={source} keep={keep} />
      {open !== null && (
        <Dialog
          title={open === items.length ? "Add a part that the water meets" : `Change ${items[open]?.name ?? "it"}`}
          onClose={() => setOpen(null)}
        >
          <ShapeForm item={items[open] ?? null} onKeep={store} onDone={() => setOpen(null)} />
        </Dialog>
      )}
    </>
  );
}

interface ShapesTableProps extends ShapesFieldsProps {
  readonly onChange: (place: number) => void;
}

function ShapesTable({ source, way, keep, onChange }: ShapesTableProps) {
  const { items } = source;
  const rows = (resolved.value.drag && resolvedDrag(resolved.value.drag, way)?.rows) ?? [];
  return (
    <TableBox label="Parts and their shares of the drag">
      <table class="build-table">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Shape</th>
            <th scope="col">Area of one</th>
            <th scope="col">
              <PrintedSymbol text="C_D" />
            </th>
            <th scope="col">
              <PrintedSymbol text="C_D" /> A
            </th>
            <th scope="col">Share</th>
            <th scope="col">Reynolds number</th>
            <th scope="col">From</th>
            <th scope="col">
              <span class="visually-hidden">Acts</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {items.map((item, at) => (
            <ShapeTableRow
              key={at}
              item={item}
              row={rows[at] && shapeRowText(rows[at])}
              onChange={() => onChange(at)}
              onRemove={items.length < 2 ? null : () => void keep({ ...source, items: items.toSpliced(at, 1) })}
            />
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

interface ShapeTableRowProps {
  readonly item: ShapeItem;
  /** Undefined where the drag can not be worked out. */
  readonly row: ShapeRowText | undefined;
  readonly onChange: () => void;
  /** Null for the last part that is left. */
  readonly onRemove: (() => void) | null;
}

function ShapeTableRow({ item, row, onChange, onRemove }: ShapeTableRowProps) {
  return (
    <tr>
      <th scope="row">{row?.name ?? item.name}</th>
      <td>{row?.shape}</td>
      <td class="number">{row?.area}</td>
      <td class="number">{row?.coefficient}</td>
      <td class="number">{row?.dragArea}</td>
      <td>
        {row && (
          <span class="build-share">
            <span class="build-bar" style={{ inlineSize: `${100 * row.share}%` }} />
            {row.shareText}
          </span>
        )}
      </td>
      <td class="number">{row?.reynolds}</td>
      <td class="muted">{row?.source}</td>
      <td class="build-acts">
        <button type="button" class="quiet" aria-label={`Change ${item.name}`} onClick={onChange}>
          Change
        </button>
        <button
          type="button"
          class="quiet"
          aria-label={`Remove ${item.name}`}
          disabled={onRemove === null}
          onClick={() => onRemove?.()}
        >
          Remove
        </button>
      </td>
    </tr>
  );
}

function SumFields({ source, keep }: Pick<ShapesFieldsProps, "source" | "keep">) {
  return (
    <div class="form-grid">
      <KeptQuantity
        {...{ label: "Speed for the Reynolds numbers", symbol: "V", dimension: "speed", unit: "m/s" }}
        positive
        max={50}
        value={source.speed}
        onKeep={(speed) => speed !== null && keep({ ...source, speed })}
      />
      <KeptQuantity
        {...{ label: "The sum is good to", dimension: "fraction", unit: "%", min: 0, max: 1 }}
        help="Standard uncertainty for parts that disturb each other; 15 % is common practice, no source."
        value={source.interferenceUncertainty}
        onKeep={(share) => share !== null && keep({ ...source, interferenceUncertainty: share })}
      />
    </div>
  );
}

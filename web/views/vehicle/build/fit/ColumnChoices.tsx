import { columnName } from "../../../../../shared/log/columnName.ts";
import type { LogTable } from "../../../../../shared/log/logTable.ts";
import type { DragColumn, DragColumnUse, DragQuantity } from "../../../../../shared/model/vehicle/dragChannels.ts";
import { UNITS } from "../../../../../shared/quantity/units.data.ts";
import { DRAG_QUANTITIES } from "../../../../../shared/vehicle/drag/dragQuantities.data.ts";
import { SelectField } from "../../../../forms/SelectField.tsx";
import { type FitAsked, neededOf } from "./fitDraft.ts";

interface ColumnChoicesProps {
  readonly table: LogTable;
  readonly asked: FitAsked;
  readonly set: (change: Partial<FitAsked>) => void;
  readonly uses: readonly DragColumnUse[];
}

const NOT_SAID = "";

/** Which column holds what, and why it was taken; each choice and each unit can be changed. */
export function ColumnChoices({ table, asked, set, uses }: ColumnChoicesProps) {
  const wanted: DragQuantity[] = [...neededOf(asked)];
  if (asked.method === "tow" && uses.some(({ quantity }) => quantity === "time")) wanted.push("time");
  const state = (quantity: DragQuantity, next: DragColumn | null) =>
    set({
      stated: [...asked.stated.filter((one) => one.quantity !== quantity), ...(next ? [next] : [])],
    });
  return (
    <fieldset class="build-group">
      <legend>Columns</legend>
      <div class="form-grid">
        {wanted.map((quantity) => {
          const use = uses.find((one) => one.quantity === quantity);
          const stated = asked.stated.find((one) => one.quantity === quantity);
          const { name, dimension } = DRAG_QUANTITIES[quantity];
          const column = stated?.column ?? use?.column;
          return (
            <div key={quantity} class="build-pair">
              <SelectField
                label={`Column of the ${name}`}
                value={column === undefined ? NOT_SAID : String(column)}
                options={[
                  ...(column === undefined ? [{ value: NOT_SAID, label: "none found: choose one" }] : []),
                  ...table.shape.columns.map((_, at) => ({ value: String(at), label: columnName(table.shape, at) })),
                ]}
                help={use && `${use.sure ? "" : "A guess. "}${use.reason}`}
                onChange={(at) => at !== NOT_SAID && state(quantity, { quantity, column: Number(at) })}
              />
              {use && (
                <SelectField
                  label="Unit"
                  value={use.unit}
                  options={UNITS[dimension].map(({ symbol }) => ({ value: symbol, label: symbol }))}
                  onChange={(unit) => state(quantity, { quantity, column: use.column, unit })}
                />
              )}
            </div>
          );
        })}
      </div>
    </fieldset>
  );
}

import type { ColumnRole } from "../../../shared/model/recipe.ts";
import { Heads } from "../../app/Heads.tsx";
import { TableBox } from "../../app/TableBox.tsx";
import { useChosen } from "../../forms/useChosen.ts";
import type { SignOwner } from "./columnSigns.ts";
import { type ColumnRow, ROLES, roleTitle, unitForRole, unitWords } from "./columnsModel.ts";

interface ColumnsTableProps {
  readonly label: string;
  readonly rows: readonly ColumnRow[];
  readonly turned: ReadonlySet<ColumnRole>;
  readonly signOwner: (role: ColumnRole) => SignOwner;
  readonly onUse: (row: ColumnRow, role: ColumnRole, unit: string) => unknown;
  readonly onTurn: (role: ColumnRole, turned: boolean) => unknown;
}

/** Every column of a log: what it holds, what it is taken for, in which unit and which way round, and why. */
export function ColumnsTable({ label, rows, turned, signOwner, onUse, onTurn }: ColumnsTableProps) {
  return (
    <TableBox label={label}>
      <table>
        <Heads columns={["Column", "First values", "Stands for", "Unit and sign", "Why"]} />
        <tbody>
          {rows.map((row) => (
            <tr key={row.column} class={row.sure ? "" : "bench-unsure"}>
              <th scope="row">{row.header}</th>
              <td class="bench-values">{row.firstValues}</td>
              <td>
                <RoleSelect row={row} onUse={onUse} />
              </td>
              <td class="bench-unit">
                {row.role !== "ignore" && <UnitSelect row={row} onUse={onUse} />}
                <SignSelect row={row} owner={signOwner(row.role)} turned={turned.has(row.role)} onTurn={onTurn} />
              </td>
              <td class="bench-why">
                <Reason row={row} onUse={onUse} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

type CellProps = Pick<ColumnsTableProps, "onUse"> & { readonly row: ColumnRow };

function RoleSelect({ row, onUse }: CellProps) {
  const [shown, choose] = useChosen<ColumnRole>(row.role, (role) => onUse(row, role, unitForRole(role, row.unit)));
  return (
    <select
      aria-label={`What ${row.header} stands for`}
      value={shown}
      onChange={(event) => choose(event.currentTarget.value as ColumnRole)}
    >
      {ROLES.map((role) => (
        <option key={role} value={role} selected={role === shown}>
          {roleTitle(role)}
        </option>
      ))}
    </select>
  );
}

function UnitSelect({ row, onUse }: CellProps) {
  const [shown, choose] = useChosen(row.unit, (unit) => onUse(row, row.role, unit));
  return (
    <select aria-label={`Unit of ${row.header}`} value={shown} onChange={(event) => choose(event.currentTarget.value)}>
      {row.units.map((unit) => (
        <option key={unit} value={unit} selected={unit === shown}>
          {unitWords(unit)}
        </option>
      ))}
    </select>
  );
}

interface SignSelectProps {
  readonly row: ColumnRow;
  readonly owner: SignOwner;
  readonly turned: boolean;
  readonly onTurn: ColumnsTableProps["onTurn"];
}

function SignSelect({ row, owner, turned, onTurn }: SignSelectProps) {
  const [shown, choose] = useChosen(turned, (isTurned) => onTurn(row.role, isTurned));
  if (owner === "none") return null;
  if (owner === "instrument") return <span class="muted">sign by its instrument</span>;
  return (
    <select
      aria-label={`Sign of ${row.header}`}
      value={shown ? "turned" : "kept"}
      onChange={(event) => choose(event.currentTarget.value === "turned")}
    >
      <option value="kept" selected={!shown}>
        sign as logged
      </option>
      <option value="turned" selected={shown}>
        sign turned round
      </option>
    </select>
  );
}

function Reason({ row, onUse }: CellProps) {
  return (
    <>
      {!row.sure && <span class="chip">look</span>} {row.reason}
      {row.alternatives.map((other) => (
        <button
          key={other.text}
          type="button"
          class="quiet bench-alternative"
          onClick={() => onUse(row, other.role, other.unit)}
        >
          {other.text}
        </button>
      ))}
    </>
  );
}

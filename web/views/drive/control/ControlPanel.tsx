import { useState } from "preact/hooks";
import type { CommandForThrust } from "../../../../shared/drive/controlLookup.ts";
import { controlTableCsv } from "../../../../shared/drive/controlTableCsv.ts";
import type { ControlBlock, ControlTable } from "../../../../shared/model/controlTable.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { fileNameOf } from "../../../charts/chartCsv.ts";
import { saveFile } from "../../../charts/saveFile.ts";
import { bound, boundCount, boundNumber } from "../../../forms/bound.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { readVoltages } from "../../../forms/quantityLists.ts";
import { SelectField } from "../../../forms/SelectField.tsx";
import { TextField } from "../../../forms/TextField.tsx";
import { AMPERE, NEWTON, PERCENT, RPM } from "../../bench/shownUnits.ts";
import { SubjectField } from "../SubjectField.tsx";
import { subject } from "../subjectOfDrive.ts";
import {
  asternShare,
  commandFound,
  controlPicture,
  made,
  steps,
  thrustFound,
  voltageKind,
  voltages,
  wantedCommand,
  wantedThrust,
} from "./controlState.ts";

/** What to command for a thrust, for a vehicle's controller to carry. */
export function ControlPanel() {
  const { table, problem } = made.value;
  return (
    <>
      <p>Thrust against command with all thrusters running alike, for the controller of a vehicle to look up.</p>
      <ControlFields />
      {table === null ? (
        <p class="warning">{problem}</p>
      ) : (
        <>
          <Warnings items={table.warnings} />
          <div class="form-grid">
            <CommandLookUp />
            <ThrustLookUp />
          </div>
          <Chart spec={controlPicture(table)} height={300} />
          <Ends blocks={table.blocks} />
          <button type="button" onClick={() => save(table)}>
            Save the table as CSV
          </button>
        </>
      )}
    </>
  );
}

function save(table: ControlTable): void {
  const name = fileNameOf(`control table ${subject.value?.inHand.name ?? ""}`, "csv");
  saveFile(new Blob([controlTableCsv(table)], { type: "text/csv" }), name);
}

function ControlFields() {
  const [text, setText] = useState("");
  const read = readVoltages(text);
  return (
    <div class="form-grid">
      <SubjectField />
      <TextField
        label="For these supply voltages"
        value={text}
        optional
        problem={read.problem}
        help="For example: 16.8 V, 14.8 V, 13 V. Left empty: that of the supply."
        onChange={(typed) => {
          setText(typed);
          const now = readVoltages(typed);
          if (now.problem === null) voltages.value = now.values;
        }}
      />
      <SelectField
        label="The voltages are"
        {...bound(voltageKind)}
        options={[
          { value: "openCircuit", label: "open-circuit: the sag is worked out" },
          { value: "bus", label: "held at the controllers" },
        ]}
      />
      <QuantityField label="Steps each way" dimension="number" {...boundCount(steps)} min={2} max={200} />
      <QuantityField
        label="Astern, where nothing was measured"
        dimension="fraction"
        unit="%"
        {...bound(asternShare)}
        positive
        max={1}
        optional
        help="Share of the coefficients ahead, a guess known to 20 %. Left empty, the table ends at stop."
      />
    </div>
  );
}

/** One thrust looked up, as a controller would. */
function CommandLookUp() {
  const told = commandFound.value;
  return (
    <>
      <QuantityField
        label="Command for a thrust of"
        dimension="massAsForce"
        unit="N"
        {...boundNumber(wantedThrust)}
        help="Astern negative."
      />
      <p class="drive-found" role="status">
        {"problem" in told ? told.problem : commandText(told.found)}
      </p>
    </>
  );
}

/** One command looked up, to check what a vehicle's controller carries. */
function ThrustLookUp() {
  const told = thrustFound.value;
  return (
    <>
      <QuantityField label="Thrust of a command of" dimension="pulseWidth" unit="µs" {...boundNumber(wantedCommand)} />
      <p class="drive-found" role="status">
        {"problem" in told ? told.problem : formatQuantity(told.found, NEWTON, 3)}
      </p>
    </>
  );
}

/** "1672 µs", or the end of the table and what keeps it there. */
function commandText({ command, thrust, cappedBy }: CommandForThrust): string {
  const pulse = `${formatNumber(command, 4)}\u202fµs`;
  return cappedBy === null
    ? pulse
    : `${pulse} gives ${formatQuantity(thrust, NEWTON, 3)}, the most there is: ${cappedBy} ends it`;
}

/** Where the table of each voltage ends, and what ends it. */
function Ends({ blocks }: { readonly blocks: readonly ControlBlock[] }) {
  return (
    <TableBox label="Ends of the table">
      <table>
        <Heads
          columns={[
            "Supply",
            "Way",
            { numbers: "Command" },
            { numbers: "Throttle" },
            { numbers: "Thrust" },
            { numbers: "Motor current" },
            { numbers: "Rotation rate" },
            "Ended by",
          ]}
        />
        <tbody>
          {blocks.flatMap((block) =>
            (["ahead", "astern"] as const).map((way) => <EndRow key={`${block.voltage} ${way}`} {...{ block, way }} />),
          )}
        </tbody>
      </table>
    </TableBox>
  );
}

function EndRow({ block, way }: { readonly block: ControlBlock; readonly way: "ahead" | "astern" }) {
  const end = block[way];
  if (end === null) return null;
  const row = way === "ahead" ? block.rows.at(-1)! : block.rows[0]!;
  return (
    <tr>
      <th scope="row">{`${formatNumber(block.voltage, 4)}\u202fV`}</th>
      <td>{way}</td>
      <td class="number">{`${Math.round(end.command)}\u202fµs`}</td>
      <td class="number">{formatQuantity(end.throttle, PERCENT, 3)}</td>
      <td class="number">{formatQuantity(end.thrust, NEWTON, 3)}</td>
      <td class="number">{formatQuantity(row.motorCurrent, AMPERE, 3)}</td>
      <td class="number">{formatQuantity(row.rotationRate, RPM, 3)}</td>
      <td>{end.endedBy === "supply voltage" ? "greatest power of the supply" : end.endedBy}</td>
    </tr>
  );
}

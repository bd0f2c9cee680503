import type { ControlBlock, ControlRow, ControlTable } from "../model/controlTable.ts";
import { csvText } from "../quantity/csvCell.ts";

const VOLTAGE = { openCircuit: "Open-circuit voltage (V)", bus: "Bus voltage (V)" } as const;

const COLUMNS: readonly (readonly [head: string, of: (row: ControlRow) => number | string | null])[] = [
  ["Command (us)", ({ command }) => command],
  ["Throttle (%)", ({ throttle }) => 100 * throttle],
  ["Zone", ({ zone }) => zone],
  ["Thrust of one thruster (N)", ({ thrust }) => thrust],
  ["Standard uncertainty of thrust (N)", ({ thrustUncertainty }) => thrustUncertainty],
  ["Motor current (A)", ({ motorCurrent }) => motorCurrent],
  ["Supply current of all (A)", ({ supplyCurrent }) => supplyCurrent],
  ["Rotation rate (rpm)", ({ rotationRate }) => 60 * rotationRate],
  ["Electrical power of one thruster (W)", ({ electricalPower }) => electricalPower],
];

/**
 * A control table as comma-separated text (RFC 4180) that a spreadsheet can not run: one header row with units, then a
 * row a command for each voltage. Astern throttle, thrust and rotation rate are negative. The last column names, on the
 * last row of a direction, what ends the table there.
 */
export function controlTableCsv({ voltageKind, blocks }: ControlTable): string {
  const head = [VOLTAGE[voltageKind], ...COLUMNS.map(([name]) => name), "Ended by"];
  const rows = blocks.flatMap((block) =>
    block.rows.map((row) => [block.voltage, ...COLUMNS.map(([, of]) => of(row)), endedBy(row, block)]),
  );
  return csvText([head, ...rows]);
}

function endedBy({ command }: ControlRow, { ahead, astern }: ControlBlock): string | null {
  if (command === ahead.command) return ahead.endedBy;
  return astern !== null && command === astern.command ? astern.endedBy : null;
}

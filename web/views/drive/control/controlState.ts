import { computed, signal } from "@preact/signals";
import { type CommandForThrust, thrustToCommand } from "../../../../shared/drive/controlLookup.ts";
import { controlTable } from "../../../../shared/drive/controlTable.ts";
import type { ControlTable, VoltageKind } from "../../../../shared/model/controlTable.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";
import { asternEstimate } from "../asternShare.ts";
import { subject } from "../subjectOfDrive.ts";

/** Supply voltages of the table, V; none: that of the supply. */
export const voltages = signal<readonly number[]>([]);
export const voltageKind = signal<VoltageKind>("openCircuit");
export const steps = signal(20);
/** Share of the thrust ahead taken astern where nothing was measured; null: the table ends at stop. */
export const asternShare = signal<number | null>(null);
/** Thrust that a command is looked up for, N. */
export const wantedThrust = signal(5);

export const made = computed((): { readonly table: ControlTable | null; readonly problem: string } => {
  const one = subject.value;
  if (one === undefined) return { table: null, problem: "Nothing runs yet." };
  const share = asternShare.value;
  try {
    const table = controlTable({
      train: one.train,
      ...(voltages.value.length > 0 && { voltages: [...voltages.value] }),
      ...{ voltageKind: voltageKind.value, steps: steps.value },
      ...(share !== null && {
        asternEstimate: asternEstimate(share),
      }),
    });
    return { table, problem: "" };
  } catch (thrown) {
    return { table: null, problem: sentenceOf(thrown) };
  }
});

/** The command for the wanted thrust at the first voltage of the table, or why there is none. */
export const lookedUp = computed((): { readonly found: CommandForThrust } | { readonly problem: string } => {
  const { table, problem } = made.value;
  if (table === null) return { problem };
  try {
    return { found: thrustToCommand(table, wantedThrust.value, table.blocks[0]!.voltage) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
});

export function controlPicture({ blocks, voltageKind: kind }: ControlTable): ChartSpec {
  return {
    title: "Thrust against command",
    x: { label: "Command", unit: "µs" },
    y: { label: "Thrust of one thruster", unit: "N" },
    series: blocks.map(({ voltage, rows }, style) => ({
      id: String(voltage),
      name: `${Number(voltage.toPrecision(4))} V ${kind === "bus" ? "at the controllers" : "open-circuit"}`,
      kind: "prediction" as const,
      style,
      points: rows.map(({ command, thrust }) => ({ x: command, y: thrust })),
    })),
  };
}

import { computed, signal } from "@preact/signals";
import { commandToThrust, thrustToCommand } from "../../../../shared/drive/controlLookup.ts";
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
/** Command that a thrust is looked up for, s. */
export const wantedCommand = signal(1600e-6);

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

/** What is read from the table, or why nothing is. */
type LookedUp<T> = { readonly found: T } | { readonly problem: string };

/** What `look` finds in the table at its first voltage. */
function lookedUp<T>(look: (table: ControlTable, voltage: number) => T): LookedUp<T> {
  const { table, problem } = made.value;
  if (table === null) return { problem };
  try {
    return { found: look(table, table.blocks[0]!.voltage) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

export const commandFound = computed(() => lookedUp((table, at) => thrustToCommand(table, wantedThrust.value, at)));
/** Thrust of the wanted command, N. */
export const thrustFound = computed(() =>
  lookedUp((table, at) => commandToThrust(table, 1e6 * wantedCommand.value, at)),
);

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

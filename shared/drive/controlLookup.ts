import type { ControlBlock, ControlEnd, ControlTable } from "../model/controlTable.ts";
import { finite } from "../quantity/domain.ts";
import { formatNumber } from "../quantity/format.ts";
import { OutOfDomain } from "../quantity/problem.ts";
import { commandScale } from "./controlCommand.ts";

/** The answer of a table to a thrust. */
export interface CommandForThrust {
  /** µs. */ readonly command: number;
  /** What it makes, N: the thrust that was asked for, or the greatest there is. */ readonly thrust: number;
  /** What kept it from the thrust that was asked for; null where nothing did. */
  readonly cappedBy: ControlEnd["endedBy"] | null;
}

/**
 * Command, µs, for a thrust (N, astern negative) at a supply voltage (V), by straight lines between rows and between
 * voltages; the inverse of `commandToThrust` to rounding. No thrust is the stop pulse.
 *
 * Between two voltages the table ends where the nearer end of the two is. More thrust than there is gives that end, and
 * says what is the limit.
 *
 * Throws   OutOfDomain `drive.voltage-outside-table`, `drive.no-astern-table` for a thrust astern of a table without.
 */
export function thrustToCommand(table: ControlTable, thrust: number, voltage: number): CommandForThrust {
  const wanted = finite(thrust, "thrust", "N");
  const line = lineAt(table, voltage);
  if (wanted === 0) return { command: table.command.stop, thrust: 0, cappedBy: null };
  const { nodes, ahead, astern } = line;
  if (wanted < 0 && astern === null) throw noAstern(wanted);
  const end = wanted > 0 ? nodes.at(-1)! : nodes[0]!;
  if (Math.abs(wanted) > Math.abs(end.thrust)) {
    return { command: line.pulse(end.offset), thrust: end.thrust, cappedBy: wanted > 0 ? ahead : astern };
  }
  // The segment in which the thrust passes: flat ones, where the motor stands, are passed over from the side of stop.
  const above =
    wanted > 0
      ? nodes.findIndex((node) => node.thrust >= wanted)
      : nodes.findLastIndex((node) => node.thrust <= wanted) + 1;
  const offset = between(nodes[above - 1]!, nodes[above]!, "thrust", "offset", wanted);
  return { command: line.pulse(offset), thrust: wanted, cappedBy: null };
}

/**
 * Thrust, N, astern negative, of a command (µs) at a supply voltage (V), by straight lines as `thrustToCommand`.
 *
 * Throws   OutOfDomain `drive.voltage-outside-table`, `drive.command-outside-table`.
 */
export function commandToThrust(table: ControlTable, command: number, voltage: number): number {
  const { nodes } = lineAt(table, voltage);
  const offset = commandScale(table.command).offset(finite(command, "command", "µs"));
  const [first, last] = [nodes[0]!, nodes.at(-1)!];
  if (offset < first.offset - SAME || offset > last.offset + SAME) throw outsideTable(command, table);
  const above = nodes.findIndex((node) => node.offset >= offset);
  if (above === 0) return first.thrust;
  if (above < 0) return last.thrust;
  return between(nodes[above - 1]!, nodes[above]!, "offset", "thrust", offset);
}

/** Pulses closer than this, µs, are one. */
const SAME = 1e-9;

interface Node {
  /** Distance from stop, µs, rising to full ahead. */ readonly offset: number;
  readonly thrust: number;
}

interface Line {
  readonly nodes: readonly Node[];
  readonly ahead: ControlEnd["endedBy"];
  readonly astern: ControlEnd["endedBy"] | null;
  readonly pulse: (offset: number) => number;
}

/** Thrust against command at one voltage: the rows of a block, or those of two with straight lines between them. */
function lineAt(table: ControlTable, voltage: number): Line {
  const { offset } = commandScale(table.command);
  const sense = offset(table.command.stop + 1);
  const pulse = (x: number) => table.command.stop + sense * x;
  const [low, high] = blocksAround(table, voltage);
  const [a, b] = [nodesOf(low, offset), nodesOf(high, offset)];
  if (low === high) return { nodes: a, ahead: low.ahead.endedBy, astern: low.astern?.endedBy ?? null, pulse };
  const share = (voltage - low.voltage) / (high.voltage - low.voltage);
  const least = Math.max(a[0]!.offset, b[0]!.offset);
  const most = Math.min(a.at(-1)!.offset, b.at(-1)!.offset);
  const grid = [...a, ...b].map((node) => node.offset).filter((x) => x >= least && x <= most);
  const nodes = [...new Set(grid)]
    .toSorted((x, y) => x - y)
    .map((x) => ({ offset: x, thrust: (1 - share) * thrustAt(a, x) + share * thrustAt(b, x) }));
  const nearer = (isLow: boolean) => (isLow ? low : high);
  return {
    ...{ nodes, pulse },
    ahead: nearer(a.at(-1)!.offset <= b.at(-1)!.offset).ahead.endedBy,
    astern: nearer(a[0]!.offset >= b[0]!.offset).astern?.endedBy ?? null,
  };
}

const nodesOf = ({ rows }: ControlBlock, offset: (pulse: number) => number): Node[] =>
  rows.map(({ command, thrust }) => ({ offset: offset(command), thrust }));

function thrustAt(nodes: readonly Node[], x: number): number {
  const above = nodes.findIndex((node) => node.offset >= x);
  return above <= 0 ? nodes.at(above)!.thrust : between(nodes[above - 1]!, nodes[above]!, "offset", "thrust", x);
}

/** `to` where `from` is `at`, on the straight line through two nodes. */
function between(one: Node, other: Node, from: keyof Node, to: keyof Node, at: number): number {
  const share = (at - one[from]) / (other[from] - one[from]);
  return one[to] + (other[to] - one[to]) * share;
}

/** The blocks below and above a voltage; twice the same where it is one of theirs. */
function blocksAround({ blocks }: ControlTable, voltage: number): [ControlBlock, ControlBlock] {
  const exact = blocks.find((block) => block.voltage === voltage);
  if (exact !== undefined) return [exact, exact];
  const above = blocks.findIndex((block) => block.voltage > voltage);
  if (above > 0) return [blocks[above - 1]!, blocks[above]!];
  throw new OutOfDomain({
    code: "drive.voltage-outside-table",
    where: "voltage",
    found: `${formatNumber(voltage)} V lies outside the table`,
    needed: blocks.map((block) => `${formatNumber(block.voltage)} V`).join(", "),
    mend: "Make the table for more voltages",
  });
}

function noAstern(thrust: number): OutOfDomain {
  return new OutOfDomain({
    code: "drive.no-astern-table",
    where: "thrust",
    found: `${formatNumber(thrust)} N is a thrust astern, and the table has none`,
    needed: "0 N or more",
    mend: "Measure the propeller astern and make the table again",
  });
}

function outsideTable(command: number, { command: { stop } }: ControlTable): OutOfDomain {
  return new OutOfDomain({
    code: "drive.command-outside-table",
    where: "command",
    found: `A command of ${formatNumber(command, 4)} µs lies outside the table`,
    needed: "a command between the ends of the table, which may lie before full throttle where a limit is reached",
    mend: `Stay nearer to the stop pulse of ${formatNumber(stop, 4)} µs`,
  });
}

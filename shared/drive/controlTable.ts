import type { ControlBlock, ControlTable, ControlTableRequest } from "../model/controlTable.ts";
import type { DriveRequest } from "../model/drive.ts";
import { ControllerCommand } from "../model/parts/controller.ts";
import { formatNumber } from "../quantity/format.ts";
import { InputProblem, sentence } from "../quantity/problem.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { type CommandScale, commandScale } from "./controlCommand.ts";
import { directionRows, stopRow } from "./controlRows.ts";
import { driveRequestOf, type PreparedDrive, VOLTAGE_CODE, voltageAboveLimit } from "./driveRequestOf.ts";

/**
 * What to command for a thrust: command, throttle, thrust, currents and rotation rate of one thruster at rest, ahead and
 * astern, for each supply voltage.
 *
 * Rows of the dead band, and of throttle too small to turn the motor, are there with thrust 0; outside, thrust rises from
 * row to row. The table ends at the limit that is reached first, and says which.
 *
 * Source   `operatingPoint`; scale of the command as `commandScale`.
 * Assumes  at rest, as all thrusters of the train run at one throttle; a controller whose throttle is what its command
 *          asks for.
 * Error    between rows straight lines: with 20 steps some 0.1 % of the greatest thrust. `thrustUncertainty` is that of the
 *          model's inputs.
 * Throws   as `driveRequestOf` and `operatingPoint`; InputProblem `drive.command-range`.
 */
export function controlTable(asked: ControlTableRequest): ControlTable {
  const { train, voltageKind } = asked;
  const running = {
    throttle: 0,
    advanceSpeed: 0,
    ...(asked.asternEstimate && { asternEstimate: asked.asternEstimate }),
  };
  const command = train.controller?.command ?? ControllerCommand.parse({});
  const scale = commandScale(command);
  const ahead = driveRequestOf(train, { ...running, direction: "ahead" });
  const astern = preparedAstern(() => driveRequestOf(train, { ...running, direction: "astern" }), scale);
  const voltages = (asked.voltages ?? [ahead.supply.openCircuitVoltage]).toSorted((a, b) => a - b);
  const at = (request: DriveRequest, voltage: number) => atVoltage(request, voltage, asked);
  const blocks = [...new Set(voltages)].map((voltage) =>
    block(voltage, at(ahead.request, voltage), astern.prepared && at(astern.prepared.request, voltage), {
      scale,
      steps: asked.steps,
    }),
  );
  const warnings = [
    ...(train.controller?.command === undefined ? [usualCommand(command)] : []),
    ...(astern.prepared ?? ahead).warnings.filter(({ code }) => code !== VOLTAGE_CODE),
    ...voltageAboveLimit(train, voltages.at(-1)!),
    ...astern.warnings,
    ...blocks.flatMap(nothingAllowed),
  ];
  return { command, voltageKind, blocks, grounds: [...ahead.grounds], warnings };
}

/** The request astern; where there is none, the table ends at stop, and a warning says why. */
function preparedAstern(
  prepare: () => PreparedDrive,
  scale: CommandScale,
): { readonly prepared: PreparedDrive | null; readonly warnings: readonly Warning[] } {
  if (!scale.canReverse)
    return { prepared: null, warnings: [aheadOnly("The controller turns its motor one way only")] };
  try {
    return { prepared: prepare(), warnings: [] };
  } catch (refusal) {
    if (!(refusal instanceof InputProblem)) throw refusal;
    return { prepared: null, warnings: [aheadOnly(sentence({ ...refusal.problem, where: "" }))] };
  }
}

/** The request with the supply at a stated voltage, which is then exact. */
function atVoltage(request: DriveRequest, supplyVoltage: number, { voltageKind }: ControlTableRequest): DriveRequest {
  const { supplyVoltage: _stated, supplyResistance: ofResistance, ...others } = request.uncertainties;
  if (voltageKind === "bus") return { ...request, supplyVoltage, supplyResistance: 0, uncertainties: others };
  const uncertainties = { ...others, ...(ofResistance !== undefined && { supplyResistance: ofResistance }) };
  return { ...request, supplyVoltage, uncertainties };
}

function block(
  voltage: number,
  ahead: DriveRequest,
  astern: DriveRequest | null,
  { scale, steps }: { readonly scale: CommandScale; readonly steps: number },
): ControlBlock {
  const forward = directionRows({ request: ahead, direction: "ahead", scale, steps });
  const backward = astern && directionRows({ request: astern, direction: "astern", scale, steps });
  const rows = [...(backward?.rows.toReversed() ?? []), stopRow(ahead, scale), ...forward.rows];
  return {
    voltage,
    // Without a dead band its end is the stop pulse itself.
    rows: rows.filter((row, i) => rows.findIndex(({ command }) => command === row.command) === i),
    ahead: forward.end,
    astern: backward?.end ?? null,
  };
}

function usualCommand({ stop, fullForward, fullReverse, deadBand }: ControllerCommand): Warning {
  return warning({
    code: "drive.command-assumed",
    where: "controller.command",
    found: `The command of the controller is not stated: ${fullReverse}, ${stop} and ${fullForward} µs with a dead band of ${deadBand} µs are taken (common practice, no source)`,
    needed: "its pulses for stop, full ahead and full astern, and its dead band",
    mend: "State them with the controller; its data sheet has them",
  });
}

function aheadOnly(because: string): Warning {
  return warning({
    code: "drive.control-ahead-only",
    where: "astern",
    found: `The table has no commands astern. ${because}`,
    needed: "",
    mend: "",
  });
}

function nothingAllowed({ voltage, ahead, astern }: ControlBlock): Warning[] {
  return [ahead, astern].flatMap((end) => {
    if (end === null || end.thrust !== 0) return [];
    return [
      warning({
        code: "drive.control-no-thrust",
        where: `${formatNumber(voltage)} V`,
        found: `At ${formatNumber(voltage)} V nothing can be commanded ${end === ahead ? "ahead" : "astern"}: ${end.endedBy === "full throttle" ? "the motor does not turn at full throttle" : `the limit “${end.endedBy}” is reached before the motor turns`}`,
        needed: "a voltage at which the thruster pushes within its limits",
        mend: "Leave this voltage out, or look at the limit that is named",
      }),
    ];
  });
}

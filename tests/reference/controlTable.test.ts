import { describe, expect, test } from "vitest";
import { commandToThrust, thrustToCommand } from "../../shared/drive/controlLookup.ts";
import { controlTable } from "../../shared/drive/controlTable.ts";
import { controlTableCsv } from "../../shared/drive/controlTableCsv.ts";
import { ControlTable, ControlTableRequest } from "../../shared/model/controlTable.ts";
import type { DriveTrainInput } from "../../shared/model/driveTrain.ts";
import { relative } from "../relative.ts";
import { TRAIN, trainWith } from "../unit/driveTrains.ts";

const tableOf = (more: Partial<DriveTrainInput> = {}, asked: object = {}) =>
  controlTable(ControlTableRequest.parse({ train: trainWith(more), ...asked }));
const codes = ({ warnings }: ControlTable) => warnings.map(({ code }) => code);

describe("the table of the base case", () => {
  const table = tableOf({}, { voltages: [16, 14, 15] });

  test("reaches full throttle ahead where three solvers put it", () => {
    // scipy brentq, fsolve and the quadratic: 51.3306902857 N at 998.6 kg/m³; here 15 °C, 999.103 kg/m³ (IAPWS SR6-08). At
    // constant torque coefficient thrust hardly feels the density: 0.06 % of it against 0.05 %.
    const last = table.blocks.at(-1)!.rows.at(-1)!;
    expect(last).toMatchObject({ command: 1900, throttle: 1, zone: "ahead" });
    expect(last.thrust).toSatisfy(relative(51.33, 1e-3));
    expect(60 * last.rotationRate).toSatisfy(relative(5068.6, 1e-3));
    expect(table.blocks.at(-1)!.ahead).toMatchObject({ endedBy: "full throttle", command: 1900 });
  });

  test("the throttle runs in a straight line from the end of the dead band", () => {
    // (1900 - 1525)/375 µs a throttle of 1: half throttle at 1712.5 µs.
    for (const { command, throttle, zone } of table.blocks[0]!.rows) {
      if (zone === "ahead") expect(command).toBeCloseTo(1525 + 375 * throttle, 9);
      if (zone === "astern") expect(command).toBeCloseTo(1475 + 375 * throttle, 9);
    }
  });

  test("the dead band and what does not turn the motor stand in rows of their own, without thrust", () => {
    const standing = table.blocks[0]!.rows.filter(({ zone }) => zone === "standing");
    expect(standing.map(({ command }) => command)).toEqual(expect.arrayContaining([1475, 1500, 1525]));
    expect(standing).toHaveLength(5);
    for (const { thrust, rotationRate } of standing) expect([thrust, rotationRate]).toEqual([0, 0]);
    // Friction holds the rotor up to I_0 (R_m + R_c) = 0.6 x 0.11 V, nearly 14 V at the bus: throttle 0.004715.
    const start = Math.max(...standing.map(({ throttle }) => throttle));
    expect(start).toSatisfy(relative(0.066 / 14, 1e-3));
  });

  test("outside the dead band thrust rises from row to row, in every block and both ways", () => {
    for (const { rows } of table.blocks) {
      rows.forEach((row, i) => {
        const before = rows[i - 1];
        if (before === undefined || (row.zone === "standing" && before.zone === "standing")) return;
        expect(row.thrust).toBeGreaterThan(before.thrust);
        expect(row.command).toBeGreaterThan(before.command);
      });
    }
    expect(table.blocks.map(({ voltage }) => voltage)).toEqual([14, 15, 16]);
  });

  test("thrust to command and command to thrust undo each other to rounding, at and between the voltages", () => {
    for (const voltage of [14, 14.3, 15, 15.77, 16]) {
      for (let command = 1102; command <= 1898; command += 3.7) {
        const thrust = commandToThrust(table, command, voltage);
        if (thrust === 0) continue;
        const back = thrustToCommand(table, thrust, voltage);
        expect(back.command).toSatisfy(relative(command, 1e-12));
        expect(back).toMatchObject({ cappedBy: null, thrust });
        expect(commandToThrust(table, back.command, voltage)).toSatisfy(relative(thrust, 1e-9));
      }
    }
  });

  test("no thrust is the stop pulse, and more than there is is the end with its reason", () => {
    expect(thrustToCommand(table, 0, 15)).toEqual({ command: 1500, thrust: 0, cappedBy: null });
    expect(commandToThrust(table, 1512, 15)).toBe(0);
    const most = thrustToCommand(table, 500, 15);
    expect(most).toMatchObject({ command: 1900, cappedBy: "full throttle" });
    expect(most.thrust).toBeCloseTo(commandToThrust(table, 1900, 15), 10);
    expect(thrustToCommand(table, -500, 15)).toMatchObject({ command: 1100, cappedBy: "full throttle" });
  });

  test.each([
    { ask: () => thrustToCommand(table, 5, 13), says: /13\.0 V lies outside the table.*14\.0 V/s },
    { ask: () => commandToThrust(table, 1950, 15), says: /1950 µs lies outside/ },
  ])("what lies outside is refused, $says", ({ ask, says }) => {
    expect(ask).toThrow(says);
  });

  test("straight lines between rows are within 0.2 % of the greatest thrust", () => {
    const fine = tableOf({}, { voltages: [16], steps: 200 });
    const most = fine.blocks[0]!.ahead.thrust;
    for (let command = 1530; command < 1900; command += 7) {
      const gap = commandToThrust(table, command, 16) - commandToThrust(fine, command, 16);
      expect(Math.abs(gap)).toBeLessThan(0.002 * most);
    }
  });
});

test("the table ends where a limit is reached, and more thrust is answered with that limit", () => {
  const table = tableOf({ motor: { ...TRAIN.motor, currentLimit: 12 } });
  const [block] = table.blocks;
  expect(block!.ahead.endedBy).toBe("motor current");
  expect(block!.rows.at(-1)!.motorCurrent).toBeCloseTo(12, 9);
  expect(block!.ahead.command).toBeLessThan(1900);
  expect(thrustToCommand(table, 40, 16)).toMatchObject({ cappedBy: "motor current", command: block!.ahead.command });
  expect(() => commandToThrust(table, 1900, 16)).toThrow(/a limit is reached/);
});

test("past the greatest power of the supply more throttle gives less, so the table ends there", () => {
  // U_oc 16 V behind 0.15 Ω: six thrusters at full throttle pull the bus below 8 V (solved outside: 7.41 V).
  const [block] = tableOf({ thrusters: 6, hotelPower: 10 }).blocks;
  expect(block!.ahead.endedBy).toBe("supply voltage");
  expect(block!.ahead.throttle).toBeLessThan(1);
});

test("a held bus voltage gives more than an open-circuit voltage, and its head says so", () => {
  const [open] = tableOf({}, { voltages: [16] }).blocks;
  const bus = tableOf({}, { voltages: [16], voltageKind: "bus" });
  expect(bus.blocks[0]!.ahead.thrust).toBeGreaterThan(1.2 * open!.ahead.thrust);
  expect(controlTableCsv(bus)).toMatch(/^Bus voltage \(V\),/);
});

test("without astern coefficients, or with a controller that can not reverse, the table ends at stop and says why", () => {
  const { astern: _astern, ...propeller } = TRAIN.propeller;
  const ahead = tableOf({ propeller });
  expect(codes(ahead)).toEqual(["drive.control-ahead-only"]);
  expect(ahead.warnings[0]!.message).toContain("Run it backwards on the stand");
  expect(ahead.blocks[0]!.astern).toBeNull();
  expect(ahead.blocks[0]!.rows[0]).toMatchObject({ command: 1500, thrust: 0 });
  expect(() => thrustToCommand(ahead, -1, 16)).toThrow(/thrust astern, and the table has none/);
  const oneWay = tableOf({ controller: { ...TRAIN.controller!, command: { fullReverse: null } } });
  expect(codes(oneWay)).toEqual(["drive.control-ahead-only"]);
  const estimated = tableOf(
    { propeller },
    { asternEstimate: { thrustShare: 0.7, torqueShare: 1, relativeUncertainty: 0.1 } },
  );
  expect(codes(estimated)).toEqual(["drive.astern-estimated"]);
  expect(estimated.blocks[0]!.astern!.thrust).toBeLessThan(0);
});

test("pulses that run the other way make the same table mirrored", () => {
  const command = { fullForward: 1100, fullReverse: 1900 };
  const mirrored = tableOf({ controller: { ...TRAIN.controller!, command } });
  const plain = tableOf();
  expect(mirrored.blocks[0]!.rows.map(({ thrust }) => thrust)).toEqual(
    plain.blocks[0]!.rows.map(({ thrust }) => thrust),
  );
  expect(thrustToCommand(mirrored, 20, 16).command + thrustToCommand(plain, 20, 16).command).toBeCloseTo(3000, 9);
  expect(commandToThrust(mirrored, 1300, 16)).toBeCloseTo(commandToThrust(plain, 1700, 16), 9);
});

test("without a stated command usual pulses are taken and told; impossible ones are refused", () => {
  const { command: _command, ...controller } = TRAIN.controller!;
  expect(codes(tableOf({ controller }))).toEqual(["drive.command-assumed"]);
  const wrong = (command: object) => () => tableOf({ controller: { ...controller, command } });
  expect(wrong({ fullForward: 1510 })).toThrow(/fullForward/);
  expect(wrong({ fullReverse: 1800 })).toThrow(/fullReverse/);
});

test("a voltage at which a limit stands before the first turn is told", () => {
  const table = tableOf({ supply: { pack: { ...TRAIN.supply.pack, leastVoltage: 12 } } }, { voltages: [10, 16] });
  expect(codes(table)).toEqual(["drive.control-no-thrust", "drive.control-no-thrust"]);
  expect(table.blocks[0]!.ahead).toMatchObject({ endedBy: "least supply voltage", thrust: 0 });
  expect(table.blocks[1]!.ahead.thrust).toBeGreaterThan(0);
});

test("a table for more volts than a part is rated for says so, whatever the pack has", () => {
  const controller = { ...TRAIN.controller!, voltageLimit: 17 };
  expect(codes(tableOf({ controller }, { voltages: [14, 16] }))).toEqual([]);
  expect(codes(tableOf({ controller }, { voltages: [16, 18] }))).toEqual(["drive.voltage-above-limit"]);
});

test("the text of a table holds every number of it, under one head with units", () => {
  const table = tableOf({}, { voltages: [14, 16], steps: 5 });
  expect(ControlTable.parse(table)).toEqual(table);
  const lines = controlTableCsv(table).trimEnd().split("\r\n");
  const [head, ...rows] = lines.map((line) => line.split(","));
  expect(head).toEqual([
    "Open-circuit voltage (V)",
    "Command (us)",
    "Throttle (%)",
    "Zone",
    "Thrust of one thruster (N)",
    "Standard uncertainty of thrust (N)",
    "Motor current (A)",
    "Supply current of all (A)",
    "Rotation rate (rpm)",
    "Electrical power of one thruster (W)",
    "Ended by",
  ]);
  const written = table.blocks.flatMap((block) => block.rows.map((row) => ({ ...row, voltage: block.voltage })));
  expect(rows).toHaveLength(written.length);
  rows.forEach((cells, i) => {
    const row = written[i]!;
    expect(Number(cells[0])).toBe(row.voltage);
    expect(Number(cells[1])).toSatisfy(relative(row.command, 1e-11));
    expect(Number(cells[4])).toSatisfy(relative(row.thrust, 1e-11));
    expect(Number(cells[8])).toSatisfy(relative(60 * row.rotationRate, 1e-11));
    expect(cells[3]).toBe(row.zone);
  });
  expect(rows.filter((cells) => cells[10] !== "")).toHaveLength(4);
});

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { commandToThrust, thrustToCommand } from "../../shared/drive/controlLookup.ts";
import { controlTable } from "../../shared/drive/controlTable.ts";
import { ControlTableRequest } from "../../shared/model/controlTable.ts";
import { Pack } from "../../shared/model/parts/pack.ts";
import { cellVoltage } from "../../shared/supply/chargeCurve.ts";
import { conductorResistance } from "../../shared/supply/conductor.ts";
import { packState } from "../../shared/supply/packState.ts";
import { TRAIN } from "../unit/driveTrains.ts";

const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("supply", () => {
  test("a fuller cell never has less voltage", () => {
    fc.assert(fc.property(share, share, (a, b) => cellVoltage(Math.min(a, b)) <= cellVoltage(Math.max(a, b))));
  });

  test("a colder pack never has less resistance, and twice the cells change twice the voltage", () => {
    const celsius = fc.double({ min: -39, max: 60, noNaN: true });
    fc.assert(
      fc.property(celsius, celsius, share, (a, b, charge) => {
        const pack = (series: number) =>
          Pack.parse({ name: "p", openCircuitVoltage: 3.7 * series, resistance: 0.02, cells: { series } });
        const at = (t: number) => packState(pack(4), { temperature: t + 273.15 }).resistance;
        expect(at(Math.min(a, b))).toBeGreaterThanOrEqual(at(Math.max(a, b)));
        const change = (series: number) => packState(pack(series), { charge }).openCircuitVoltage - 3.7 * series;
        expect(change(8)).toBeCloseTo(2 * change(4), 9);
      }),
    );
  });

  test("a lead has resistance in proportion to its length and against its pairs", () => {
    const length = fc.double({ min: 0.01, max: 1000, noNaN: true });
    fc.assert(
      fc.property(length, fc.integer({ min: 1, max: 50 }), fc.integer({ min: 0, max: 40 }), (metres, pairs, gauge) => {
        const size = { given: "gauge" as const, gauge };
        const one = conductorResistance({ length: 1, size, pairs: 1 }).value;
        expect(conductorResistance({ length: metres, size, pairs }).value).toBeCloseTo((one * metres) / pairs, 9);
      }),
    );
  });
});

describe("control table", () => {
  const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  /** Random motors, propellers, packs and dead bands. */
  const tables = fc
    .record({
      speedConstant: within(20, 200),
      resistance: within(0.02, 0.4),
      noLoadCurrent: within(0, 1.5),
      thrust: within(0.1, 0.5),
      torque: within(0.01, 0.06),
      supplyResistance: within(0, 0.4),
      deadBand: within(0, 100),
      currentLimit: within(2, 60),
      slack: within(1, 6),
    })
    .map(({ speedConstant, resistance, noLoadCurrent, currentLimit, ...other }) => {
      const request = ControlTableRequest.parse({
        train: {
          ...TRAIN,
          supply: { pack: { name: "pack", openCircuitVoltage: 16, resistance: other.supplyResistance } },
          controller: { name: "controller", resistance: 0.01, command: { deadBand: other.deadBand } },
          motor: { name: "motor", speedConstant, resistance, noLoadCurrent, currentLimit },
          propeller: {
            ...TRAIN.propeller,
            ahead: { thrustCoefficient: { value: other.thrust }, torqueCoefficient: { value: other.torque } },
          },
        },
        voltages: [16, 16 + other.slack],
        steps: 8,
      });
      return { table: controlTable(request), slack: other.slack };
    });

  test("rises outside the dead band, and command and thrust undo each other at any voltage between", () => {
    fc.assert(
      fc.property(tables, share, share, ({ table, slack }, ofCommand, ofVoltage) => {
        for (const { rows } of table.blocks) {
          rows.forEach((row, i) => {
            const before = rows[i - 1];
            if (before === undefined || (row.zone === "standing" && before.zone === "standing")) return;
            expect(row.thrust).toBeGreaterThan(before.thrust);
          });
        }
        const ends = table.blocks.map(({ rows }) => [rows[0]!.command, rows.at(-1)!.command] as const);
        const low = Math.max(...ends.map(([first]) => first));
        const high = Math.min(...ends.map(([, last]) => last));
        const voltage = 16 + ofVoltage * slack;
        const command = low + ofCommand * (high - low);
        const thrust = commandToThrust(table, command, voltage);
        if (thrust === 0) return;
        const back = thrustToCommand(table, thrust, voltage);
        expect(back.cappedBy).toBeNull();
        expect(commandToThrust(table, back.command, voltage)).toBeCloseTo(thrust, 7);
        expect(Math.abs(back.command - command)).toBeLessThan(1e-3);
      }),
      { numRuns: 60 },
    );
  });
});

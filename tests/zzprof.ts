import { vehicleFacts } from "/work/main/shared/vehicle/propulsion/vehicleNumbers.ts";
import { propulsionModel } from "/work/main/shared/vehicle/propulsion/propulsionModel.ts";
import { busDemand } from "/work/main/shared/vehicle/propulsion/busDemand.ts";
import { drawing, plannedLegs } from "/work/main/shared/vehicle/endurance/plan.ts";
import { batteryOf } from "/work/main/shared/vehicle/endurance/battery.ts";
import { needsOf } from "/work/main/shared/vehicle/endurance/needs.ts";
import { pullBook } from "/work/main/shared/vehicle/endurance/pullBook.ts";
import { vehicleEndurance } from "/work/main/shared/vehicle/endurance/enduranceAnswer.ts";
import { holdWish, swimWish } from "/work/main/shared/vehicle/endurance/wishes.ts";
import { missionRun, timesOf } from "/work/main/shared/vehicle/endurance/missionRun.ts";
import { drainOf } from "/work/main/shared/vehicle/endurance/drainOf.ts";
import { SIX_THRUSTERS, vehicleFrom } from "/work/main/tests/unit/vehicleExample.ts";
const pack = { ...SIX_THRUSTERS.supply.pack, charge: 36000, leastVoltage: 12, cells: { series: 4, parallel: 2, statedCharge: 0.95 } };
const v = vehicleFrom({ ...SIX_THRUSTERS, supply: { pack, temperature: 278 } } as never);
const facts = vehicleFacts(v); const model = propulsionModel(v, facts);
const { battery } = batteryOf(v, { reserve: 0.2 })!;
const time = (name: string, n: number, f: (i: number) => void) => { for (let i = 0; i < 30; i++) f(i + 1); const t = process.cpuUsage(); for (let i = 0; i < n; i++) f(i + 1); console.log(name, (process.cpuUsage(t).user / 1000 / n).toFixed(3), "ms cpu"); };
time("needs swim", 50, (i) => needsOf(model, pullBook(v), swimWish(v, model.numbers, 0.5 + i * 1e-3)));
time("needs hold", 50, (i) => needsOf(model, pullBook(v), holdWish(model.numbers, { speed: 0.3 + i * 1e-3, from: 1 })));
const n = needsOf(model, pullBook(v), swimWish(v, model.numbers, 0.6)); const h = needsOf(model, pullBook(v), holdWish(model.numbers, { speed: 0.5, from: 1 }));
time("bus swim", 50, (i) => busDemand(model, { direction: n.wrench, most: 1, velocity: n.wish.velocity, supply: { openCircuitVoltage: 14 + i * 0.01, resistance: 0.1 } }));
time("bus hold", 50, (i) => busDemand(model, { direction: h.wrench, most: 1, velocity: h.wish.velocity, supply: { openCircuitVoltage: 14 + i * 0.01, resistance: 0.1 } }));
time("bus hold most", 50, (i) => busDemand(model, { direction: h.wrench, velocity: h.wish.velocity, supply: { openCircuitVoltage: 14 + i * 0.01, resistance: 0.1 } }));
time("drain swim", 20, () => drainOf(model, battery, n));
time("drain hold", 20, () => drainOf(model, battery, h));
const legs = [{ leg: 0, needs: n, pace: 0, duration: 3000, draw: drainOf(model, battery, n) }, { leg: 0, needs: h, pace: 0, duration: 3000, draw: drainOf(model, battery, h) }] as never;
time("run", 50, () => missionRun(battery, legs));
time("times", 20, () => timesOf(battery, legs));
console.log((legs as any[]).map((l) => [l.draw.drain.table.solved, l.draw.drain.table.pieces.length]));
const ml = [
    { name: "out", kind: { does: "swim", speed: 0.6, extent: { by: "distance", distance: 60 } } },
    { name: "look", repeats: 4, kind: { does: "hold", duration: 300 } },
    { name: "up", kind: { does: "climb", speed: 0.15, distance: 5 } },
    { name: "push", kind: { does: "push", force: 8, duration: 120 } },
    { name: "rest", kind: { does: "rest", duration: 600 } },
  ];
const vm = vehicleFrom({ ...SIX_THRUSTERS, supply: { pack, temperature: 278 }, mission: { legs: ml } } as never);
time("all", 10, () => vehicleEndurance(vm));
time("all without mission", 10, () => vehicleEndurance(v));
const two = vehicleEndurance(vm);
console.log(two.sentence, two.speeds?.bestRange?.within, two.speeds?.points.map((p) => [p.speed.toFixed(3), p.power.toFixed(1), p.range.toFixed(0), p.endedBy].join(" ")));
console.log(two.holding?.sentence, two.holding?.cells.map((row) => row.map((c) => c.power?.toFixed(0) ?? c.state).join(" ")).join("\n"));

import { expect, test } from "vitest";
import { relative } from "../relative.ts";
import { SIX_THRUSTERS, TWO_THRUSTERS } from "../unit/vehicleExample.ts";
import { startedApp } from "./startedApp.ts";

test("a vehicle answers with its speed, and a drive that is not there is refused from its thruster", async () => {
  const { ask } = await startedApp();
  const { status, body } = await ask("POST", "/api/compute/vehicle", { vehicle: TWO_THRUSTERS });
  expect(status).toBe(200);
  // scipy brentq and fsolve for 998.6 kg/m³; fresh water of 18 °C has it to 2e-6.
  expect(body.motions[0].speed.value).toSatisfy(relative(1.9497862674, 1e-5));
  const thrusters = [{ ...TWO_THRUSTERS.thrusters[0], drive: "bow" }];
  const wrong = await ask("POST", "/api/compute/vehicle", { vehicle: { ...TWO_THRUSTERS, thrusters } });
  expect(wrong.status).toBe(422);
  expect(wrong.body.code).toBe("vehicle.no-such-drive");
});

test("drag, layout and tether answer by themselves", async () => {
  const { ask } = await startedApp();
  const drag = await ask("POST", "/api/compute/vehicle-drag", { drag: SIX_THRUSTERS.drag, water: SIX_THRUSTERS.water });
  expect(drag.status).toBe(200);
  expect(drag.body.surge.forward.dragArea.value).toBe(0.055);
  const limit = { value: 10 };
  const thrusters = TWO_THRUSTERS.thrusters.map(({ drive: _drive, ...one }) => ({
    ...one,
    limits: { forward: limit, reverse: limit },
  }));
  const layout = await ask("POST", "/api/compute/vehicle-layout", { thrusters });
  expect(layout.status).toBe(200);
  expect(layout.body.reach[0].ways[0].greatest.value.value).toSatisfy(relative(20, 1e-9));
  const tether = await ask("POST", "/api/compute/tether", {
    // Catenary on its side, 60 m over 50 m square to 1 m/s (Pode, DTMB report 687 (1951), closed form).
    tether: { diameter: 0.006, length: 60, tangentialDragCoefficient: 0 },
    surroundings: { density: 1025, current: { kind: "uniform", speed: 1, direction: 0 } },
    vehicle: { depth: 0 },
    given: { what: "upperEnd", upperEnd: { forward: 0, starboard: 50 } },
  });
  expect(tether.status).toBe(200);
  expect(tether.body.forceOnVehicle.forward.value).toSatisfy(relative(68.2231894959, 1e-7));
});

test("what can not be a vehicle is refused with where, what and how to mend, never with a trace", async () => {
  const { ask } = await startedApp();
  const [first, second] = TWO_THRUSTERS.thrusters;
  const surge = (dragArea: number) => ({ surge: { forward: { drag: { from: "typed", dragArea } } } });
  const tether = { cable: { diameter: 0.006 } };
  const cases = [
    { change: { drag: surge(0) }, code: "request.too-small", where: "vehicle.drag.surge.forward.drag.dragArea" },
    { change: { mass: { value: -3 } }, code: "vehicle.mass", where: "mass" },
    { change: { hotelPower: { value: -1 } }, code: "vehicle.number-range", where: "hotelPower.value" },
    {
      change: { thrusters: [{ ...first, direction: { x: 0, y: 0, z: 0 } }, second] },
      ...{ code: "vehicle.layout-zero-direction", where: "thrusters.0.direction" },
    },
    {
      change: { tether, scenario: { depth: 30, tetherLength: 20 } },
      ...{ code: "vehicle.tether-too-short", where: "scenario.tetherLength" },
    },
  ];
  for (const { change, code, where } of cases) {
    const { status, body } = await ask("POST", "/api/compute/vehicle", { vehicle: { ...TWO_THRUSTERS, ...change } });
    expect({ isRefused: status >= 400 && status < 500, code: body.code, where: body.where }).toEqual({
      ...{ isRefused: true, code, where },
    });
    expect(body.needed, code).not.toBe("");
    expect(JSON.stringify(body)).not.toMatch(/NaN|\bat .*\.ts:/);
  }
});

test("thrusters on one line and a supply that fails are answered, with what is wrong", async () => {
  const { ask } = await startedApp();
  const thrusters = TWO_THRUSTERS.thrusters.map((one) => ({ ...one, position: { x: 0, y: 0, z: 0 } }));
  const line = await ask("POST", "/api/compute/vehicle", { vehicle: { ...TWO_THRUSTERS, thrusters } });
  expect(line.status).toBe(200);
  const codes = line.body.warnings.map(({ code }: { code: string }) => code);
  expect(codes).toEqual(expect.arrayContaining(["vehicle.layout-through-centre", "vehicle.layout-same-place"]));
  const dead = await ask("POST", "/api/compute/vehicle", { vehicle: { ...TWO_THRUSTERS, hotelPower: { value: 900 } } });
  expect(dead.status).toBe(200);
  expect(dead.body.sentence).toMatch(/^It can not be driven ahead: the supply can not even feed/);
});

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

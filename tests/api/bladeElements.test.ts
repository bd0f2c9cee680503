import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { startedApp } from "./startedApp.ts";

const TABLE = readFileSync(new URL("../../samples/blades/dabchick-76mm.csv", import.meta.url), "utf8");
const FRESH = { kind: "fresh", temperature: 291.15 };

test("a pasted table becomes a blade, and blade elements run it at rest, at speed and backwards", async () => {
  const { ask } = await startedApp();
  const shaped = await ask("POST", "/api/compute/blade-geometry", { from: "table", text: TABLE, bladeCount: 3 });
  expect(shaped.status).toBe(200);
  expect(shaped.body.geometry.diameter).toBeCloseTo(0.076, 12);
  const points = [{ rotationRate: 70 }, { rotationRate: 70, advanceSpeed: 3 }, { rotationRate: -70 }];
  const { status, body } = await ask("POST", "/api/compute/blade-elements", {
    geometry: shaped.body.geometry,
    fluid: FRESH,
    points,
  });
  expect(status).toBe(200);
  const [rest, ahead, astern] = body.points;
  expect(rest.efficiency).toBe(0);
  expect(rest.power.shaft).toBeCloseTo(2 * Math.PI * 70 * rest.torque, 9);
  expect(ahead.thrust).toBeLessThan(rest.thrust);
  expect(ahead.advanceRatio).toBeCloseTo(3 / (70 * 0.076), 12);
  expect(astern.thrust).toBeLessThan(0);
  expect(astern.power.shaft).toBeGreaterThan(0);
});

test("a blade that can not be is a 422 that names the station", async () => {
  const { ask } = await startedApp();
  const wrong = { from: "table", text: TABLE.replace("20,16.8", "20,-16.8"), bladeCount: 3 };
  const { status, body } = await ask("POST", "/api/compute/blade-geometry", wrong);
  expect(status).toBe(422);
  expect(body).toMatchObject({ code: "propeller.station-chord", where: "stations[4].chord" });
});

test("a plain outline and a polar are made into documents that blade elements take", async () => {
  const { ask } = await startedApp();
  const outline = { outline: "elliptic", pitchRatio: 0.9, areaRatio: 0.2, thicknessRatio: 0.1, camberRatio: 0.02 };
  const shaped = await ask("POST", "/api/compute/blade-geometry", {
    from: "outline",
    bladeCount: 2,
    diameter: 0.1,
    hubDiameter: 0.02,
    ...outline,
  });
  const polar = await ask("POST", "/api/compute/section-polar", {
    text: "alpha (deg),C_L,C_D\n-8,-0.6,0.05\n0,0.2,0.02\n8,1.0,0.03\n14,1.2,0.1\n",
  });
  expect(polar.status).toBe(200);
  const { status, body } = await ask("POST", "/api/compute/blade-elements", {
    geometry: shaped.body.geometry,
    polars: polar.body,
    surface: { roughness: 2e-5 },
    fluid: FRESH,
    points: [{ rotationRate: 30 }],
  });
  expect(status).toBe(200);
  expect(body.points[0].warnings.map(({ code }: { code: string }) => code)).toEqual([
    "propeller.polar-beyond-angles",
    "propeller.roughness-unused",
  ]);
});

test("the evidence gives measured and computed coefficients side by side", async () => {
  const { ask } = await startedApp();
  const { status, body } = await ask("GET", "/api/compute/blade-elements/evidence");
  expect(status).toBe(200);
  // Deters, Ananda & Selig, AIAA 2014-2151: the 5 in propeller at 5533 rpm has C_T0 0.1226.
  const point = body.heldBack.find(
    ({ rotationRate }: { rotationRate: number }) => Math.abs(rotationRate - 5533 / 60) < 1e-9,
  );
  expect(point.measured.thrustCoefficient).toBe(0.1226);
});

test("a propeller that does not turn is a 422 that says so", async () => {
  const { ask } = await startedApp();
  const shaped = await ask("POST", "/api/compute/blade-geometry", { from: "table", text: TABLE, bladeCount: 3 });
  const request = { geometry: shaped.body.geometry, fluid: FRESH, points: [{ rotationRate: 0, advanceSpeed: 1 }] };
  const { status, body } = await ask("POST", "/api/compute/blade-elements", request);
  expect(status).toBe(422);
  expect(body.detail).toContain("rotation rate is 0 rev/s");
});

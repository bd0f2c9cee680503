import { expect, test } from "vitest";
import { startedApp } from "./startedApp.ts";

const B4_70 = { family: "wageningen-b", blades: 4, areaRatio: 0.7, pitchRatio: 1 };

test("the curve of a B screw begins at its bollard coefficients and ends where its thrust does", async () => {
  const { ask } = await startedApp();
  const { status, body } = await ask("POST", "/api/compute/series", { series: B4_70 });
  expect(status).toBe(200);
  // Oosterveld & van Oossanen 1975, table 5, evaluated independently: B4-70, P/D 1.0, K_T 0.4547 and 10 K_Q 0.6754 at rest,
  // no thrust from J = 1.0618, best efficiency 0.6946 at J = 0.842.
  expect(body.points[0].thrustCoefficient).toBeCloseTo(0.4547, 4);
  expect(10 * body.points[0].torqueCoefficient).toBeCloseTo(0.6754, 4);
  expect(body.zeroThrust).toBeCloseTo(1.0618, 4);
  expect(body.peak.efficiency).toBeCloseTo(0.6946, 4);
  expect(body.points.at(-1).thrustCoefficient).toBeCloseTo(0, 9);
});

test.each([
  { series: { ...B4_70, pitchRatio: 1.6 }, field: "series.pitchRatio", needed: "0.5 to 1.4" },
  { series: { ...B4_70, areaRatio: 0.2 }, field: "series.areaRatio", needed: "0.3 to 1.05" },
  { series: { family: "ka-4-70-19a", pitchRatio: 0.5 }, field: "series.pitchRatio", needed: "0.6 to 1.4" },
])(
  "a series propeller outside its tests is refused by field, $field, and computed with a flag where asked for",
  async (row) => {
    const { ask } = await startedApp();
    const refused = await ask("POST", "/api/compute/series", { series: row.series });
    expect(refused.status).toBe(422);
    expect(refused.body).toMatchObject({ code: "propeller.series-range", where: row.field });
    expect(refused.body.detail).toContain(`Needed: ${row.needed}`);
    const asked = await ask("POST", "/api/compute/series", { series: row.series, outsideRange: true });
    expect(asked.status).toBe(200);
    expect(asked.body.warnings[0]).toMatchObject({ code: "propeller.series-range", where: row.field });
  },
);

test("an area ratio far outside, without thrust at all, is refused even where numbers outside are asked for", async () => {
  const { ask } = await startedApp();
  const series = { ...B4_70, areaRatio: 2, pitchRatio: 0.05 };
  const { status, body } = await ask("POST", "/api/compute/series", { series, outsideRange: true });
  expect(status).toBe(422);
  expect(body.code).toBe("propeller.series-no-thrust");
});

test("the sections of a B screw come with the outline of the table", async () => {
  const { ask } = await startedApp();
  const { status, body } = await ask("POST", "/api/compute/series-geometry", { series: B4_70, diameter: 0.1 });
  expect(status).toBe(200);
  // Oosterveld & van Oossanen 1975, table 1: K_r 2.144 at 0.7 R with four blades, c = K_r (A_E/A_0) D/Z.
  expect(body.stations[5].chord).toBeCloseTo((2.144 * 0.7 * 0.1) / 4, 12);
  expect(body.bladeCount).toBe(4);
});

test("the best pitch makes the thrust that was asked for, and a flag tells of the small blade", async () => {
  const { ask } = await startedApp();
  const { status, body } = await ask("POST", "/api/compute/best-pitch", {
    series: { family: "wageningen-b", blades: 3, areaRatio: 0.5 },
    duty: { given: "thrust", thrust: 25 },
    fixed: { given: "diameter", diameter: 0.076 },
    advanceSpeed: 1.5,
    density: 998.6,
    kinematicViscosity: 1.05e-6,
  });
  expect(status).toBe(200);
  expect(body).toMatchObject({ state: "found", kind: "optimum" });
  expect(body.best.thrust).toBeCloseTo(25, 9);
  expect(body.warnings.map(({ code }: { code: string }) => code)).toContain("propeller.series-yardstick");
});

test("cavitation asks for water, and answers in a sentence", async () => {
  const { ask } = await startedApp();
  const thruster = { thrust: 20, rotationRate: 50, diameter: 0.076, blades: 3, areaRatio: 0.5, pitchRatio: 0.8 };
  const water = { ...thruster, shaftImmersion: 0.6, fluid: { kind: "fresh", temperature: 288.15 } };
  const { status, body } = await ask("POST", "/api/compute/cavitation", water);
  expect(status).toBe(200);
  expect(body.answer).toMatch(/^[A-Z].*\.$/);
  const air = { kind: "air", temperature: 288.15, pressure: 101325, humidity: 0.5 };
  const refused = await ask("POST", "/api/compute/cavitation", { ...water, fluid: air });
  expect(refused.body).toMatchObject({ code: "propeller.cavitation-in-air", where: "fluid" });
});

test("a propeller carried over to where it was measured keeps its coefficients and makes the thrust it made", async () => {
  const { ask } = await startedApp();
  const side = { fluid: { kind: "fresh", temperature: 291.15 }, rotationRate: 45, diameter: 0.076 };
  const { status, body } = await ask("POST", "/api/compute/carry-over", {
    measured: { ...side, thrustCoefficient: { value: 0.25 }, torqueCoefficient: { value: 0.03 } },
    target: side,
    blade: { bladeCount: 3, chordRatio: 0.28, pitchRatio: 0.9 },
  });
  expect(status).toBe(200);
  expect(body.thrustCoefficient).toMatchObject({ value: 0.25, standardUncertainty: 0 });
  expect(body.thrust.value).toBeCloseTo(0.25 * 998.598 * 45 ** 2 * 0.076 ** 4, 3);
});

test("thrust at speed chooses the most trusted curve that is given and says why; past its end a point says so", async () => {
  const { ask } = await startedApp();
  const request = {
    bollard: { thrustCoefficient: { value: 0.25, standardUncertainty: 0.003 }, torqueCoefficient: { value: 0.03 } },
    diameter: 0.076,
    density: 998.6,
    series: { ...B4_70, pitchRatio: 0.8 },
    fixed: { given: "rotationRate", rotationRate: 45 },
    speeds: [0, 1, 4],
  };
  const { status, body } = await ask("POST", "/api/compute/thrust-at-speed", request);
  expect(status).toBe(200);
  expect(body.source).toBe("series");
  expect(body.points.map(({ state }: { state: string }) => state)).toEqual(["solved", "solved", "failed"]);
  const wrong = await ask("POST", "/api/compute/thrust-at-speed", { ...request, use: "openWater" });
  expect(wrong.body).toMatchObject({ code: "propeller.no-such-curve", where: "use" });
});

test.each(["series", "best-pitch", "cavitation", "carry-over", "thrust-at-speed"])(
  "an empty request for %s is refused with the field that is missing",
  async (what) => {
    const { ask } = await startedApp();
    const { status, body } = await ask("POST", `/api/compute/${what}`, {});
    expect(status).toBe(400);
    expect(body.problems[0].where).toMatch(/\w/);
  },
);

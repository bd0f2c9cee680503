import { expect, test } from "vitest";
import { startedApp } from "./startedApp.ts";

const SERIES = '{"family":"wageningen-b","blades":3,"areaRatio":0.5,"pitchRatio":0.9}';
const REST = '{"thrustCoefficient":{"value":0.28},"torqueCoefficient":{"value":0.0475}}';
const FRESH = '{"kind":"fresh","temperature":291.15}';
const STATION = '"chord":0.012,"pitchAngle":0.4,"thickness":0.002,"camber":0.0004';
const GEOMETRY = `{"bladeCount":3,"diameter":0.08,"hubDiameter":0.016,"stations":[{"radius":0.01,${STATION}},{"radius":0.04,${STATION}}]}`;

/** As text, since a document of JavaScript can not carry what is no number of JSON. */
const bodies = (put: string) => [
  { url: "series", field: "reynolds", text: `{"series":${SERIES},"reynolds":${put}}` },
  {
    url: "best-pitch",
    field: "advanceSpeed",
    text: `{"series":{"family":"ka-4-70-19a"},"duty":{"given":"thrust","thrust":9},"fixed":{"given":"diameter","diameter":0.1},"density":1000,"advanceSpeed":${put}}`,
  },
  {
    url: "thrust-at-speed",
    field: "speeds",
    text: `{"bollard":${REST},"diameter":0.1,"density":1000,"fixed":{"given":"rotationRate","rotationRate":50},"speeds":[0,${put}]}`,
  },
  {
    url: "blade-elements",
    field: "rotationRate",
    text: `{"geometry":${GEOMETRY},"fluid":${FRESH},"points":[{"rotationRate":${put}}]}`,
  },
  {
    url: "bollard-estimate",
    field: "staticMerit",
    text: `{"duty":{"given":"shaftPower","shaftPower":100},"diameter":0.1,"density":1000,"staticMerit":${put}}`,
  },
];

async function answerTo({ url, text }: { readonly url: string; readonly text: string }) {
  const { app } = await startedApp();
  const headers = { host: "localhost", "content-type": "application/json" };
  const response = await app.inject({ method: "POST", url: `/api/compute/${url}`, headers, payload: text });
  return { status: response.statusCode, body: response.json() };
}

// JSON has no infinity, but 1e999 is a number of its grammar (RFC 8259, 6) that overflows to one.
test.each(bodies("1e999"))("$url refuses a number too large for any computer by its field, $field", async (row) => {
  const { status, body } = await answerTo(row);
  expect(status).toBe(400);
  expect(JSON.stringify(body)).toContain(row.field);
  expect(body.detail).not.toMatch(/NaN|undefined|invalid/i);
});

test.each(bodies("NaN"))("$url refuses what is no JSON, in words", async (row) => {
  const { status, body } = await answerTo(row);
  expect(status).toBe(400);
  expect(body.detail.length).toBeGreaterThan(20);
});

test("a flow in which the propeller does not turn is refused by its place in the sweep", async () => {
  const text = `{"geometry":${GEOMETRY},"fluid":${FRESH},"points":[{"rotationRate":50},{"rotationRate":0}]}`;
  const { status, body } = await answerTo({ url: "blade-elements", text });
  expect(status).toBe(422);
  expect(body).toMatchObject({ code: "propeller.not-turning", where: "points[1].rotationRate" });
});

test("input out of any scale is refused, and no answer has a hole where a number should be", async () => {
  const text = `{"geometry":${GEOMETRY},"fluid":${FRESH},"points":[{"rotationRate":1e200}]}`;
  const { status, body } = await answerTo({ url: "blade-elements", text });
  expect(status).toBe(422);
  expect(body.code).toBe("quantity.beyond-numbers");
});

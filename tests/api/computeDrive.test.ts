import { expect, test } from "vitest";
import { commandToThrust } from "../../shared/drive/controlLookup.ts";
import { relative } from "../relative.ts";
import { TRAIN } from "../unit/driveTrains.ts";
import { startedApp } from "./startedApp.ts";

const WATER = { kind: "fresh", temperature: 291.15 };

test("a drive train answers with its point, the request it made, the supply and what it rests on", async () => {
  const { ask } = await startedApp();
  const train = { ...TRAIN, water: WATER };
  const { status, body } = await ask("POST", "/api/compute/drive-train", { train, running: { throttle: 0.6 } });
  expect(status).toBe(200);
  // scipy brentq and fsolve for 998.6 kg/m³; fresh water of 18 °C has it to 2e-6.
  expect(body.point.thrust).toSatisfy(relative(28.2507584908, 1e-5));
  expect(body.point.uncertainties.thrust.standardUncertainty).toBeGreaterThan(0);
  expect(body.supply).toMatchObject({ openCircuitVoltage: 16, resistance: 0.15 });
  expect(body.grounds.map(({ about }: { about: string }) => about)).toEqual(["heat", "cavitation", "ventilation"]);
  const again = await ask("POST", "/api/compute/operating-point", body.request);
  expect(again.body).toEqual(body.point);
});

test("astern without coefficients is refused with what to measure", async () => {
  const { ask } = await startedApp();
  const { astern: _astern, ...propeller } = TRAIN.propeller;
  const running = { throttle: 1, direction: "astern" };
  const { status, body } = await ask("POST", "/api/compute/drive-train", { train: { ...TRAIN, propeller }, running });
  expect(status).toBe(422);
  expect(body).toMatchObject({ code: "drive.no-astern-coefficients", where: "train.propeller.astern" });
  expect(body.detail).toMatch(/backwards on the stand/);
});

test("a control table is asked for by its voltages, and what it says of a command is found again", async () => {
  const { ask } = await startedApp();
  const { status, body } = await ask("POST", "/api/compute/control-table", {
    train: TRAIN,
    voltages: [15, 16],
    steps: 10,
  });
  expect(status).toBe(200);
  expect(body.blocks.map(({ voltage }: { voltage: number }) => voltage)).toEqual([15, 16]);
  expect(body.blocks[1].ahead).toMatchObject({ command: 1900, endedBy: "full throttle" });
  expect(commandToThrust(body, 1900, 16)).toBe(body.blocks[1].ahead.thrust);
});

test("wire and fuse come with a sentence of caution, and say what they can not meet", async () => {
  const { ask } = await startedApp();
  const asked = { continuousCurrent: 20, length: 0.5, voltage: 16 };
  const { status, body } = await ask("POST", "/api/compute/wire-and-fuse", asked);
  expect(status).toBe(200);
  expect(body).toMatchObject({ fuse: 25, warnings: [] });
  expect(body.sentences.join(" ")).toMatch(/local codes/i);
  const weak = await ask("POST", "/api/compute/wire-and-fuse", { ...asked, packCurrent: 22 });
  expect(weak.body.warnings[0].code).toBe("supply.fuse-above-pack");
});

test.each(["drive-train", "control-table", "wire-and-fuse"])(
  "an empty request for %s is refused with the field that is missing",
  async (what) => {
    const { ask } = await startedApp();
    const { status, body } = await ask("POST", `/api/compute/${what}`, {});
    expect(status).toBe(400);
    expect(body.problems[0].where).toMatch(/\w/);
  },
);

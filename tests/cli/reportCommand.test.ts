import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { DEMO } from "../../samples/demo.ts";
import { readLogFile } from "../../server/intake/readLogFile.ts";
import { reduceRun } from "../../shared/bench/reduceRun.ts";
import { Controller } from "../../shared/model/parts/controller.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import type { Run } from "../../shared/model/run.ts";
import { reduceCommand } from "../../web/views/report/sections/reduceCommand.ts";
import { runCli } from "./runCli.ts";

const LOGS = fileURLToPath(new URL("../../samples/logs/", import.meta.url));

/** A run of the demonstration with its parts, as a project keeps them; identities are the keys of the parts. */
function demoRun(file: string) {
  const made = DEMO.runs.find((one) => one.file === file)!;
  const kept = <T>(id: string, document: T) => [{ id, version: 1, createdAt: "", updatedAt: "", document }];
  const propeller = Propeller.parse(DEMO.propellers[made.propeller!]);
  const motor = Motor.parse(DEMO.motors[made.motor]);
  const controller = Controller.parse(DEMO.controllers[made.controller]);
  const none = { packs: [], tethers: [], gears: [], instruments: [] };
  const parts = {
    ...none,
    propellers: kept("propeller", propeller),
    motors: kept("motor", motor),
    controllers: kept("controller", controller),
  };
  const recipe = { ...Recipe.parse(made.recipe), motorId: "motor", controllerId: "controller" };
  const run = { name: made.name, purpose: "propeller", propellerId: "propeller", file: { name: file }, recipe };
  return { parts, run: run as unknown as Run, propeller, motor, controller, recipe };
}

/** Words of a command as a shell parts them. */
const wordsOf = (command: string) =>
  [...command.matchAll(/(?:[^\s"]|"[^"]*")+/g)].map(([word]) => word.replaceAll('"', ""));

test.each(["pitch-1-0.csv", "tow-pitch-1-0.csv"])(
  "the command that a report prints for %s gives the coefficient of the run, interval and all",
  async (file) => {
    const { parts, run, propeller, motor, controller, recipe } = demoRun(file);
    const path = `${LOGS}${file}`;
    const { words, unstated } = reduceCommand(parts, run);
    const { stdout, stderr } = await runCli(...wordsOf(words).map((word) => (word === file ? path : word)), "--json");
    expect(stderr).toBe("");
    const table = await readLogFile(path, file);
    const source = { sha256: "0".repeat(64), program: "test" };
    const expected = reduceRun({ table, recipe, propeller, motor, controller, source }).thrustCoefficient;
    const { thrustCoefficient: found } = JSON.parse(stdout);
    const digits = (of: typeof expected) => [of.value, ...of.interval95].map((value) => value.toPrecision(8));
    expect(digits(found)).toEqual(digits(expected));
    expect(words).toMatch(/--calibration-uncertainty 0\.[46]%/);
    expect(unstated.join()).toContain("the uncertainty of the factor of");
  },
);

test("what no option states is named", () => {
  const { parts, run } = demoRun("kitchen-scale.txt");
  const { words, unstated } = reduceCommand(parts, run);
  expect(words).toContain("--factor thrust=1.25 --calibration-uncertainty 1%");
  expect(words).toContain("--no-tare");
  expect(unstated.filter((what) => what.startsWith("the smallest step of"))).toHaveLength(2);
});

import { describe, expect, test } from "vitest";
import { DEMO, propellerRuns } from "../../samples/demo.ts";
import { deadWeightTable } from "../../samples/generator/deadWeights.ts";
import { TRUE_PROPELLERS } from "../../samples/generator/truth.ts";
import { Instrument } from "../../shared/model/instrument.ts";
import { PART_SCHEMAS } from "../../shared/model/parts/partKinds.ts";
import { Project } from "../../shared/model/project.ts";
import { Recipe } from "../../shared/model/recipe.ts";
import { VehicleBuild } from "../../shared/model/vehicle/vehicleBuild.ts";

describe("the demonstration project", () => {
  test("says that it is invented", () => {
    expect(Project.parse(DEMO.project)).toMatchObject({ name: "Dabchick", invented: true });
  });

  test.each(["propellers", "motors", "controllers", "packs", "tethers", "gears", "instruments"] as const)(
    "has %s that fit their schema",
    (kind) => {
      const parts = Object.values(DEMO[kind]);
      expect(parts.length).toBeGreaterThan(0);
      for (const part of parts) expect(PART_SCHEMAS[kind].safeParse(part).error?.issues ?? []).toEqual([]);
    },
  );

  test.each(DEMO.runs.map((run) => ({ ...run })))("run $file names parts that exist and has a whole recipe", (run) => {
    if (run.propeller !== undefined) expect(Object.keys(DEMO.propellers)).toContain(run.propeller);
    else expect(run.purpose).toMatch(/^noLoad/);
    expect(Object.keys(DEMO.motors)).toContain(run.motor);
    expect(Object.keys(DEMO.controllers)).toContain(run.controller);
    if (run.thrustInstrument) expect(Object.keys(DEMO.instruments)).toContain(run.thrustInstrument);
    expect(Recipe.safeParse(run.recipe).error?.issues ?? []).toEqual([]);
  });

  test.each(DEMO.vehicles.map((vehicle) => ({ ...vehicle })))("vehicle $name names parts that exist", (vehicle) => {
    const { drives, thrusters, supply, tether } = VehicleBuild.parse(vehicle);
    for (const { motorId, controllerId, gearId } of drives) {
      expect(DEMO.motors).toHaveProperty(motorId);
      if (controllerId !== undefined) expect(DEMO.controllers).toHaveProperty(controllerId);
      if (gearId !== undefined) expect(DEMO.gears).toHaveProperty(gearId);
    }
    const variants = DEMO.runs.map(({ variant }) => variant);
    for (const { propeller } of drives) if (propeller.from === "named") expect(variants).toContain(propeller.name);
    for (const { drive } of thrusters) expect(drives.map(({ name }) => name)).toContain(drive);
    expect(DEMO.packs).toHaveProperty(supply.packId);
    expect(DEMO.tethers).toHaveProperty(tether!.tetherId);
  });

  test("holds the dead-weight table that the generator reads off its stand", () => {
    const { calibration } = Instrument.parse(DEMO.instruments["beamCell"]);
    expect(calibration).toMatchObject({ kind: "deadWeights", points: deadWeightTable() });
  });

  test("has each mounting of a variant once", () => {
    const mountings = propellerRuns(DEMO).map((run) => `${run.variant}/${run.mounting}`);
    expect(new Set(mountings).size).toBe(mountings.length);
  });

  test("does not give the true coefficients away", () => {
    const numbers: unknown[] = [];
    JSON.parse(JSON.stringify(DEMO), (_, value) => (typeof value === "number" ? numbers.push(value) : value));
    expect(numbers.length).toBeGreaterThan(100);
    for (const { thrustCoefficient, torqueCoefficient } of Object.values(TRUE_PROPELLERS)) {
      // A bare shaft has none to give away.
      if (thrustCoefficient === 0) continue;
      expect(numbers).not.toContain(thrustCoefficient);
      expect(numbers).not.toContain(torqueCoefficient);
    }
  });
});

import { describe, expect, test } from "vitest";
import { controlTable } from "../../shared/drive/controlTable.ts";
import { driveTrainPoint } from "../../shared/drive/driveTrainPoint.ts";
import { ControlTableRequest } from "../../shared/model/controlTable.ts";
import { DriveTrain, type DriveTrainInput } from "../../shared/model/driveTrain.ts";
import { DriveRunning } from "../../shared/model/driveTrainPoint.ts";

const TRAIN: DriveTrainInput = {
  supply: { pack: { name: "Pack", openCircuitVoltage: 14.8, resistance: 0.04 } },
  motor: {
    ...{ name: "Motor", speedConstant: 50, resistance: 0.11, noLoadCurrent: 0.5, thermalResistance: 1.5 },
    temperatureLimit: 300.15,
  },
  propeller: {
    ...{ name: "Propeller", diameter: { value: 0.1 }, areaRatio: 0.5, pitchRatio: 0.9 },
    ahead: { thrustCoefficient: { value: 0.3 }, torqueCoefficient: { value: 0.035 } },
  },
  water: { kind: "fresh", temperature: 291.15 },
};
const point = (change: Partial<DriveTrainInput> = {}) =>
  driveTrainPoint({ train: DriveTrain.parse({ ...TRAIN, ...change }), running: DriveRunning.parse({ throttle: 1 }) });
const groundOf = (about: string, change: Partial<DriveTrainInput>) =>
  point(change).grounds.find((ground) => ground.about === about)!.text;

describe("a shaft so shallow that the blade tips reach the surface", () => {
  test.each([0, 0.03, 0.05])("at %f m air is drawn in at any rotation rate", (depth) => {
    expect(groundOf("ventilation", { depth })).toContain("at any rotation rate");
  });

  test("leaves nothing to command, and the table says so", () => {
    const table = controlTable(ControlTableRequest.parse({ train: { ...TRAIN, depth: 0.05 } }));
    expect(table.blocks[0]!.ahead).toMatchObject({ thrust: 0, endedBy: "ventilation" });
    expect(table.warnings.map(({ code }) => code)).toContain("drive.control-no-thrust");
  });
});

test("in air the limits of the water are left out because it is air, also where a depth is stated", () => {
  const air = { kind: "air", temperature: 293.15, pressure: 101325, humidity: 0.5 } as const;
  expect(groundOf("cavitation", { water: air, depth: 1 })).toBe("Cavitation is left out: the propeller runs in air.");
});

test("a pitch beyond the straight line of the projected area leaves cavitation out instead of never reached", () => {
  const propeller = { ...TRAIN.propeller, pitchRatio: 5 };
  expect(groundOf("cavitation", { propeller, depth: 1 })).toMatch(/left out: at a pitch ratio 5\.00, above 2/);
});

test("limits are told in °C and rpm", () => {
  const messages = point({ depth: 0.12 }).point.warnings.map(({ message }) => message);
  expect(messages.find((text) => text.startsWith("winding temperature"))).toMatch(/is \d+\.?\d* °C.*at most 27\.0 °C/);
  expect(messages.find((text) => text.startsWith("ventilation"))).toMatch(/is \d+ rpm.*at most \d+ rpm/);
});

test("a supply that the hotel load alone brings down does not ask for less throttle", () => {
  expect(() => point({ hotelPower: 3000 })).toThrow(/hotel load and controllers of 3000 W, with the thrusters at rest/);
  expect(() => point({ hotelPower: 3000 })).not.toThrow(/Open the throttle less/);
});

test("a diameter of 0 is refused by its field", () => {
  const propeller = { ...TRAIN.propeller, diameter: { value: 0 } };
  expect(() => point({ propeller, depth: 1 })).toThrow(/^propeller\.diameter\.value: .*“Propeller” is 0 m/);
});

test("an efficiency that nothing lowers has no doubt left by rounding", () => {
  const ideal = {
    name: "Ideal",
    speedConstant: 50,
    resistance: 0,
    noLoadCurrent: 0,
    uncertainties: { speedConstant: 1 },
  };
  const { uncertainties } = point({ motor: ideal }).point;
  expect(uncertainties!.efficiency!.standardUncertainty).toBe(0);
  expect(uncertainties!.thrust!.standardUncertainty).toBeGreaterThan(0);
});

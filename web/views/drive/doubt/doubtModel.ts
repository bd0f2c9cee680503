import { operatingPoint } from "../../../../shared/drive/operatingPoint.ts";
import type { DriveRequest, UncertainInput } from "../../../../shared/model/drive.ts";

/** What each doubtful input is, in words. */
export const INPUT_WORDS: Readonly<Record<UncertainInput, string>> = {
  speedConstant: "Speed constant of the motor",
  motorResistance: "Winding resistance",
  noLoadCurrent: "No-load current",
  noLoadCurrentSlope: "Growth of the no-load current",
  thermalResistance: "Thermal resistance of the motor",
  wetTorque: "Water in the motor",
  gearEfficiency: "Gear efficiency",
  controllerResistance: "Controller resistance",
  freewheelVoltage: "Freewheel voltage of the controller",
  switchingLoss: "Switching loss of the controller",
  standbyPower: "Standby power of the controller",
  supplyVoltage: "Open-circuit voltage",
  supplyResistance: "Resistance of pack, leads and tether",
  hotelPower: "Hotel load",
  diameter: "Diameter",
  density: "Density of the water",
  thrustCoefficient: "Thrust coefficient",
  torqueCoefficient: "Torque coefficient",
};

export interface Contribution {
  readonly input: UncertainInput;
  /** Standard uncertainty that it alone gives, SI. */
  readonly thrust: number;
  readonly supplyCurrent: number;
}

/** What each input's doubt alone does to thrust and current, the greatest for the thrust first. */
export function contributions(request: DriveRequest): Contribution[] {
  const inputs = Object.entries(request.uncertainties) as [UncertainInput, number][];
  return inputs
    .flatMap(([input, u]) => {
      if (u === 0) return [];
      const point = operatingPoint({ ...request, uncertainties: { [input]: u }, correlations: [] });
      const of = (key: "thrust" | "supplyCurrent") => point.uncertainties?.[key]?.standardUncertainty ?? 0;
      return [{ input, thrust: of("thrust"), supplyCurrent: of("supplyCurrent") }];
    })
    .sort((a, b) => b.thrust - a.thrust);
}

/** Share of each in the sum of squares; correlations left out. */
export function varianceShare(
  all: readonly Contribution[],
  key: "thrust" | "supplyCurrent",
  one: Contribution,
): number {
  const whole = all.reduce((sum, other) => sum + other[key] ** 2, 0);
  return whole === 0 ? 0 : one[key] ** 2 / whole;
}

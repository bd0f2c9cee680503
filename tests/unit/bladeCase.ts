import type { BladeGeometry, BladeStation } from "../../shared/model/bladeGeometry.ts";

export const station = (radius: number, more: Partial<BladeStation> = {}): BladeStation => ({
  radius,
  chord: 0.012,
  pitchAngle: 0.4,
  thickness: 0.002,
  camber: 0.0004,
  ...more,
});

export const GOOD: BladeGeometry = {
  bladeCount: 3,
  diameter: 0.08,
  hubDiameter: 0.016,
  stations: [station(0.008), station(0.02), station(0.03), station(0.04)],
};

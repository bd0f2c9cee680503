import { describe, expect, test } from "vitest";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { DriveRequest, type DriveRequestInput } from "../../shared/model/drive.ts";
import { relative } from "../relative.ts";

/**
 * Heat, flooded rotor, gear, freewheel, switching, standby, sag and hotel load at once, invented inputs. Solved outside
 * this project with scipy 1.17.1, numpy 2.4.6, two ways that agree to 1e-15:
 *   scipy.optimize.fsolve([4 balances], x0, xtol=1e-15) on motor speed, current, winding temperature and bus voltage;
 *   scipy.optimize.brentq(bus balance over the motor speed, xtol=1e-13, rtol=1e-15), temperature by another brentq.
 */
const BASE = {
  speedConstant: (500 * 2 * Math.PI) / 60,
  motorResistance: 0.1,
  noLoadCurrent: 0.6,
  noLoadCurrentSlope: 5e-4,
  heat: { surroundings: 285.15, resistanceTemperature: 298.15, thermalResistance: 1.6 },
  wetTorque: { coefficient: 2.5e-7, exponent: 1.85 },
  gearRatio: 1.5,
  gearEfficiency: 0.95,
  controllerResistance: 0.01,
  freewheelVoltage: 0.7,
  switchingLoss: 0.02,
  standbyPower: 0.4,
  supplyVoltage: 16,
  supplyResistance: 0.15,
  hotelPower: 12,
  thrusters: 2,
  diameter: 0.07,
  thrustCoefficient: 0.3,
  torqueCoefficient: 0.035,
  density: 998.6,
  throttle: 0.6,
} satisfies DriveRequestInput;

const OPEN_WATER = { thrust: [-0.28, -0.1], torque: [-0.018, -0.012], greatestAdvanceRatio: 1.05 };

const NAMES = [
  "rotationRate",
  "thrust",
  "torque",
  "motorCurrent",
  "windingTemperature",
  "supplyVoltage",
  "supplyCurrent",
] as const;

const CASES: readonly [string, Partial<DriveRequestInput>, readonly number[]][] = [
  [
    "at rest",
    {},
    [
      44.092127926371866, 13.983860859782641, 0.1142015303548916, 5.918947230909937, 301.0762625776115,
      14.790571597799936, 8.062856014667105,
    ],
  ],
  [
    "at full throttle",
    { throttle: 1 },
    [
      62.35544390955204, 27.96750517687977, 0.2284012922778515, 11.023400471098622, 322.46661947251545,
      12.539868201583172, 23.06754532277885,
    ],
  ],
  [
    "at little throttle",
    { throttle: 0.3 },
    [
      22.217157189806205, 3.550438154085443, 0.028995244925031124, 2.027553068036879, 290.29687218719243,
      15.686607096106824, 2.0892860259545007,
    ],
  ],
  [
    "with four thrusters and a heavier hotel load",
    { throttle: 0.8, thrusters: 4, hotelPower: 25 },
    [
      49.082903463404186, 17.32867940051285, 0.14151754843752165, 7.146921802872747, 305.2988639098598,
      12.225970461302389, 25.160196924650748,
    ],
  ],
  [
    "at 1.2 m/s",
    { throttle: 0.7, advanceSpeed: 1.2, openWater: OPEN_WATER },
    [
      51.13116624666394, 12.21600452217878, 0.12117618160978601, 6.496816684341585, 304.4510322449532,
      14.49148260672339, 10.056782621844073,
    ],
  ],
  [
    "at 2 m/s with one thruster at full throttle",
    { throttle: 1, thrusters: 1, advanceSpeed: 2, openWater: OPEN_WATER },
    [
      71.22754919740284, 20.872788674903763, 0.22009927137118113, 11.244903979916362, 326.8100431351897,
      14.182113285932914, 12.119244760447245,
    ],
  ],
  [
    "turning astern, another pair of coefficients",
    { throttle: 0.5, thrustCoefficient: 0.21, torqueCoefficient: 0.031 },
    [
      37.81334043966715, 7.199346990651301, 0.07439325223673011, 4.200306207282086, 296.42877505766825,
      15.23129691153271, 5.124687256448604,
    ],
  ],
  [
    "without a gear, with a square loss in the water, on a soft supply",
    {
      ...{ throttle: 0.55, gearRatio: 1, gearEfficiency: 1, wetTorque: { coefficient: 2.5e-7, exponent: 2 } },
      ...{ heat: { ...BASE.heat, thermalResistance: 0.9 }, supplyResistance: 0.6, supplyVoltage: 22, thrusters: 1 },
    },
    [
      60.968933377509366, 26.737584562763644, 0.21835694059590313, 14.145630022085836, 309.13326284361995,
      16.81304207730387, 8.644929871160217,
    ],
  ],
];

describe("everything coupled", () => {
  test.each(CASES)("%s agrees with scipy", (_, change, expected) => {
    const point = operatingPoint(DriveRequest.parse({ ...BASE, ...change }));
    NAMES.forEach((name, i) => {
      expect(point[name], name).toSatisfy(relative(expected[i]!, 1e-10));
    });
    expect(point.status).toBe("turning");
  });
});

/**
 * Two such thrusters and a body of drag 0.5 ρ 0.030 V²; K_T = 0.30 − 0.35 J, K_Q = 0.035 − 0.030 J. Solved outside this
 * project by scipy `brentq` and `fsolve`, which agree to 1e-12: V 1.9497862674 m/s.
 */
test("at the speed where drag and thrust balance the point is the one scipy found for the vehicle", () => {
  const { speedConstant, motorResistance, noLoadCurrent, controllerResistance, supplyVoltage, supplyResistance } = BASE;
  const point = operatingPoint(
    DriveRequest.parse({
      ...{ speedConstant, motorResistance, noLoadCurrent, controllerResistance, supplyVoltage, supplyResistance },
      ...{ diameter: 0.07, thrustCoefficient: 0.3, torqueCoefficient: 0.035, density: 998.6 },
      ...{ thrusters: 2, hotelPower: 10, throttle: 1, advanceSpeed: 1.9497862674 },
      openWater: { thrust: [-0.35], torque: [-0.03], greatestAdvanceRatio: 0.85 },
    }),
  );
  expect(point.rotationRate).toSatisfy(relative(81.2284046023, 1e-8));
  expect(point.thrust).toSatisfy(relative(28.4725811661, 1e-8));
  expect(point.motorCurrent).toSatisfy(relative(14.9290057179, 1e-8));
  expect(point.supplyVoltage).toSatisfy(relative(11.3895991812, 1e-8));
  expect(point.supplyVoltage * point.supplyCurrent).toSatisfy(relative(350.0707826034, 1e-8));
  expect(point.shaftPower).toSatisfy(relative(139.6706728805, 1e-8));
});

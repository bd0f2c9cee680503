import { expect, test } from "vitest";
import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { DriveRequest, type DriveRequestInput } from "../../shared/model/drive.ts";
import { relative } from "../relative.ts";

/**
 * Invented inputs; solved outside this project three ways that agree to 1e-13 in n: scipy 1.10.1 `brentq` on n,
 * `fsolve` on all unknowns at once, and, without hotel load, the quadratic
 * c A n² + (2π/K_v) n + I_0 A − δ U_0 = 0, A = R_m + R_c + δ² R_s, c = K_Q ρ D⁵/K_t.
 */
const BASE = {
  speedConstant: (500 * 2 * Math.PI) / 60,
  motorResistance: 0.1,
  noLoadCurrent: 0.6,
  controllerResistance: 0.01,
  supplyVoltage: 16,
  supplyResistance: 0.15,
  diameter: 0.07,
  thrustCoefficient: 0.3,
  torqueCoefficient: 0.035,
  density: 998.6,
  throttle: 1,
} satisfies DriveRequestInput;

const point = (change: Partial<DriveRequestInput>) => operatingPoint(DriveRequest.parse({ ...BASE, ...change }));

const CASES = [
  // change, rpm, T N, Q N m, I motor A, I bus A (one thruster), U_m V, U_bus V, P bus W (one thruster), P shaft W
  [
    { throttle: 0.2 },
    1459.6259731797,
    4.2568234785,
    0.0347640584,
    2.4202418417,
    0.4840483683,
    3.1612761305,
    15.9273927447,
    7.7096284701,
    5.3137445393,
  ],
  [
    { throttle: 0.4 },
    2732.4189155972,
    14.9175341943,
    0.1218265293,
    6.9788221553,
    2.7915288621,
    6.1627200467,
    15.5812706707,
    43.4955667855,
    34.8592286326,
  ],
  [
    { throttle: 0.6 },
    3760.224877532,
    28.2507584908,
    0.2307145277,
    12.6801844203,
    7.6081106522,
    8.7884681971,
    14.8587834022,
    113.0472682808,
    90.8484199651,
  ],
  [
    { throttle: 0.8 },
    4531.3123444335,
    41.025178014,
    0.3350389538,
    18.1425985977,
    14.5140788782,
    10.8768845486,
    13.8228881683,
    200.6264891986,
    158.9819871587,
  ],
  [
    {},
    5068.5917743087,
    51.3306902857,
    0.4192006373,
    22.5492940438,
    22.5492940438,
    12.392112953,
    12.6176058934,
    284.5181054195,
    222.5040224844,
  ],
  [
    { supplyResistance: 0.6 },
    3679.8677054919,
    27.0562053897,
    0.2209590107,
    12.1693867451,
    12.1693867451,
    8.5766740855,
    8.6983679529,
    105.8538036705,
    85.1476253112,
  ],
  [
    { hotelPower: 25 },
    4997.2414892513,
    49.8957034384,
    0.4074815781,
    21.9356855362,
    21.9356855362,
    12.1880515321,
    12.4074083875,
    272.1650087065,
    213.2391459258,
  ],
  [
    { throttle: 0.7, supplyResistance: 0.6, hotelPower: 25 },
    3208.7042824177,
    20.5713059587,
    0.1679989987,
    9.3964070002,
    6.5774849001,
    7.3570492649,
    10.6443047641,
    70.0127538578,
    56.4501376225,
  ],
  [
    { density: 1025 },
    5033.5329570432,
    51.9613723152,
    0.4243512072,
    22.8189772535,
    22.8189772535,
    12.3489636394,
    12.577153412,
    286.9977776218,
    223.6799085547,
  ],
] as const;

test.each(CASES)("the whole chain with %o agrees with independent solutions", (change, ...expected) => {
  const found = point(change);
  const [rpm, T, Q, I, Ibus, Um, U, Pbus, Pshaft] = expected;
  expect(found.rotationRate * 60).toSatisfy(relative(rpm, 1e-8));
  expect(found.thrust).toSatisfy(relative(T, 1e-8));
  expect(found.torque).toSatisfy(relative(Q, 1e-8));
  expect(found.motorCurrent).toSatisfy(relative(I, 1e-8));
  expect(found.electricalPower / found.supplyVoltage).toSatisfy(relative(Ibus, 1e-8));
  expect(found.motorVoltage).toSatisfy(relative(Um, 1e-8));
  expect(found.supplyVoltage).toSatisfy(relative(U, 1e-8));
  expect(found.electricalPower).toSatisfy(relative(Pbus, 1e-8));
  expect(found.shaftPower).toSatisfy(relative(Pshaft, 1e-8));
  expect(found.thrustPerPower).toSatisfy(relative(T / Pbus, 1e-8));
});

test("the static merit of the base propeller is that of the formula, worked outside", () => {
  // K_T^1.5/(2π K_Q sqrt(π/2)) worked with numpy: 0.596175371301.
  expect(point({}).efficiencies.propeller).toSatisfy(relative(0.596175371301, 1e-11));
});

test.each([
  // N, n rev/s, T each N, I each A, U_bus V, total power W; source as above
  [1, 84.0067455475, 50.7613655982, 22.3058475812, 12.5344526996, 289.5915914317],
  [2, 73.4389130058, 38.7933653617, 17.1882628605, 10.7033784754, 377.9449654601],
  [4, 60.8816506489, 26.6610846559, 12.0004308803, 8.6258454747, 424.055449612],
  [6, 53.2344888889, 20.3840818213, 9.3163488981, 7.4129370455, 424.3690472493],
] as const)("%i equal thrusters share the supply as an independent solution says", (thrusters, n, T, I, U, total) => {
  const found = point({ thrusters, hotelPower: 10 });
  expect(found.rotationRate).toSatisfy(relative(n, 1e-8));
  expect(found.thrust).toSatisfy(relative(T, 1e-8));
  expect(found.motorCurrent).toSatisfy(relative(I, 1e-8));
  expect(found.supplyVoltage).toSatisfy(relative(U, 1e-8));
  expect(found.supplyVoltage * found.supplyCurrent).toSatisfy(relative(total, 1e-8));
  const past = found.warnings.map((w) => w.code).includes("drive.past-greatest-power");
  expect(past).toBe(thrusters === 6);
});

const FULL_CASE = {
  speedConstant: (480 * 2 * Math.PI) / 60,
  motorResistance: 0.12,
  noLoadCurrent: 0.7,
  noLoadCurrentSlope: 0.0009,
  controllerResistance: 0.015,
  supplyVoltage: 15.6,
  supplyResistance: 0.09,
  hotelPower: 18,
  thrusters: 2,
  diameter: 0.076,
  thrustCoefficient: 0.28,
  torqueCoefficient: 0.031,
  density: 1024.8,
  throttle: 0.7,
} satisfies DriveRequestInput;

/**
 * Invented inputs with every term of the model at work; all six unknowns (ω, I_m, U_m, U, I_bus, I_s) at once with
 * scipy 1.17.1 `fsolve(xtol=1e-14)`, largest residual 6e-17:
 *   ω = K_v (U_m − I R_m); (I − I_0 − b ω)/K_v = K_Q ρ n² D⁵; U_m = δ U − I R_c; I_bus = δ I;
 *   I_s = N I_bus + P_h/U; U = U_oc − R_s I_s.
 */
test("two thrusters with speed-dependent friction, controller loss and hotel load agree with fsolve on all unknowns", () => {
  const found = operatingPoint(DriveRequest.parse(FULL_CASE));
  const expected = {
    rotationRate: 59.363478398784814,
    thrust: 33.73573667641122,
    torque: 0.2838621271772315,
    motorCurrent: 15.304159335690274,
    motorVoltage: 9.256933920130935,
    supplyVoltage: 13.552137585951844,
    supplyCurrent: 22.754026822757297,
    shaftPower: 105.87822738995278,
    electricalPower: 145.1828510682228,
  };
  for (const [name, value] of Object.entries(expected)) {
    expect(found[name as keyof typeof expected], name).toSatisfy(relative(value, 1e-10));
  }
  expect(found.losses.supplyResistance).toSatisfy(relative(46.59711629856827, 1e-10));
  expect(found.losses.winding).toSatisfy(relative(28.10607515666349, 1e-10));
  expect(found.losses.controllerResistance).toSatisfy(relative(3.5132593945829362, 1e-10));
  expect(found.losses.friction).toSatisfy(relative(7.685289127023565, 1e-10));
});

/**
 * The same case with standard uncertainties on nine inputs. Sensitivities outside this project: fourth-order central
 * differences (step 1e-3) of the scipy 1.17.1 `fsolve` solution, combined by JCGM 100:2008 eq. 10. A Monte Carlo run of
 * 20000 normal draws (numpy 2.4.6, seed 7) gave 0.9683, 1.1813, 0.5241, 0.7230, 0.2103, 6.469, so first order is good
 * to 1 % here (a second-order effect and the 0.5 % noise of the draws).
 */
test("uncertainties of the inputs reach the operating point as an independent propagation says", () => {
  const { uncertainties } = operatingPoint(
    DriveRequest.parse({
      ...FULL_CASE,
      uncertainties: {
        speedConstant: 0.5,
        motorResistance: 0.006,
        noLoadCurrent: 0.05,
        controllerResistance: 0.004,
        supplyVoltage: 0.1,
        supplyResistance: 0.01,
        diameter: 0.0002,
        thrustCoefficient: 0.004,
        torqueCoefficient: 0.0006,
      },
    }),
  );
  const expected = {
    rotationRate: [0.9603687053346586, 0.9683],
    thrust: [1.1852100153974034, 1.1813],
    motorCurrent: [0.5205275600060487, 0.5241],
    supplyCurrent: [0.718207773532892, 0.723],
    supplyVoltage: [0.20974222693173417, 0.2103],
    electricalPower: [6.405583790796156, 6.469],
  } as const;
  for (const [name, [firstOrder, monteCarlo]] of Object.entries(expected)) {
    const { standardUncertainty } = uncertainties![name as keyof typeof expected]!;
    expect(standardUncertainty, name).toSatisfy(relative(firstOrder, 1e-6));
    expect(standardUncertainty, name).toSatisfy(relative(monteCarlo, 0.02));
  }
});

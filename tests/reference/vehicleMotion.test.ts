import { describe, expect, test } from "vitest";
import type { Vehicle, VehicleInput } from "../../shared/model/vehicle/vehicle.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import { madeGood } from "../../shared/vehicle/motion/headings.ts";
import { solvedWay } from "../../shared/vehicle/motion/steadyMotion.ts";
import { steadySpeed } from "../../shared/vehicle/motion/steadySpeed.ts";
import { brakedStop, coastingStop } from "../../shared/vehicle/motion/stopping.ts";
import { NO_PULL } from "../../shared/vehicle/motion/tetherPull.ts";
import { upToSpeed } from "../../shared/vehicle/motion/upToSpeed.ts";
import { busDemand } from "../../shared/vehicle/propulsion/busDemand.ts";
import type { BusAsk } from "../../shared/vehicle/propulsion/busProblem.ts";
import { busState } from "../../shared/vehicle/propulsion/busState.ts";
import { type PropulsionModel, propulsionModel, withNumbers } from "../../shared/vehicle/propulsion/propulsionModel.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import { relative } from "../relative.ts";
import { SIX_THRUSTERS, TWO_THRUSTERS, vehicleFrom } from "../unit/vehicleExample.ts";

/** The model in water of exactly `density`, kg/m³. */
function modelIn(vehicle: Vehicle, density: number): PropulsionModel {
  const model = propulsionModel(vehicle);
  const drives = model.numbers.drives.map((ways) => ({
    ...ways,
    ahead: { ...ways.ahead, density },
    astern: ways.astern && { ...ways.astern, density },
  }));
  return withNumbers(model, { ...model.numbers, density, drives });
}

const still = () => NO_PULL;
const sure = (value: number) => uncertain(value, 0);

describe("two thrusters on one bus push a body", () => {
  // scipy 1.17.1: brentq on the speed of the vehicle over brentq on the rotation rate, and fsolve on all unknowns at once;
  // K_T = 0.30 − 0.35 J, K_Q = 0.035 − 0.030 J, drag ½ ρ 0.030 V², ρ 998.6, hotel load 10 W, w = t = 0.
  const model = modelIn(vehicleFrom(TWO_THRUSTERS), 998.6);
  const { speed, atSpeed, converged } = steadySpeed({ model, way: "ahead", pull: still });
  const { busVoltage, supplyCurrent, power } = atSpeed.solved;
  const told = { voltage: sure(busVoltage), current: sure(supplyCurrent), power: sure(power) };
  const state = busState(model, atSpeed.solved, atSpeed.available * speed, told);

  test("they reach the speed at which thrust is drag", () => {
    expect(converged).toBe(true);
    expect(speed).toSatisfy(relative(1.9497862674, 1e-9));
    expect(atSpeed.available).toSatisfy(relative(56.9451623321, 1e-9));
    expect(state.thrusters[0]!.rotationRate).toSatisfy(relative(81.2284046023, 1e-9));
    expect(state.thrusters[0]!.motorCurrent).toSatisfy(relative(14.9290057179, 1e-9));
    expect(state.thrusters[1]!.shaftPower).toSatisfy(relative(139.6706728805, 1e-9));
    expect(state.voltage.value).toSatisfy(relative(11.3895991812, 1e-9));
    expect(state.power.value).toSatisfy(relative(350.0707826034, 1e-9));
  });

  test("what leaves the source is what is lost, used by the rest and given to the water", () => {
    const { source, supplyLoss, hotel, controllers, motors, propellers, useful } = state.account;
    expect(supplyLoss + hotel + controllers + motors + propellers + useful).toSatisfy(relative(source, 1e-12));
    // eta_O of the same case: useful power over that of the shafts.
    expect(useful / (useful + propellers)).toSatisfy(relative(0.3974739049, 1e-8));
  });
});

test("current, power and voltage at the steady speed have the doubt that supply, drag and hotel load give them", () => {
  // scipy 1.17.1 fsolve on speed, rotation rate and voltage of the case above, moved by ± 1e-4 of open-circuit voltage
  // (16 ± 0.2 V), drag area (0.030 ± 0.004 m²) and hotel load (10 ± 2 W); the three changes added in squares.
  const { pack } = TWO_THRUSTERS.supply;
  const [area, hotel] = [{ from: "typed", dragArea: 0.03, standardUncertainty: 0.004 } as const, 2];
  const { atSpeed, speed, propulsiveEfficiency } = vehicleAnswer(
    vehicleFrom({
      ...TWO_THRUSTERS,
      // Fresh water has the 998.6 kg/m³ of the case at this temperature.
      water: { kind: "fresh", temperature: 291.13937587039607 },
      drag: { surge: { forward: { drag: area }, addedMass: { from: "typed", mass: 4 } } },
      supply: { pack: { ...pack, uncertainties: { openCircuitVoltage: 0.2 } } },
      hotelPower: { value: 10, standardUncertainty: hotel },
    }),
  ).motions[0]!;
  expect(speed!.standardUncertainty).toSatisfy(relative(0.11016733, 1e-3));
  expect(atSpeed!.current.value).toSatisfy(relative(30.73600546, 1e-7));
  expect(atSpeed!.current.standardUncertainty).toSatisfy(relative(0.6031921, 1e-3));
  expect(atSpeed!.power.standardUncertainty).toSatisfy(relative(9.92406422, 1e-3));
  expect(atSpeed!.voltage.standardUncertainty).toSatisfy(relative(0.12855863, 1e-3));
  // Thrust times speed over the power of the two thrusters, in the same way.
  expect(propulsiveEfficiency!.value).toSatisfy(relative(0.3264934866, 1e-7));
  expect(propulsiveEfficiency!.standardUncertainty).toSatisfy(relative(0.0128044647, 1e-3));
});

describe("time and way to speed have the doubt that mass, drag and supply give them", () => {
  // scipy 1.17.1: quad(lambda V: M/net(V), 0, share*V_s, epsrel=1e-11) and M V/net(V), with net(V) by fsolve on rotation
  // rate, current and voltage of the case above and V_s by brentq; central differences of 1e-3 in mass (16 ± 1.5 kg), drag
  // area (0.030 ± 0.003 m²) and open-circuit voltage (16 ± 0.2 V), added in squares.
  const { pack } = TWO_THRUSTERS.supply;
  const { upToSpeed: told } = vehicleAnswer(
    vehicleFrom({
      ...TWO_THRUSTERS,
      water: { kind: "fresh", temperature: 291.13937587039607 },
      mass: { value: 12, standardUncertainty: 1.5 },
      drag: {
        surge: {
          forward: { drag: { from: "typed", dragArea: 0.03, standardUncertainty: 0.003 } },
          addedMass: { from: "typed", mass: 4 },
        },
      },
      supply: { pack: { ...pack, uncertainties: { openCircuitVoltage: 0.2 } } },
    }),
  ).motions[0]!;
  test.each([
    { share: 0.5, time: 0.2321375214, distance: 0.1201113322, ofTime: 0.024119046, ofDistance: 0.015303895 },
    { share: 0.9, time: 0.6460095685, distance: 0.7213652747, ofTime: 0.0675941, ofDistance: 0.092786337 },
    { share: 0.95, time: 0.8097627256, distance: 1.0175880596, ofTime: 0.084847831, ofDistance: 0.131088731 },
  ])("up to $share of the steady speed", ({ share, time, distance, ofTime, ofDistance }) => {
    const found = told.find((one) => one.share === share)!;
    expect(found.time.value).toSatisfy(relative(time, 1e-5));
    expect(found.distance.value).toSatisfy(relative(distance, 1e-5));
    expect(found.time.standardUncertainty).toSatisfy(relative(ofTime, 2e-3));
    expect(found.distance.standardUncertainty).toSatisfy(relative(ofDistance, 2e-3));
  });
});

describe("equal thrusters at rest share one supply", () => {
  // scipy 1.17.1 brentq, fsolve and the quadratic: thrust of each and bus voltage at full throttle with 10 W beside.
  test.each([
    { count: 1, thrust: 50.7613655982, voltage: 12.5344526996, power: 289.5915914317 },
    { count: 2, thrust: 38.7933653617, voltage: 10.7033784754, power: 377.9449654601 },
    { count: 4, thrust: 26.6610846559, voltage: 8.6258454747, power: 424.055449612 },
  ])("$count of them", ({ count, thrust, voltage, power }) => {
    const thrusters = Array.from({ length: count }, (_, i) => ({
      ...{
        name: `${i}`,
        drive: "stern",
        position: { x: 0, y: i - (count - 1) / 2, z: 0 },
        direction: { x: 1, y: 0, z: 0 },
      },
    }));
    const solved = busDemand(modelIn(vehicleFrom({ ...TWO_THRUSTERS, thrusters }), 998.6), { direction: { surge: 1 } });
    expect(solved.times / count).toSatisfy(relative(thrust, 1e-9));
    expect(solved.busVoltage).toSatisfy(relative(voltage, 1e-9));
    expect(solved.power).toSatisfy(relative(power, 1e-9));
  });

  test("six would be past the greatest power of the supply, and are held there", () => {
    const thrusters = Array.from({ length: 6 }, (_, i) => ({
      ...{ name: `${i}`, drive: "stern", position: { x: 0, y: i - 2.5, z: 0 }, direction: { x: 1, y: 0, z: 0 } },
    }));
    const solved = busDemand(modelIn(vehicleFrom({ ...TWO_THRUSTERS, thrusters }), 998.6), { direction: { surge: 1 } });
    expect(solved).toMatchObject({ outcome: "scaled", bound: "greatestPower" });
    // Maximum power transfer: U_oc²/(4 R_s) at half the open-circuit voltage.
    expect(solved.busVoltage).toSatisfy(relative(8, 1e-12));
    expect(solved.power).toSatisfy(relative(16 ** 2 / (4 * 0.15), 1e-9));
  });
});

describe("a thrust that does not change with speed", () => {
  // A thruster whose coefficients are known at rest only gives the closed forms of a constant force.
  const { openWater: _none, ...ahead } = TWO_THRUSTERS.drives[0]!.propeller.ahead;
  const drive = { ...TWO_THRUSTERS.drives[0]!, propeller: { ...TWO_THRUSTERS.drives[0]!.propeller, ahead } };
  const vehicle: VehicleInput = { ...TWO_THRUSTERS, drives: [drive], interaction: { thrustDeduction: { value: 0.1 } } };
  const model = modelIn(vehicleFrom(vehicle), 998.6);
  const problem = { model, way: "ahead", pull: still } as const;
  const F = 0.9 * 2 * 38.7933653617;
  const b = 0.5 * 998.6 * 0.03;

  test("gives the speed √(F/b)", () => {
    expect(steadySpeed(problem).speed).toSatisfy(relative(Math.sqrt(F / b), 1e-9));
  });

  test("gives V = √(F/b) tanh(t √(F b)/M) and x = (M/b) ln cosh", () => {
    const M = 16;
    const doubts = { list: [], correlations: [] };
    const { moving, force } = solvedWay({ model, way: "ahead", doubts, pullFor: () => still })!;
    for (const one of upToSpeed({ problem, doubts, moving: moving!, atRest: force, why: null })) {
      const [share, time, distance] = [one.share, one.time.value, one.distance.value];
      const u = (time * Math.sqrt(F * b)) / M;
      expect(Math.tanh(u)).toSatisfy(relative(share, 1e-8));
      expect(distance).toSatisfy(relative((M / b) * Math.log(Math.cosh(u)), 1e-5));
    }
  });
});

describe("stopping", () => {
  // Closed forms of textbooks (separation of variables); M 17.5 kg, b 22.5 N·s²/m², V_0 1.5 m/s, F 40 N.
  const body = { mass: 17.5, quadratic: 22.5 };
  test("with a constant force against the motion", () => {
    const { time, distance } = brakedStop(body, 1.5, 40);
    expect(time).toSatisfy(relative((17.5 / Math.sqrt(22.5 * 40)) * Math.atan(1.5 * Math.sqrt(22.5 / 40)), 1e-9));
    expect(distance).toSatisfy(relative((17.5 / 45) * Math.log(1 + (22.5 * 1.5 ** 2) / 40), 1e-9));
  });

  test("by drag alone, with and without a linear term", () => {
    // scipy solve_ivp at rtol 1e-13: after 5 s from 1.5 m/s with a = 3 N·s/m the speed is 0.085149255113 m/s, the way 1.564633677300 m.
    const linear = coastingStop({ ...body, linear: 3 }, 1.5, 0.085149255113 / 1.5);
    expect(linear.time).toSatisfy(relative(5, 1e-9));
    expect(linear.distance).toSatisfy(relative(1.5646336773, 1e-9));
    const plain = coastingStop(body, 1.5, 0.140939597315 / 1.5);
    expect(plain.time).toSatisfy(relative(5, 1e-9));
    expect(plain.distance).toSatisfy(relative(1.839358092701, 1e-9));
  });
});

describe("the triangle of velocities", () => {
  test.each([
    // By hand: 3-4-5.
    { speed: 1.5, current: 0.9, from: Math.PI / 2, over: 1.2 },
    { speed: 1.5, current: 0.9, from: 0, over: 0.6 },
    { speed: 1.5, current: 0.9, from: Math.PI, over: 2.4 },
    { speed: 1.5, current: 1.8, from: 0, over: -0.3 },
  ])("$speed m/s through $current m/s of current", ({ over, ...triangle }) => {
    expect(madeGood(triangle)!.speedOverGround).toSatisfy(relative(over, 1e-12));
  });

  test("a current across that is faster than the vehicle carries it off", () => {
    expect(madeGood({ speed: 1.5, current: 1.6, from: Math.PI / 2 })).toBeNull();
  });
});

describe("a layout with unequal thrusts ahead and astern", () => {
  const model = propulsionModel(vehicleFrom(SIX_THRUSTERS));
  const cases: { name: string; ask: BusAsk }[] = [
    { name: "ahead", ask: { direction: { surge: 1 } } },
    { name: "astern", ask: { direction: { surge: -1 } } },
    { name: "to starboard with a weight held", ask: { direction: { sway: 1 }, aside: { heave: -20 } } },
    { name: "ahead and to port at speed", ask: { direction: { surge: 2, sway: -1 }, velocity: [0.8, -0.4, 0] } },
  ];
  test.each(cases)("keeps the law of the bus and the commanded axes: $name", ({ ask }) => {
    const solved = busDemand(model, ask);
    const { openCircuitVoltage, resistance } = model.numbers.supply;
    // Kirchhoff: U = U_oc − R_s P/U.
    expect(solved.busVoltage).toSatisfy(
      relative(openCircuitVoltage - (resistance * solved.power) / solved.busVoltage, 1e-10),
    );
    const hull = (axis: "surge" | "sway" | "heave") =>
      solved.times * (ask.direction[axis] ?? 0) + (ask.aside?.[axis] ?? 0);
    const made = model.thrusters.reduce(
      (sum, { direction }, i) =>
        sum.map((one, k) => one + direction[k]! * solved.thrusts[i]! * (1 - model.numbers.thrustDeduction)),
      [0, 0, 0],
    );
    [hull("surge"), hull("sway"), hull("heave")].forEach((wanted, k) => {
      expect(Math.abs(made[k]! - wanted)).toBeLessThan(1e-7);
    });
  });
});

describe("six thrusters, unequal ahead and astern, on one bus with a motor limit", () => {
  // scipy 1.17.1, numpy 2.4.6: brentq on the bus voltage over linprog(method="highs") for the greatest force with the other
  // commanded axes held, numpy.linalg.pinv for the shares and brentq on the rotation rate of each thruster; ρ 1025.
  const pack = { name: "pack", openCircuitVoltage: 16, resistance: 0.08 };
  const model = modelIn(vehicleFrom({ ...SIX_THRUSTERS, supply: { pack } }), 1025);
  test.each([
    {
      name: "ahead at 0.8 m/s with 1.5 N held down",
      ask: { direction: { surge: 1 }, aside: { heave: 1.5 }, velocity: [0.8, 0, 0] } as const,
      ...{ force: 92.6244545847231, voltage: 10.806927008616157, power: 701.5145096038055, first: 34.4712526 },
    },
    {
      name: "astern at rest",
      ask: { direction: { surge: -1 } } as const,
      ...{ force: 74.46532388597178, voltage: 10.690995460962757, power: 709.4817928634934, first: -27.71312394 },
    },
    {
      name: "to starboard at 0.4 m/s with 10 N held up",
      ask: { direction: { sway: 1 }, aside: { heave: -10 }, velocity: [0, 0.4, 0] } as const,
      ...{ force: 75.61182081698567, voltage: 11.24397633531891, power: 668.4577191986368, first: -28.13980591 },
    },
  ])("$name", ({ ask, force, voltage, power, first }) => {
    const solved = busDemand(model, ask);
    expect(solved.times).toSatisfy(relative(force, 1e-8));
    expect(solved.busVoltage).toSatisfy(relative(voltage, 1e-9));
    expect(solved.power).toSatisfy(relative(power, 1e-8));
    expect(solved.thrusts[0]!).toSatisfy(relative(first, 1e-7));
  });
});

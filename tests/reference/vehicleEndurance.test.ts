import { expect, test } from "vitest";
import type { Vehicle } from "../../shared/model/vehicle/vehicle.ts";
import { gaussLegendre } from "../../shared/numeric/gaussLegendre.ts";
import { CELLS, rest, swim, twoThrusters, vehicleEndurance } from "../unit/enduranceExample.ts";

const FOR_EVER = 1e6;
const missionOf = (vehicle: Vehicle) => vehicleEndurance(vehicle).mission!;

// Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 25.4, n = 8.
test("Gauss-Legendre nodes and weights are those of the handbook", () => {
  const { nodes, weights } = gaussLegendre(8);
  const printed = [
    [0.18343464249565, 0.362683783378362],
    [0.525532409916329, 0.313706645877887],
    [0.796666477413627, 0.222381034453374],
    [0.960289856497536, 0.101228536290376],
  ] as const;
  printed.forEach(([node, weight], i) => {
    expect(nodes[4 + i]).toBeCloseTo(node, 14);
    expect(nodes[3 - i]).toBeCloseTo(-node, 14);
    expect(weights[4 + i]).toBeCloseTo(weight, 14);
  });
});

// The outside case of a whole vehicle, its operating point by scipy brentq and fsolve: at 1.9497862674 m/s the bus is at
// 11.3895991812 V and gives 350.0707826034 W; 74 W·h, 80 % of them usable, last 0.169108657283 h and 1.187012655609 km.
test("74 W·h at full throttle last as long, and go as far, as the energy over the power", () => {
  const charge = (74 * 3600) / 11.3895991812;
  const speed = 1.9497862674 * (1 - 1e-9);
  // Fresh water has the 998.6 kg/m³ of the case at this temperature.
  const water = { kind: "fresh", temperature: 291.13937587039607 } as const;
  const vehicle = { ...twoThrusters({ charge }, [swim(speed, FOR_EVER)], { reserve: 0.2 }), water };
  const { legs, time, endsAt } = missionOf(vehicle);
  expect(endsAt?.by).toBe("reserve");
  expect(time / 3600).toBeCloseTo(0.169108657283, 8);
  expect(legs[0]!.distance / 1000).toBeCloseTo(1.187012655609, 7);
  expect(legs[0]!.power!.value).toBeCloseTo(350.0707826034, 5);
});

// scipy 1.17.1, numpy 2.4.6: PchipInterpolator through the table of the cell (Chen et al. 2020), four in series shifted to
// 16 V at 95 %; I = P/U from the quadratic with R 0.15 Ω; dQ/dt = −I by solve_ivp, DOP853, rtol 1e-12, with events at 20 %
// of 36 000 C and at 13 V. 100 W throughout; at 5 °C R is 2^(15/25) times as much.
const CONSTANT_POWER = [
  { name: "at 20 °C to the reserve", more: {}, mission: {}, time: 3948.769101277233, left: 0.2, by: "reserve" },
  {
    name: "at 5 °C",
    more: {},
    mission: { packTemperature: 278.15 },
    time: 3760.997977745518,
    left: 0.2,
    by: "reserve",
  },
  {
    ...{ name: "to 13 V under load", more: { leastVoltage: 13 }, mission: {} },
    ...{ time: 2921.6791218998283, left: 0.426896939984879, by: "leastVoltage" },
  },
] as const;

test.each(CONSTANT_POWER)(
  "a pack whose voltage falls gives 100 W as long as an integration in time says: $name",
  (one) => {
    const leg = { ...rest(FOR_EVER), hotelPower: 100 };
    const mission = missionOf(twoThrusters({ charge: 36_000, cells: CELLS, ...one.more }, [leg], one.mission));
    expect(mission.endsAt?.by).toBe(one.by);
    expect(mission.time / one.time).toBeCloseTo(1, 7);
    expect(mission.chargeLeft).toBeCloseTo(one.left, 7);
  },
);

// scipy.integrate.quad of the same curve from 20 to 100 %, piece by piece.
test("the energy of the ideal source is the integral of its curve", () => {
  const { charge } = vehicleEndurance(twoThrusters({ charge: 36_000, cells: CELLS }));
  expect(charge!.energy / 426530.12195627124).toBeCloseTo(1, 9);
});

// scipy brentq for the rotation rate at which two propellers meet the drag at 1 and 1.4 m/s, motor and controller by their
// equations; then solve_ivp as above: 600 s at 1 m/s, 900 s at rest with 10 W, 300 s at 1.4 m/s.
test("power, charge and energy of each leg are those of an integration in time", () => {
  const legs = [swim(1, 600), rest(900), swim(1.4, 300)];
  const mission = missionOf(twoThrusters({ charge: 36_000, cells: CELLS }, legs));
  const [first, second, third] = mission.legs;
  expect(mission.fits).toBe(true);
  expect(first!.power!.value).toBeCloseTo(57.88412804287418, 7);
  expect(first!.energy.useful / 600).toBeCloseTo(14.97897054422974, 7);
  expect(first!.energy.motors / 600).toBeCloseTo(9.81692326069802, 7);
  expect(first!.energy.controllers / 600).toBeCloseTo(0.3817860461730066, 7);
  expect(first!.energy.propellers / 600).toBeCloseTo(22.70644819177342, 7);
  expect(third!.power!.value).toBeCloseTo(135.8434972485662, 6);
  expect(first!.chargeAfter.value).toBeCloseTo(0.937934344, 8);
  expect(second!.chargeAfter.value).toBeCloseTo(0.922177179, 8);
  expect(third!.chargeAfter.value).toBeCloseTo(0.843885505, 8);
  expect(first!.energy.source).toBeCloseTo(35978.6276, 2);
  expect(second!.energy.source).toBeCloseTo(9053.63028, 3);
  expect(third!.energy.source).toBeCloseTo(44725.0903, 2);
});

// The same chain with scipy minimize_scalar over the speed, brentq for the speeds at which 98 % of the range are left.
test("the speed of the greatest range, the range and its flat top are found", () => {
  const { bestRange } = vehicleEndurance(twoThrusters({ charge: 36_000 })).speeds!;
  expect(bestRange!.range.value / 12501.182579113402).toBeCloseTo(1, 5);
  expect(Math.abs(bestRange!.speed / 0.49395878556131717 - 1)).toBeLessThan(0.002);
  expect(Math.abs(bestRange!.within[0] - 0.4213659786388192)).toBeLessThan(0.005);
  expect(Math.abs(bestRange!.within[1] - 0.5739795670969958)).toBeLessThan(0.005);
});

// Q/I in closed form with the power at 1 m/s by scipy: 0.8 · 36 000 C · U/P, and its slope over R by a central difference.
test("with a constant voltage the time is the usable charge over the current, and its doubt the slope", () => {
  const uncertainties = { resistance: 0.01, charge: 720 };
  const { lasts, shares, legs } = missionOf(twoThrusters({ charge: 36_000, uncertainties }, [swim(1, 600)]));
  expect(lasts!.value).toBeCloseTo(7680.894605681164, 4);
  const bySlope = (0.01 * (7680.700988876117 - 7681.08821235644)) / 2e-4;
  const byCharge = 7680.894605681164 * (720 / 36_000);
  expect(lasts!.standardUncertainty).toBeCloseTo(Math.hypot(bySlope, byCharge), 1);
  expect(shares[0]!.input).toBe("packCharge");
  expect(shares.find(({ input }) => input === "supplyResistance")!.contribution).toBeCloseTo(bySlope, 1);
  // I = 0.8 Q/t, so the current is doubtful by the resistance as the time is; the charge of the pack does not touch it.
  const current = (0.8 * 36_000) / 7680.894605681164;
  const ofCurrent = Math.abs((current * bySlope) / 7680.894605681164);
  const { greatestCurrent, charge, chargeAfter } = legs[0]!;
  expect(greatestCurrent!.value).toBeCloseTo(current, 7);
  expect(greatestCurrent!.standardUncertainty).toBeCloseTo(ofCurrent, 6);
  expect(charge.standardUncertainty).toBeCloseTo(600 * ofCurrent, 3);
  const ofShare = Math.hypot((600 * ofCurrent) / 36_000, ((600 * current) / 36_000) * (720 / 36_000));
  expect(chargeAfter.standardUncertainty).toBeCloseTo(ofShare, 6);
});

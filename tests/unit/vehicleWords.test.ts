import { describe, expect, test } from "vitest";
import { Vehicle, type VehicleInput } from "../../shared/model/vehicle/vehicle.ts";
import { certaintyInWords } from "../../shared/quantity/certaintyInWords.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { mergedWayWarnings } from "../../shared/vehicle/motion/wayWarnings.ts";
import { vehicleFacts } from "../../shared/vehicle/propulsion/vehicleNumbers.ts";
import { vehicleAnswer } from "../../shared/vehicle/vehicleAnswer.ts";
import { relative } from "../relative.ts";
import { SIX_THRUSTERS, TWO_THRUSTERS, vehicleFrom } from "./vehicleExample.ts";

const { tether: _tether, scenario: _scenario, requirement: _requirement, ...free } = SIX_THRUSTERS;
const inStillWater: VehicleInput = { ...free, scenario: { depth: 10 } };
const answerFor = (change: Partial<VehicleInput>) => vehicleAnswer(vehicleFrom({ ...inStillWater, ...change }));
const ahead = ({ motions }: ReturnType<typeof answerFor>) => motions.find(({ way }) => way === "ahead")!;

test.each([
  { probability: 1, words: "over 99.9\u202f%" },
  { probability: 0.9995, words: "over 99.9\u202f%" },
  { probability: 0.974, words: "97.4\u202f%" },
  { probability: 0.5, words: "50.0\u202f%" },
  { probability: 5e-11, words: "under 0.1\u202f%" },
  { probability: 0, words: "under 0.1\u202f%" },
])("a probability of $probability is told as $words", ({ probability, words }) => {
  expect(certaintyInWords(probability)).toBe(words);
});

describe("an upright thruster lost", () => {
  const answer = answerFor({});
  const lost = answer.vertical.losses.find(({ thruster }) => thruster === "starboard vertical")!;
  const inLayout = answer.layout.losses[4]!;
  const kept = (axis: string) =>
    inLayout.axes.filter((one) => one.axis === axis && one.way === "positive").map((one) => one.kept);

  test("leaves all force ahead, as the limits of the layout say, though the depth is not held", () => {
    // Values of layout E: a vertical lost leaves X and takes Z (scipy linprog, HiGHS).
    expect([kept("surge")[0], kept("heave")[0]]).toEqual([expect.closeTo(1, 9), 0]);
    expect(lost.up).toBe(0);
    // A part of the bus went into holding the trim; without it there is a little more.
    expect(lost.ahead).toSatisfy(relative(ahead(answer).force!.value, 0.02));
    expect(lost.ahead).toBeGreaterThanOrEqual(ahead(answer).force!.value * (1 - 1e-9));
  });

  test("is told with where the vehicle goes", () => {
    expect(lost.holdsDepth).toBe(false);
    expect(lost.sentence).toMatch(
      /^Without starboard vertical 10\d % of the force ahead is left within the bus current, none upwards/,
    );
    expect(lost.sentence).toMatch(/can not hold its depth and floats up with 1\.5 ± 0\.6\sN\.$/);
  });

  test("of a heavy vehicle lets it sink, and of one in trim keeps its depth", () => {
    const heavy = answerFor({ netBuoyancy: { value: -2 } }).vertical.losses[4]!;
    expect(heavy.sentence).toMatch(/can not hold its depth and sinks with 2\.00\sN\.$/);
    const trimmed = answerFor({ netBuoyancy: { value: 0 } }).vertical.losses[4]!;
    expect(trimmed.holdsDepth).toBe(true);
    expect(trimmed.sentence).not.toMatch(/depth/);
  });
});

describe("the trim", () => {
  test("that nobody stated is told as taken", () => {
    const { sentence, withoutPower } = answerFor({ netBuoyancy: { value: 0 } }).vertical;
    expect(sentence).toMatch(/^No trim is stated: a net buoyancy of 0 N is taken/);
    expect(withoutPower.text).toMatch(/if it is trimmed as is taken/);
  });

  test("that was found to be nothing is told as stated, with its doubt", () => {
    const netBuoyancy = { value: 0, standardUncertainty: 0.3 };
    expect(answerFor({ netBuoyancy }).vertical.sentence).toMatch(
      /neither sinks nor floats: 0\.0 ± 0\.6\sN by the trim/,
    );
  });

  test("and the pull of the tether are held together, and the power for that has the doubt of the hotel load at least", () => {
    const { vertical, tether } = vehicleAnswer(vehicleFrom(SIX_THRUSTERS));
    expect(tether?.state).toBe("solved");
    expect(vertical.sentence).toMatch(
      /floats up with 1\.5 ± 0\.6\sN; with the pull of the tether it floats up with 1\.\d/,
    );
    // With nothing to hold the thrusters stand: what is left is the hotel load, 15 W with a standard uncertainty of 2 W.
    expect(vertical.holdPowerNeutral!.standardUncertainty).toSatisfy(relative(2, 1e-6));
    expect(vertical.holdPower!.standardUncertainty).toBeGreaterThan(2);
  });
});

const WEAK_PACK = { supply: { pack: { ...SIX_THRUSTERS.supply.pack!, currentLimit: 20 } } };

describe("what keeps a vehicle from being driven at all", () => {
  test.each([
    {
      what: "too much weight",
      change: { netBuoyancy: { value: -500 } },
      says: /it sinks with 500\sN, more than the [\d.]+ ± [\d.]+\sN that its thrusters can push upwards/,
    },
    {
      what: "too much weight for a pack of little current, that feeds the rest",
      change: { ...WEAK_PACK, scenario: { depth: 10, payload: { value: 80 } } },
      says: /it sinks with 78\.5 ± 0\.6\sN, more than the [\d.]+ ± [\d.]+\sN that its thrusters can push upwards/,
    },
    {
      what: "too much buoyancy",
      change: { netBuoyancy: { value: 500 } },
      says: /it floats up with 500\sN, more than the [\d.]+ ± [\d.]+\sN that its thrusters can push downwards/,
    },
    { what: "a supply that fails", change: { hotelPower: { value: 5000 } }, says: /the supply can not even feed/ },
  ])("$what is told in place of a speed", ({ change, says }) => {
    const answer = answerFor(change);
    expect(ahead(answer)).toMatchObject({ state: "stands", speed: null });
    expect(ahead(answer).sentence).toMatch(says);
  });

  test("is no speed astern, though a tether pulls it back", () => {
    const current = { depth: 10, tetherLength: 40, tetherOffset: 10, currentSpeed: 0.3 };
    const answer = answerFor({
      ...{ tether: SIX_THRUSTERS.tether!, scenario: current, netBuoyancy: { value: -500 } },
    });
    expect(answer.motions.find(({ way }) => way === "astern")).toMatchObject({ state: "stands", speed: null });
  });
});

describe("the sentences of a requirement", () => {
  test("tell the probability that is asked of each demand, and never certainty", () => {
    const { requirement } = answerFor({ requirement: { speed: 0.2, climb: 0.05, confidence: 0.9 } });
    expect(requirement!.sentence).toBe("It meets all 2 demands, each with at least 90\u202f% probability.");
    for (const { sentence } of requirement!.demands) expect(sentence).toMatch(/: met, over 99\.9\u202f% sure\.$/);
  });

  test("do not say how sure they are of a number without any doubt", () => {
    const sure = vehicleAnswer(
      Vehicle.parse({
        ...inStillWater,
        ...{ mass: { value: 12 }, netBuoyancy: { value: 0 }, hotelPower: { value: 15 } },
        drag: { surge: { forward: { drag: { from: "typed", dragArea: 0.055 } } } },
        interaction: { wakeFraction: { value: 0 }, thrustDeduction: { value: 0 } },
        drives: SIX_THRUSTERS.drives.map(({ motor: { uncertainties: _u, ...motor }, propeller, ...drive }) => ({
          ...drive,
          motor,
          propeller: {
            ...propeller,
            diameter: { value: 0.07 },
            ahead: { thrustCoefficient: { value: 0.3 }, torqueCoefficient: { value: 0.035 } },
            astern: { thrustCoefficient: { value: 0.22 }, torqueCoefficient: { value: 0.034 } },
          },
        })),
        supply: { pack: { name: "pack", openCircuitVoltage: 16, resistance: 0.08 } },
        requirement: { speed: 0.2 },
      }),
    );
    expect(sure.requirement!.demands[0]!.sentence).toMatch(/: met\. It rests on/);
  });

  test.each([
    { what: "no charge", pack: { charge: undefined }, mission: undefined, says: /charge of the pack is not stated/ },
    {
      what: "a leg that is too fast",
      pack: {},
      mission: { legs: [{ name: "Dash", kind: { does: "swim", speed: 9, extent: { by: "duration", duration: 60 } } }] },
      says: /its mission can not be done, whatever the charge/,
    },
  ])("tell why the time is not known: $what", ({ pack, mission, says }) => {
    const answer = vehicleAnswer(
      Vehicle.parse(
        structuredClone({
          ...inStillWater,
          supply: { pack: JSON.parse(JSON.stringify({ ...SIX_THRUSTERS.supply.pack, ...pack })) },
          ...(mission && { mission }),
          requirement: { endurance: 600 },
        }),
      ),
    );
    expect(answer.requirement!.demands[0]!.sentence).toMatch(says);
  });
});

test("a mission that can not be done is part of the answer", () => {
  const legs = [{ name: "Wait", kind: { does: "rest" as const, duration: 40 * 86_400 } }];
  const answer = answerFor({ mission: { legs } });
  expect(answer.endurance.mission!.fits).toBe(false);
  expect(answer.sentence).toMatch(/The mission is longer than the charge\./);
});

describe("what the ± does not tell", () => {
  const codes = ({ warnings }: ReturnType<typeof answerFor>) => warnings.map(({ code }) => code);
  const bounded = vehicleAnswer(vehicleFrom(TWO_THRUSTERS));
  const [drive] = TWO_THRUSTERS.drives;

  test("coefficients known at rest only give a speed that is told as the most", () => {
    const { openWater: _openWater, ...atRest } = drive!.propeller.ahead;
    const drives = [{ ...drive!, propeller: { ...drive!.propeller, ahead: atRest } }];
    expect(vehicleAnswer(vehicleFrom({ ...TWO_THRUSTERS, drives })).sentence).toMatch(
      /^Ahead it goes at most about \d/,
    );
    expect(bounded.sentence).toMatch(/^Ahead it goes \d/);
  });

  test("a demand on such a speed says so beside its probability", () => {
    const { openWater: _openWater, ...atRest } = drive!.propeller.ahead;
    const drives = [{ ...drive!, propeller: { ...drive!.propeller, ahead: atRest } }];
    const sentenceOf = (more: Partial<VehicleInput>) =>
      vehicleAnswer(vehicleFrom({ ...TWO_THRUSTERS, ...more, requirement: { speed: 0.2 } })).requirement!.demands[0]!
        .sentence;
    expect(sentenceOf({ drives })).toMatch(/: at most about \d.*known at rest only: what it really does/);
    expect(sentenceOf({})).not.toMatch(/at most about|at rest only/);
  });

  test("a drive whose parts state no current, power or heat that they bear is told of, one of them is enough", () => {
    expect(codes(bounded)).toContain("vehicle.limits-not-stated");
    const controller = { ...drive!.controller!, currentLimit: 30 };
    const stated = vehicleAnswer(vehicleFrom({ ...TWO_THRUSTERS, drives: [{ ...drive!, controller }] }));
    expect(codes(stated)).not.toContain("vehicle.limits-not-stated");
  });
});

test("a tether that does not reach is refused from the field of the vehicle, with both distances", () => {
  const short = () =>
    answerFor({ tether: SIX_THRUSTERS.tether!, scenario: { depth: 8, tetherLength: 5, tetherOffset: 25 } });
  expect(short).toThrow(InputProblem);
  // Pythagoras: sqrt(8^2 + 25^2) = 26.25 m.
  expect(short).toThrow(
    /^scenario\.tetherLength: A tether of 5\.00\sm does not reach a vehicle 8\.00\sm below its upper end and 25\.0\sm away along the surface\. Needed: more than 26\.2\sm\./,
  );
});

describe("numbers that no vehicle has", () => {
  const [drive] = SIX_THRUSTERS.drives;
  const propeller = (ahead: object) => ({
    drives: [{ ...drive!, propeller: { ...drive!.propeller, ahead: { ...drive!.propeller.ahead, ...ahead } } }],
  });
  test.each([
    { where: "hotelPower.value", change: { hotelPower: { value: -1 } } },
    { where: "interaction.wakeFraction.value", change: { interaction: { wakeFraction: { value: 1.2 } } } },
    { where: "interaction.thrustDeduction.value", change: { interaction: { thrustDeduction: { value: 1 } } } },
    {
      where: "drives.0.propeller.ahead.thrustCoefficient.value",
      change: propeller({ thrustCoefficient: { value: -0.3 } }),
    },
    {
      where: "drives.0.propeller.ahead.torqueCoefficient.value",
      change: propeller({ torqueCoefficient: { value: 0 } }),
    },
  ])("are refused from $where", ({ where, change }) => {
    expect(() => answerFor(change)).toThrow(InputProblem);
    expect(() => answerFor(change)).toThrow(`${where}: The `);
  });
});

test("what is said of several ways is said once, with the ways", () => {
  const one = { code: "vehicle.rest-coefficients-at-speed", message: "Going up.", where: "up" };
  const merged = mergedWayWarnings([
    { way: "astern", warnings: [{ ...one, where: "astern" }] },
    { way: "up", warnings: [one] },
  ]);
  expect(merged).toMatchObject([{ where: "speeds", message: expect.stringMatching(/^speeds: Going astern, up, the/) }]);
  expect(mergedWayWarnings([{ way: "up", warnings: [one] }])).toEqual([one]);
});

describe("a hotel load that nobody stated", () => {
  const told = (hotelPower: VehicleInput["hotelPower"]) => answerFor({ hotelPower: hotelPower! }).endurance;

  test("is told as taken beside the best speed, which lies far below full speed then", () => {
    const { sentence, warnings } = told({ value: 0 });
    expect(sentence).toMatch(/, with no hotel load, as none is stated\./);
    expect(warnings.map(({ code }) => code)).toContain("vehicle.hotel-load-not-stated");
    expect(sentence).toMatch(/Extrapolated: that is \d+(\.\d)?\s% of its greatest speed ahead/);
  });

  test("is not told of where it was stated, as nothing with a doubt too", () => {
    for (const hotelPower of [{ value: 15 }, { value: 0, standardUncertainty: 1 }]) {
      expect(told(hotelPower).sentence).not.toMatch(/no hotel load/);
    }
    expect(told({ value: 15 }).sentence).not.toMatch(/Extrapolated/);
  });
});

test("the map of holding a place names its last held row, the next one, and where the limit is told", () => {
  expect(answerFor({}).endurance.holding!.sentence).toMatch(
    /^0\.944 m\/s is the last row .* the next row, 1\.\d+ m\/s, is not\. That is no limit: .*“In a current from any side”/,
  );
});

test("a limit by cavitation that differs ahead and astern says which way it is", () => {
  const [drive] = SIX_THRUSTERS.drives;
  const drives = [{ ...drive!, propeller: { ...drive!.propeller, areaRatio: 0.5, pitchRatio: 1 } }];
  const { grounds } = vehicleFacts(vehicleFrom({ ...inStillWater, drives }));
  const told = grounds.filter(({ about }) => about === "cavitation").map(({ text }) => text);
  expect(told).toEqual([
    expect.stringMatching(/^Pushing ahead, cavit/),
    expect.stringMatching(/^Pushing astern, cavit/),
  ]);
});

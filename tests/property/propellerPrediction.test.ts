import fc from "fast-check";
import { expect, test } from "vitest";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { BestPitchRequest } from "../../shared/model/bestPitch.ts";
import { CarryOverRequest } from "../../shared/model/carryOver.ts";
import { CavitationRequest } from "../../shared/model/cavitation.ts";
import { ThrustAtSpeedRequest } from "../../shared/model/thrustAtSpeed.ts";
import { thrustAtSpeed } from "../../shared/propeller/atSpeed/thrustAtSpeed.ts";
import { carryOver } from "../../shared/propeller/carryOver/carryOver.ts";
import { cavitation } from "../../shared/propeller/cavitation/cavitation.ts";
import { bestPitch } from "../../shared/propeller/series/bestPitch.ts";
import { openWaterOfSeries } from "../../shared/propeller/series/openWaterOfSeries.ts";
import { seriesCurve } from "../../shared/propeller/series/seriesCurve.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const openScrew = fc.record({
  family: fc.constant("wageningen-b" as const),
  blades: fc.integer({ min: 2, max: 7 }),
  areaRatio: between(0.3, 1.05),
  pitchRatio: between(0.5, 1.4),
});
const nozzleScrew = fc.record({
  family: fc.constantFrom("ka-4-70-19a" as const, "ka-5-75-19a" as const),
  pitchRatio: between(0.6, 1.4),
});
const series = fc.oneof(openScrew, nozzleScrew);

/** Least and greatest area ratio tested with 2 to 7 blades: Carlton, Marine Propellers and Propulsion, table 6.4. */
const TESTED: readonly (readonly [number, number])[] = [
  [0.3, 0.3],
  [0.35, 0.8],
  [0.4, 1],
  [0.45, 1.05],
  [0.5, 0.8],
  [0.55, 0.85],
];
const testedScrew = openScrew.map((screw) => {
  const [low, high] = TESTED[screw.blades - 2]!;
  return { ...screw, areaRatio: low + ((screw.areaRatio - 0.3) / 0.75) * (high - low) };
});

/** Every number anywhere in `value`. */
function* numbersIn(value: unknown): Generator<number> {
  if (typeof value === "number") yield value;
  else if (typeof value === "object" && value !== null)
    for (const inner of Object.values(value)) yield* numbersIn(inner);
}

function expectFinite(result: unknown) {
  for (const number of numbersIn(result)) expect(Number.isFinite(number)).toBe(true);
}

/** `found` is `expected` within `tolerance` of it. */
function expectClose(found: number, expected: number, tolerance = 1e-9) {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance * Math.abs(expected));
}

test("inside the tests every series propeller pushes less with speed, stops, and never beats momentum theory", () => {
  fc.assert(
    fc.property(fc.oneof(testedScrew, nozzleScrew), (propeller) => {
      const { points, peak } = seriesCurve({ series: propeller, points: 30, outsideRange: false });
      expectFinite(points);
      for (let i = 1; i < points.length - 1; i++) {
        expect(points[i]!.thrustCoefficient).toBeLessThan(points[i - 1]!.thrustCoefficient);
        expect(points[i]!.efficiency!).toBeLessThanOrEqual(points[i]!.idealEfficiency ?? 1);
        expect(points[i]!.efficiency!).toBeLessThanOrEqual(peak.efficiency + 1e-9);
      }
    }),
  );
});

test("outside the tests, where asked for, a point is finite and flagged, or refused with its reason", () => {
  const wild = fc.record({
    family: fc.constant("wageningen-b" as const),
    blades: fc.integer({ min: 2, max: 7 }),
    areaRatio: between(0.01, 2),
    pitchRatio: between(0.01, 3),
  });
  fc.assert(
    fc.property(wild, between(-0.5, 2), between(1e3, 1e11), (propeller, advanceRatio, reynolds) => {
      const point = openWaterOfSeries({ series: propeller, advanceRatio, reynolds, outsideRange: true });
      expectFinite(point);
      const isInside =
        propeller.areaRatio >= 0.3 &&
        propeller.areaRatio <= 1.05 &&
        propeller.pitchRatio >= 0.5 &&
        propeller.pitchRatio <= 1.4;
      if (!isInside) expect(point.warnings.map(({ code }) => code)).toContain("propeller.series-range");
    }),
  );
});

const duty = fc.oneof(
  fc.record({ given: fc.constant("thrust" as const), thrust: between(0.001, 1e4) }),
  fc.record({ given: fc.constant("shaftPower" as const), shaftPower: between(0.001, 1e5) }),
);
const fixed = fc.oneof(
  fc.record({ given: fc.constant("diameter" as const), diameter: between(0.02, 1) }),
  fc.record({ given: fc.constant("rotationRate" as const), rotationRate: between(0.5, 500) }),
  fc.record({ given: fc.constant("both" as const), diameter: between(0.02, 1), rotationRate: between(0.5, 500) }),
);
const family = fc.oneof(
  fc.record({
    family: fc.constant("wageningen-b" as const),
    blades: fc.integer({ min: 2, max: 7 }),
    areaRatio: between(0.3, 1.05),
  }),
  fc.record({ family: fc.constantFrom("ka-4-70-19a" as const, "ka-5-75-19a" as const) }),
);
const speed = fc.oneof(fc.constant(0), between(0, 20), between(0, 1e-6));

test("the best pitch does its duty within rounding, no candidate does it better, or the reason is given", () => {
  fc.assert(
    fc.property(family, duty, fixed, speed, (propeller, asked, known, advanceSpeed) => {
      const request = { series: propeller, duty: asked, fixed: known, advanceSpeed, density: 1000 };
      const result = bestPitch(BestPitchRequest.parse(request));
      expectFinite(result);
      if (result.state === "failed") {
        expect(result.reason).toMatch(/\.$/);
        return;
      }
      const { best, kind } = result;
      expectClose(asked.given === "thrust" ? best.thrust : best.shaftPower, Object.values(asked)[1] as number, 2e-6);
      if (kind !== "optimum") return;
      const near = result.candidates.filter(({ pitchRatio }) => Math.abs(pitchRatio - best.pitchRatio) < 0.03);
      for (const candidate of near) {
        if (asked.given === "thrust") expect(best.shaftPower).toBeLessThanOrEqual(candidate.shaftPower * (1 + 1e-9));
        else expect(best.thrust).toBeGreaterThanOrEqual(candidate.thrust * (1 - 1e-9));
      }
    }),
    { numRuns: 150 },
  );
});

test("twice the size for four times the thrust is the same propeller at the same speed", () => {
  fc.assert(
    fc.property(
      openScrew,
      between(1, 50),
      between(0.03, 0.2),
      between(0, 2),
      (screw, thrust, diameter, advanceSpeed) => {
        const { pitchRatio: _, ...open } = screw;
        const ask = (T: number, D: number) =>
          bestPitch(
            BestPitchRequest.parse({
              ...{ series: open, advanceSpeed, density: 1000 },
              duty: { given: "thrust", thrust: T },
              fixed: { given: "diameter", diameter: D },
            }),
          );
        const [small, large] = [ask(thrust, diameter), ask(4 * thrust, 2 * diameter)];
        if (small.state === "failed" || large.state === "failed") {
          expect(large.state).toBe(small.state);
          return;
        }
        expectClose(large.best.pitchRatio, small.best.pitchRatio, 1e-5);
        expectClose(large.best.shaftPower, 4 * small.best.shaftPower, 1e-7);
        expectClose(large.best.rotationRate, small.best.rotationRate / 2, 1e-5);
      },
    ),
    { numRuns: 40 },
  );
});

const thruster = fc.record({
  thrust: between(0.01, 1e4),
  nozzleThrust: between(0, 1e4),
  advanceSpeed: between(0, 20),
  rotationRate: between(0.5, 300),
  diameter: between(0.02, 2),
  blades: fc.integer({ min: 2, max: 7 }),
  areaRatio: between(0.2, 1.1),
  pitchRatio: between(0.4, 1.6),
  shaftImmersion: between(0, 100),
});
const WATER = { kind: "sea", temperature: 285.15, salinity: 33 } as const;

test("deeper is never worse: the cavitation number grows, no line is newly crossed, and air is drawn no more", () => {
  const severity = { below: 0, unjudged: 0, near: 1, above: 2 };
  const wet = { unlikely: 0, possible: 1, likely: 2 };
  fc.assert(
    fc.property(thruster, between(0.01, 50), (at, deeper) => {
      const here = cavitation(CavitationRequest.parse({ ...at, fluid: WATER }));
      const there = cavitation(
        CavitationRequest.parse({ ...at, fluid: WATER, shaftImmersion: at.shaftImmersion + deeper }),
      );
      expectFinite(here);
      expect(there.cavitationNumber).toBeGreaterThan(here.cavitationNumber);
      expect(wet[there.ventilation.verdict]).toBeLessThanOrEqual(wet[here.ventilation.verdict]);
      for (const [i, { state }] of there.lines.entries()) {
        expect(severity[state]).toBeLessThanOrEqual(severity[here.lines[i]!.state]);
      }
    }),
  );
});

test("at the depth a line asks for, the propeller stands on the line", () => {
  fc.assert(
    fc.property(thruster, (at) => {
      const { lines } = cavitation(CavitationRequest.parse({ ...at, fluid: WATER }));
      for (const { line, depthNeeded, cavitationNumberNeeded } of lines) {
        if (depthNeeded === null || depthNeeded === 0) continue;
        const there = cavitation(
          CavitationRequest.parse({ ...at, fluid: WATER, shaftImmersion: depthNeeded * (1 + 1e-9) }),
        );
        expectClose(there.cavitationNumber, cavitationNumberNeeded!, 1e-8);
        expect(["near", "below"]).toContain(there.lines.find((other) => other.line === line)!.state);
      }
    }),
  );
});

const fluid = fc.oneof(
  fc.record({ kind: fc.constant("fresh" as const), temperature: between(274, 330) }),
  fc.record({ kind: fc.constant("sea" as const), temperature: between(275, 303), salinity: between(5, 40) }),
  fc.record({
    kind: fc.constant("air" as const),
    temperature: between(275, 305),
    pressure: between(9e4, 1.05e5),
    humidity: between(0, 1),
  }),
);
const side = fc.record({ fluid, rotationRate: between(20, 400), diameter: between(0.05, 1), nozzle: fc.boolean() });
const blade = fc.record({
  bladeCount: fc.integer({ min: 2, max: 6 }),
  chordRatio: between(0.05, 0.3),
  pitchRatio: between(0.4, 1.5),
  roughness: between(0, 5e-4),
});

test("carried over, thrust is that of the stand times every factor, and doubt never shrinks; or the way is too far", () => {
  fc.assert(
    fc.property(side, side, fc.option(blade, { nil: undefined }), (from, to, shape) => {
      const request = CarryOverRequest.parse({
        measured: {
          ...from,
          thrustCoefficient: { value: 0.25, standardUncertainty: 0.003 },
          torqueCoefficient: { value: 0.03, standardUncertainty: 0.0005 },
        },
        target: to,
        ...(shape === undefined ? {} : { blade: shape }),
      });
      const result = carriedOrTooFar(request);
      if (result === null) return;
      expectFinite(result);
      const before = thrustOf(0.25, from);
      expectClose(
        result.thrust.value,
        result.factors.reduce((product, { thrust }) => product * thrust, before),
      );
      const { thrustCoefficient: K_T } = result;
      expect(K_T.standardUncertainty / K_T.value).toBeGreaterThanOrEqual(0.003 / 0.25 - 1e-12);
      expect(result.shaftPower.value).toBeGreaterThan(0);
    }),
  );
});

/** The result, or null where it is refused for the one reason there may be. */
function carriedOrTooFar(request: CarryOverRequest) {
  try {
    return carryOver(request);
  } catch (error) {
    expect(error).toMatchObject({ problem: { code: "propeller.carry-over-too-far" } });
    return null;
  }
}

function thrustOf(K_T: number, at: CarryOverRequest["target"]): number {
  return K_T * fluidProperties(at.fluid).density * at.rotationRate ** 2 * at.diameter ** 4;
}

const bollard = fc.record({
  thrustCoefficient: fc.record({ value: between(0.05, 0.6), standardUncertainty: between(0, 0.02) }),
  torqueCoefficient: fc.record({ value: between(0.01, 0.1), standardUncertainty: between(0, 0.002) }),
});
const running = fc.oneof(
  fc.record({ given: fc.constant("rotationRate" as const), rotationRate: between(1, 300) }),
  fc.record({ given: fc.constant("shaftPower" as const), shaftPower: between(0.1, 5e3) }),
);

test("at rest every curve gives the measured coefficients with their doubt, and the band only widens from there", () => {
  fc.assert(
    fc.property(
      bollard,
      running,
      fc.option(series, { nil: undefined }),
      fc.array(speed, { minLength: 1, maxLength: 5 }),
      (rest, at, propeller, speeds) => {
        const result = thrustAtSpeed(
          ThrustAtSpeedRequest.parse({
            ...{ bollard: rest, fixed: at, speeds, diameter: 0.1, density: 1000 },
            ...(propeller === undefined ? {} : { series: propeller }),
          }),
        );
        expectFinite(result);
        const [first, ...others] = result.curve;
        expectClose(first!.thrustCoefficient.value, rest.thrustCoefficient.value);
        expectClose(first!.thrustCoefficient.standardUncertainty, rest.thrustCoefficient.standardUncertainty);
        expectClose(first!.torqueCoefficient.value, rest.torqueCoefficient.value);
        let before = 0;
        for (const { thrustParts } of others) {
          expect(thrustParts.shape).toBeGreaterThanOrEqual(before);
          before = thrustParts.shape;
        }
      },
    ),
  );
});

test("momentum theory alone has a band that holds every B screw of its own point at rest, up to J = 0.6", () => {
  const screw = testedScrew.filter(({ pitchRatio }) => pitchRatio >= 0.6);
  fc.assert(
    fc.property(screw, between(0, 0.6), (propeller, J) => {
      const at = (advanceRatio: number) => openWaterOfSeries({ series: propeller, advanceRatio, outsideRange: true });
      const { thrustCoefficient, torqueCoefficient } = at(0);
      const result = thrustAtSpeed(
        ThrustAtSpeedRequest.parse({
          bollard: { thrustCoefficient: { value: thrustCoefficient }, torqueCoefficient: { value: torqueCoefficient } },
          ...{ diameter: 1, density: 1, fixed: { given: "rotationRate", rotationRate: 1 }, speeds: [J] },
        }),
      );
      const [point] = result.points;
      if (point?.state !== "solved") throw new Error(point?.reason);
      const [low, high] = point.thrust.interval95;
      expect(at(J).thrustCoefficient).toBeGreaterThanOrEqual(low - 1e-12);
      expect(at(J).thrustCoefficient).toBeLessThanOrEqual(high + 1e-12);
    }),
  );
});

test("at fixed power too the band of momentum theory alone holds every B screw of its own point at rest, up to J = 0.6", () => {
  const screw = testedScrew.filter(({ pitchRatio }) => pitchRatio >= 0.6);
  fc.assert(
    fc.property(screw, between(0.05, 0.6), (propeller, J) => {
      const at = (advanceRatio: number) => openWaterOfSeries({ series: propeller, advanceRatio, outsideRange: true });
      const { thrustCoefficient, torqueCoefficient } = at(0);
      const truth = at(J);
      const result = thrustAtSpeed(
        ThrustAtSpeedRequest.parse({
          bollard: { thrustCoefficient: { value: thrustCoefficient }, torqueCoefficient: { value: torqueCoefficient } },
          ...{ diameter: 1, density: 1, speeds: [J] },
          fixed: { given: "shaftPower", shaftPower: 2 * Math.PI * truth.torqueCoefficient },
        }),
      );
      const [point] = result.points;
      if (point?.state !== "solved") throw new Error(point?.reason);
      const [low, high] = point.thrust.interval95;
      expect(truth.thrustCoefficient).toBeGreaterThanOrEqual(low - 1e-12);
      expect(truth.thrustCoefficient).toBeLessThanOrEqual(high + 1e-12);
    }),
  );
});

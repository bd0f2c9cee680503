import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { CoastDownData, TerminalData, TowData } from "../../shared/model/vehicle/dragFit.ts";
import { ShapeItem } from "../../shared/model/vehicle/dragShapes.ts";
import { uniformsFrom } from "../../shared/numeric/pcg32.ts";
import { fitDrag } from "../../shared/vehicle/drag/fitDrag.ts";
import { shapeDrag } from "../../shared/vehicle/drag/shapeDrag.ts";
import { terminalSpeed } from "../../shared/vehicle/motion/closedForms.ts";
import { coastDown, startUp } from "../motionClosedForms.ts";
import "../fixedSeed.ts";
import { dragAlong } from "../../shared/vehicle/motion/wayForces.ts";
import { relative } from "../relative.ts";
import { normalFrom } from "./benchSimulatedRun.ts";

const size = fc.double({ min: 0.01, max: 2, noNaN: true });
const OPTIONS = { speed: 1, kinematicViscosity: 1e-6, interferenceUncertainty: 0.15 };
const item = (shape: Record<string, unknown>) => ShapeItem.parse({ name: "part", ...shape });

describe("shapes", () => {
  const SHAPES: readonly ((k: number) => Record<string, unknown>)[] = [
    (k) => ({ kind: "sphere", diameter: 0.1 * k }),
    (k) => ({ kind: "plate", width: 0.3 * k, height: 0.1 * k }),
    (k) => ({ kind: "cube", side: 0.1 * k, facing: "edge" }),
    (k) => ({ kind: "axialCylinder", diameter: 0.1 * k, length: 0.35 * k }),
    (k) => ({ kind: "crossCylinder", diameter: 0.02 * k, length: 0.35 * k }),
    (k) => ({ kind: "squareBar", side: 0.02 * k, length: 0.35 * k, facing: "face" }),
    (k) => ({ kind: "ellipsoid", diameter: 0.1 * k, length: 0.3 * k, boundaryLayer: "turbulent" }),
  ];
  test.each(SHAPES)("the drag area of shape %# grows with the square of its size", (shape) => {
    fc.assert(
      fc.property(size, (k) => {
        const [one, scaled] = [shapeDrag([item(shape(1))], OPTIONS), shapeDrag([item(shape(k))], OPTIONS)];
        expect(scaled.dragArea.value).toSatisfy(relative(k * k * one.dragArea.value, 1e-12));
      }),
    );
  });

  test("a list is the sum of its rows, the shares add up to 1, and order does not matter", () => {
    const items = SHAPES.map((shape, i) => item({ ...shape(1), count: i + 1, exposedShare: 1 - i / 10 }));
    const whole = shapeDrag(items, OPTIONS);
    const alone = items.reduce((sum, one) => sum + shapeDrag([one], OPTIONS).dragArea.value, 0);
    expect(whole.dragArea.value).toSatisfy(relative(alone, 1e-12));
    expect(whole.rows.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    const turned = shapeDrag([...items].reverse(), OPTIONS).dragArea;
    expect(turned.standardUncertainty).toSatisfy(relative(whole.dragArea.standardUncertainty, 1e-12));
  });

  test("four of a kind are as uncertain as one, four kinds are less so", () => {
    const free = { ...OPTIONS, interferenceUncertainty: 0 };
    const relativeDoubt = (items: readonly ShapeItem[]) => {
      const { value, standardUncertainty } = shapeDrag(items, free).dragArea;
      return standardUncertainty / value;
    };
    const disc = item({ kind: "disc", diameter: 0.1 });
    const discs = Array.from({ length: 4 }, () => disc);
    expect(relativeDoubt(discs)).toBeCloseTo(0.05, 12);
    expect(relativeDoubt([disc, item({ kind: "cube", side: 0.1, facing: "face" })])).toBeLessThan(0.05);
  });
});

describe("drag and motion", () => {
  const number = fc.double({ min: 0.05, max: 50, noNaN: true });

  test("drag is four times as large at twice the speed, and none at rest", () => {
    fc.assert(
      fc.property(number, size, (dragArea, V) => {
        const law = { dragArea, linear: 0, addedMass: 0 };
        expect(dragAlong(law, 1000, 2 * V)).toSatisfy(relative(4 * dragAlong(law, 1000, V), 1e-12));
        expect(dragAlong({ ...law, linear: 1 }, 1000, 0)).toBe(0);
      }),
    );
    // ½ · 1000 kg/m³ · 0.045 m² · (2 m/s)² + 3 N·s/m · 2 m/s, by hand.
    expect(dragAlong({ dragArea: 0.045, linear: 3, addedMass: 0 }, 1000, 2)).toBeCloseTo(96, 12);
  });

  test("terminal speed balances the force, and start-up ends there", () => {
    fc.assert(
      fc.property(number, size, fc.double({ min: 0, max: 10, noNaN: true }), (force, dragArea, linear) => {
        const law = { quadratic: 0.5 * 1000 * dragArea, linear };
        const V = terminalSpeed({ force, ...law });
        expect(dragAlong({ dragArea, linear, addedMass: 0 }, 1000, V)).toSatisfy(relative(force, 1e-12));
        const late = startUp({ mass: 10, ...law }, force, 4000);
        expect(late.speed).toSatisfy(relative(V, 1e-9));
      }),
    );
  });

  test("the derivative of the way is the speed, coasting and starting up", () => {
    fc.assert(
      fc.property(number, size, fc.double({ min: 0, max: 5, noNaN: true }), size, (heavier, t, linear, startSpeed) => {
        const body = { mass: 5 + heavier, quadratic: 20, linear };
        const h = 1e-5;
        for (const at of [(s: number) => coastDown(body, startSpeed, s), (s: number) => startUp(body, 30, s)]) {
          const slope = (at(t + h).distance - at(t - h).distance) / (2 * h);
          expect(slope).toSatisfy(relative(at(t).speed, 1e-5));
        }
      }),
    );
  });

  test("a linear term that goes to 0 gives the quadratic law", () => {
    const plain = coastDown({ mass: 17.5, quadratic: 22.5 }, 1.5, 3);
    const almost = coastDown({ mass: 17.5, quadratic: 22.5, linear: 1e-12 }, 1.5, 3);
    expect(almost.speed).toSatisfy(relative(plain.speed, 1e-11));
    expect(almost.distance).toSatisfy(relative(plain.distance, 1e-11));
  });
});

describe("fits", () => {
  const time = Array.from({ length: 60 }, (_, i) => 0.1 * i);
  const cases = fc.tuple(fc.double({ min: 0.005, max: 0.5, noNaN: true }), fc.double({ min: 2, max: 80, noNaN: true }));

  test("without noise the truth comes back: tow, coast-down by speed and by distance, terminal speed", () => {
    fc.assert(
      fc.property(cases, ([dragArea, mass]) => {
        const b = 500 * dragArea;
        const speed = [0.3, 0.6, 0.9, 1.2];
        const tow = TowData.parse({ method: "tow", density: 1000, speed, force: speed.map((V) => b * V * V) });
        const coast = (measured: "speed" | "distance") =>
          CoastDownData.parse({
            ...{ method: "coastDown", density: 1000, time, measured, mass: { value: mass } },
            values: time.map((t) => coastDown({ mass, quadratic: b }, 1.5, t)[measured]),
          });
        const sink = { netWeight: 3, time, depth: time.map((t) => Math.sqrt(3 / b) * t) };
        const terminal = TerminalData.parse({ method: "terminal", density: 1000, runs: [sink] });
        for (const data of [tow, coast("speed"), coast("distance"), terminal])
          expect(fitDrag(data).dragArea.value).toSatisfy(relative(dragArea, 1e-6));
      }),
      { numRuns: 30 },
    );
  });

  test("both terms come back from a quiet coast-down and from a quiet tow", () => {
    const body = { mass: 17.5, quadratic: 22.5, linear: 6 };
    const values = time.map((t) => coastDown(body, 1.5, t).speed);
    const coast = fitDrag(
      CoastDownData.parse({
        ...{ method: "coastDown", density: 1000, time, measured: "speed", values, model: "quadraticLinear" },
        mass: { value: 12.5 },
        addedMass: { value: 5 },
      }),
    );
    const speed = [0.2, 0.4, 0.6, 0.8, 1];
    const force = speed.map((V) => 22.5 * V * V + 6 * V);
    const tow = fitDrag(TowData.parse({ method: "tow", density: 1000, speed, force, model: "quadraticLinear" }));
    for (const fit of [coast, tow]) {
      expect(fit.linear.value).toSatisfy(relative(6, 1e-5));
      expect(fit.dragArea.value).toSatisfy(relative(0.045, 1e-5));
    }
  });

  test("a linear term that is there and not fitted is noticed", () => {
    const normal = normalFrom(uniformsFrom(5));
    const speed = Array.from({ length: 24 }, (_, i) => 0.2 + 0.2 * (i % 6));
    const force = speed.map((V) => 22.5 * V * V + 6 * V + 0.3 * normal());
    const fit = fitDrag(TowData.parse({ method: "tow", density: 1000, speed, force }));
    const codes = fit.warnings.map(({ code }) => code);
    expect(codes).toContain("vehicle.fit-linear-term");
    expect(codes).toContain("vehicle.fit-lack");
    expect(fit.linearTest!.linear.interval95[0]).toBeLessThan(6);
    expect(fit.linearTest!.linear.interval95[1]).toBeGreaterThan(6);
  });

  test("noise of a logged speed makes the drag too small by about what the warning says", () => {
    const normal = normalFrom(uniformsFrom(6));
    const long = Array.from({ length: 4000 }, (_, i) => 0.05 * i);
    const truth = long.map((_, i) => 0.5 + 0.25 * Math.floor(i / 1000));
    const speed = truth.map((V) => V + 0.1 * normal());
    const force = truth.map((V) => 22.5 * V * V + 0.2 * normal());
    const fit = fitDrag(TowData.parse({ method: "tow", density: 1000, time: long, speed, force }));
    const part = fit.parts.find(({ cause }) => cause === "noise of the speed reading")!.standardUncertainty;
    expect(fit.warnings.map(({ code }) => code)).toContain("vehicle.fit-speed-noise");
    expect(0.045 - fit.dragArea.value).toBeGreaterThan(0.5 * part);
    expect(0.045 - fit.dragArea.value).toBeLessThan(1.5 * part);
  });
});

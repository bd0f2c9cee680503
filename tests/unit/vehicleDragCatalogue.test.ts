import { describe, expect, test } from "vitest";
import { VehicleDrag } from "../../shared/model/vehicle/drag.ts";
import { ShapeItem } from "../../shared/model/vehicle/dragShapes.ts";
import { spheroidAddedMass, spheroidCoefficients } from "../../shared/vehicle/drag/addedMass.ts";
import { axisDrag } from "../../shared/vehicle/drag/axisDrag.ts";
import { formFactor, ittcFriction, laminarFriction, streamlinedDragArea } from "../../shared/vehicle/drag/friction.ts";
import { shapeDrag } from "../../shared/vehicle/drag/shapeDrag.ts";
import { slowed, terminalSpeed } from "../../shared/vehicle/motion/closedForms.ts";
import { coastDown } from "../motionClosedForms.ts";

const FRESH = { kind: "fresh", temperature: 288.15 };
const OPTIONS = { speed: 1, kinematicViscosity: 1.139e-6, interferenceUncertainty: 0.15 };
const item = (shape: Record<string, unknown>) => ShapeItem.parse({ name: "part", ...shape });

// The numbers printed in the docstrings, to the digits printed.
test.each([
  { name: "ittcFriction", value: ittcFriction(1e6), printed: 0.0046875, digits: 9 },
  { name: "laminarFriction", value: laminarFriction(1e4), printed: 0.01328, digits: 9 },
  { name: "formFactor", value: formFactor(6), printed: 1.1345, digits: 4 },
  {
    name: "streamlinedDragArea",
    value: streamlinedDragArea({ length: 1.2, diameter: 0.2, wettedArea: 2.6, kinematicViscosity: 1.139e-6 }, 1.5),
    printed: 0.012548,
    digits: 6,
  },
  { name: "spheroidCoefficients", value: spheroidCoefficients(2).axial, printed: 0.21002, digits: 5 },
  {
    name: "spheroidAddedMass",
    value: spheroidAddedMass({ length: 0.2, diameter: 0.2, density: 1000, motion: "axial" }),
    printed: 2.0944,
    digits: 4,
  },
  { name: "slowed", value: slowed({ quadratic: 22.5 / 17.5, linear: 0 }, 1.5, 1).speed, printed: 0.5122, digits: 4 },
  { name: "terminalSpeed", value: terminalSpeed({ force: 40, quadratic: 22.5 }), printed: 1.3333, digits: 4 },
])("the example of $name is $printed", ({ value, printed, digits }) => {
  expect(value).toBeCloseTo(printed, digits);
});

describe("a list of shapes", () => {
  test("gives a row for each part with its share, and the doubts of coefficients and interference together", () => {
    const items = [
      item({ name: "hull", kind: "roundedCylinder", diameter: 0.2, length: 0.6 }),
      item({ name: "legs", kind: "crossCylinder", diameter: 0.02, length: 0.2, count: 4, exposedShare: 0.5 }),
    ];
    const { rows, dragArea, parts } = shapeDrag(items, OPTIONS);
    const hull = (0.25 * Math.PI * 0.2 ** 2) / 4;
    const legs = 4 * 0.5 * 0.82 * 0.02 * 0.2;
    expect(rows.map((row) => [row.name, row.count])).toEqual([
      ["hull", 1],
      ["legs", 4],
    ]);
    expect(rows[0]!.dragArea).toBeCloseTo(hull, 12);
    expect(rows[1]!.dragArea).toBeCloseTo(legs, 12);
    expect(rows[1]!.share).toBeCloseTo(legs / (hull + legs), 12);
    expect(rows[1]!.described).toContain("cylinder across the flow");
    expect(parts.coefficients).toBeCloseTo(Math.hypot(0.12 * hull, 0.1 * legs), 12);
    expect(parts.interference).toBeCloseTo(0.15 * (hull + legs), 12);
    expect(dragArea.standardUncertainty).toBeCloseTo(Math.hypot(parts.coefficients, parts.interference), 12);
  });

  test.each([
    {
      what: "a long cylinder along the flow",
      shape: { kind: "axialCylinder", diameter: 0.05, length: 1 },
      code: "vehicle.drag-shape-range",
      says: /L\/d 20\.0 lies outside.*0\.990/,
    },
    {
      what: "a short cylinder across the flow",
      shape: { kind: "crossCylinder", diameter: 0.1, length: 0.05 },
      code: "vehicle.drag-shape-range",
      says: /L\/d 0\.500 lies outside.*0\.640/,
    },
    {
      what: "a sphere beyond the drag crisis",
      shape: { kind: "sphere", diameter: 0.4 },
      code: "vehicle.drag-reynolds",
      says: /3\.5 × 10⁵.*drag crisis.*0\.1 to 0\.2/,
    },
    {
      what: "a thin rod in slow flow",
      shape: { kind: "crossCylinder", diameter: 0.004, length: 0.1 },
      code: "vehicle.drag-reynolds",
      says: /3\.5 × 10³/,
    },
    {
      what: "a streamlined body that is too short for its Reynolds number",
      shape: { kind: "streamlinedBody", diameter: 0.05, length: 0.2 },
      code: "vehicle.drag-reynolds",
      says: /laminar plate/,
    },
    {
      what: "a needle",
      shape: { kind: "streamlinedBody", diameter: 0.05, length: 1 },
      code: "vehicle.drag-shape-range",
      says: /l\/d 20/,
    },
  ])("warns of $what and computes it all the same", ({ shape, code, says }) => {
    const { warnings, dragArea } = shapeDrag([item(shape)], OPTIONS);
    expect(warnings.map((one) => one.code)).toEqual([code]);
    expect(warnings[0]!.message).toMatch(says);
    expect(dragArea.value).toBeGreaterThan(0);
  });

  test("says nothing of shapes inside their tables", () => {
    const shapes = [
      item({ kind: "disc", diameter: 0.1 }),
      item({ kind: "crossCylinder", diameter: 0.02, length: 0.3 }),
      item({ kind: "streamlinedBody", diameter: 0.2, length: 1 }),
      item({ kind: "stated", area: 0.01, dragCoefficient: 0.9 }),
    ];
    expect(shapeDrag(shapes, OPTIONS).warnings).toEqual([]);
  });

  test.each([
    { what: "nothing exposed", items: [item({ kind: "disc", diameter: 0.1, exposedShare: 0 })], says: /0 m²/ },
    { what: "an empty list", items: [], says: /no shape is listed/ },
  ])("$what is refused", ({ items, says }) => {
    expect(() => shapeDrag(items, OPTIONS)).toThrow(says);
    expect(() => shapeDrag(items, OPTIONS)).toThrow(
      expect.objectContaining({ problem: expect.objectContaining({ code: "vehicle.drag-zero" }) }),
    );
  });
});

test.each([
  { what: "no drag", action: () => terminalSpeed({ force: 3, quadratic: 0 }), says: /quadratic drag is 0/ },
  { what: "flow too slow for the friction line", action: () => ittcFriction(100), says: /Reynolds number is 100/ },
  { what: "a flattened spheroid", action: () => spheroidCoefficients(0.5), says: /a\/b is 0\.5/ },
  {
    what: "a flattened body",
    action: () => spheroidAddedMass({ length: 0.1, diameter: 0.2, density: 1000, motion: "axial" }),
    says: /0\.1 m long and 0\.2 m wide/,
  },
])("$what is refused with its value", ({ action, says }) => {
  expect(action).toThrow(says);
});

describe("the drag of a vehicle", () => {
  const typed = (dragArea: number) => ({ drag: { from: "typed", dragArea, standardUncertainty: 0.1 * dragArea } });

  test("astern is as forward and up as down unless given; added mass of a spheroid comes with its doubt", () => {
    const found = axisDrag(
      VehicleDrag.parse({
        fluid: FRESH,
        surge: {
          forward: typed(0.03),
          astern: { ...typed(0.04), linear: { value: 2 } },
          addedMass: { from: "spheroid", length: 0.6, diameter: 0.3, motion: "axial" },
        },
        heave: { down: typed(0.09), addedMass: { from: "typed", mass: 12, standardUncertainty: 3 } },
      }),
    );
    expect(found.surge!.forward.dragArea.value).toBe(0.03);
    expect(found.surge!.astern.dragArea.value).toBe(0.04);
    expect(found.surge!.astern.linear.value).toBe(2);
    expect(found.heave!.up).toEqual(found.heave!.down);
    expect(found.sway).toBeNull();
    // Lamb: 0.2100 of 999.1 kg/m³ × π/6 × 0.6 × 0.3² = 28.25 kg.
    expect(found.surge!.forward.addedMass.value).toBeCloseTo(5.933, 3);
    expect(found.surge!.forward.addedMass.standardUncertainty).toBeCloseTo(0.2 * 5.933, 3);
    expect(found.warnings).toEqual([]);
  });

  test("an added mass that is not given is told, and warnings say which direction they are from", () => {
    const shapes = {
      drag: { from: "shapes", speed: 1, items: [{ name: "dome", kind: "sphere", diameter: 0.5 }] },
    };
    const found = axisDrag(VehicleDrag.parse({ fluid: FRESH, surge: { forward: shapes }, sway: { sideways: shapes } }));
    expect(found.warnings.map(({ code, where }) => [code, where])).toEqual([
      ["vehicle.added-mass-missing", "surge"],
      ["vehicle.added-mass-missing", "sway"],
      ["vehicle.drag-reynolds", "surge, forward: dome"],
      ["vehicle.drag-reynolds", "sway: dome"],
    ]);
    expect(found.surge!.astern.rows).toHaveLength(1);
    expect(found.surge!.forward.addedMass).toEqual({ value: 0, standardUncertainty: 0, interval95: [0, 0] });
  });

  test("a coast-down that states no added mass uses that of its axis", () => {
    const time = Array.from({ length: 40 }, (_, i) => 0.2 * i);
    const values = time.map((t) => coastDown({ mass: 17.5, quadratic: 22.5 }, 1.5, t).speed);
    const data = { method: "coastDown", density: 1000, time, measured: "speed", values, mass: { value: 12.5 } };
    const surge = {
      forward: { drag: { from: "fitted", data } },
      addedMass: { from: "typed", mass: 5, standardUncertainty: 1 },
    };
    const { surge: found, warnings } = axisDrag(VehicleDrag.parse({ fluid: FRESH, surge }));
    expect(found!.forward.dragArea.value).toBeCloseTo(0.045, 6);
    expect(found!.forward.dragArea.standardUncertainty).toBeCloseTo(0.045 / 17.5, 6);
    expect(found!.forward.from).toBe("fitted to a coast-down");
    expect(warnings).toEqual([]);
  });

  test("water comes from the drag or from the vehicle, and must be given", () => {
    const drag = VehicleDrag.parse({ surge: { forward: typed(0.03), addedMass: { from: "typed", mass: 5 } } });
    expect(axisDrag(drag, { kind: "fresh", temperature: 288.15 }).surge!.forward.dragArea.value).toBe(0.03);
    expect(() => axisDrag(drag)).toThrow(/not said in which water/);
  });

  test("what goes wrong inside a direction is told from there", () => {
    const data = { method: "tow", density: 1000, speed: [1, 2], force: [-1, -4] };
    const drag = VehicleDrag.parse({ fluid: FRESH, sway: { sideways: { drag: { from: "fitted", data } } } });
    expect(() => axisDrag(drag)).toThrow(/^sway, tow: the force does not grow with the speed/);
  });

  test.each([
    { what: "a negative area", surge: { forward: typed(-1) } },
    { what: "an area of 0", surge: { forward: typed(0) } },
    { what: "a negative added mass", surge: { forward: typed(1), addedMass: { from: "typed", mass: -1 } } },
  ])("$what does not get into a document", ({ surge }) => {
    expect(VehicleDrag.safeParse({ fluid: FRESH, surge }).success).toBe(false);
  });
});

import { describe, expect, test } from "vitest";
import { Grit, type SurfaceState } from "../../shared/model/surfaceState.ts";
import { GRAIN_SIZES } from "../../shared/propeller/finish/grits.data.ts";
import { surfaceOf } from "../../shared/propeller/finish/surfaceOf.ts";

const printed = (more: object = {}) =>
  ({ state: "printed", layerHeight: 2e-4, flow: "acrossLayers", slope: 0, ...more }) as SurfaceState;

describe("roughness of a named surface", () => {
  test.each([
    { state: printed(), roughness: 2e-4, why: "flat on the layers the step is the layer" },
    { state: printed({ slope: Math.PI / 3 }), roughness: 1e-4, why: "h cos α of a slope of 60°" },
    { state: printed({ slope: Math.PI / 2 }), roughness: 3e-5, why: "ridges of the beads on an upright wall" },
    { state: printed({ flow: "alongLayers" }), roughness: 6e-5, why: "ridges along the flow are felt less" },
    { state: { state: "sanded", grit: "P400" }, roughness: 5e-6, why: "a seventh of 35 µm" },
    { state: { state: "filledAndSanded", grit: "P400" }, roughness: 5e-6, why: "the same scratches" },
    { state: { state: "coated" }, roughness: 5e-6, why: "common practice" },
    { state: { state: "machined" }, roughness: 3e-6, why: "common practice" },
  ] as const)("$state.state: $why", ({ state, roughness }) => {
    expect(surfaceOf(state).surface.roughness).toBeCloseTo(roughness, 9);
  });

  test("every number says where it comes from", () => {
    for (const state of [printed(), { state: "sanded", grit: "P80" }, { state: "coated" }] as const) {
      const { roughnessBasis, liftFactorBasis } = surfaceOf(state);
      expect(roughnessBasis).not.toBe("");
      expect(liftFactorBasis).not.toBe("");
    }
  });
});

test("finer grit leaves a finer surface, and every grit of the form has a grain size", () => {
  const sizes = Grit.options.map((grit) => GRAIN_SIZES[grit]);
  expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
});

test("rougher print loses more lift; filled, coated and machined blades lose none", () => {
  const lift = (state: SurfaceState) => surfaceOf(state).surface.liftFactor;
  expect(lift(printed({ layerHeight: 3e-4 }))).toBeLessThan(lift(printed()));
  expect(lift(printed())).toBeLessThan(lift({ state: "sanded", grit: "P240" }));
  for (const state of [{ state: "filledAndSanded", grit: "P240" }, { state: "coated" }, { state: "machined" }] as const)
    expect(lift(state)).toBe(1);
});

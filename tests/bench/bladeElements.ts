import { solvedBlade } from "../../shared/propeller/blade/bladeElements.ts";
import { bladeShape } from "../../shared/propeller/blade/bladeShape.ts";
import { seriesGeometry } from "../../shared/propeller/series/seriesGeometry.ts";
import type { BenchRow } from "./benchRow.ts";

const SWEEPS = 40;
const POINTS = 200;
/** Operating points a second that a slider over a whole map needs, and a fit. */
const LEAST = 2000;

/** Evaluations of the sine a second, as a measure of this machine. */
function sinesPerSecond(): number {
  const count = 5_000_000;
  const begin = performance.now();
  let sum = 0;
  for (let i = 0; i < count; i++) sum += Math.sin(i * 1e-3);
  const seconds = (performance.now() - begin) / 1000;
  return Number.isFinite(sum) ? count / seconds : 0;
}

export function measureBladeElements(): BenchRow[] {
  const series = { family: "wageningen-b", blades: 3, areaRatio: 0.5, pitchRatio: 0.9 } as const;
  const shape = bladeShape(seriesGeometry({ series, diameter: 0.08, outsideRange: false }));
  const fluid = { density: 998, dynamicViscosity: 1e-3, kinematicViscosity: 1e-6, vapourPressure: 2300 };
  const surface = { roughness: 2e-5, liftFactor: 1, dragFactor: 1 };
  const sweep = () => {
    for (let i = 0; i < POINTS; i++) {
      solvedBlade(shape, { surface, fluid, rotationRate: 50, advanceSpeed: (4 * i) / POINTS });
    }
  };
  const rateNow = () => {
    const begin = performance.now();
    for (let i = 0; i < SWEEPS; i++) sweep();
    return (SWEEPS * POINTS * 1000) / (performance.now() - begin);
  };
  // The first rounds are spent on compiling.
  const rate = Math.max(...Array.from({ length: 4 }, rateNow));
  const sines = sinesPerSecond() / rate;
  return [
    {
      what: `blade elements: operating points of ${shape.pieces.length} pieces a second`,
      measured: `${Math.round(rate)}`,
      wanted: `at least ${LEAST}; 20000 by design`,
      met: rate >= LEAST,
    },
    {
      what: "blade elements: cost of an operating point over that of a sine",
      measured: `${Math.round(sines)}`,
      wanted: "under 20000",
      met: sines < 20_000,
    },
  ];
}

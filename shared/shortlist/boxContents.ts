import { scaledPropeller } from "../drive/carriedPropeller.ts";
import { seriesPropellerCurve } from "../drive/propellerCurves.ts";
import type { DrivePropeller } from "../model/drivePropeller.ts";
import type { SupplyAssembly } from "../model/driveTrain.ts";
import type { FluidState } from "../model/fluid.ts";
import type { SeriesPropeller, SeriesWithoutPitch } from "../model/seriesPropeller.ts";
import type { PartsBox, SeriesToTry } from "../model/shortlist.ts";
import { formatNumber } from "../quantity/format.ts";
import type { Warning } from "../quantity/warning.ts";
import type { Sizes } from "./combinations.ts";

/** Supplies of a box: those put together already, then each pack with each tether, or aboard where there is none. */
export function allSupplies({ supplies, packs, tethers }: PartsBox): SupplyAssembly[] {
  const more = packs.flatMap((pack) =>
    tethers.length === 0 ? [{ pack }] : tethers.map((tether) => ({ pack, tether })),
  );
  return [...supplies, ...more];
}

export interface AllPropellers {
  readonly propellers: readonly DrivePropeller[];
  readonly warnings: readonly Warning[];
}

/** Propellers of a box: as they are, each scaled to the diameters asked for, and those of the series. */
export function allPropellers({ propellers, scaleTo, series }: PartsBox, water: FluidState): AllPropellers {
  const scaled = propellers.flatMap((propeller) =>
    scaleTo.filter((D) => D !== propeller.diameter.value).map((D) => scaledTo(propeller, D, water)),
  );
  const told = series.flatMap(ofSeries);
  const warnings = told.flatMap((one) => one.warnings);
  return {
    propellers: [...propellers, ...scaled, ...told.map(({ propeller }) => propeller)],
    warnings: once(warnings),
  };
}

/** How many of each kind a box gives, without making them. */
export function sizesOf(box: PartsBox): Sizes {
  const { motors, controllers, withoutController, gears, directDrive, propellers, scaleTo, series } = box;
  const copies = propellers.map(({ diameter }) => 1 + scaleTo.filter((D) => D !== diameter.value).length);
  const ofSeriesCount = series.map(({ pitchRatios, diameters }) => pitchRatios.length * diameters.length);
  return {
    motors: motors.length,
    controllers: controllers.length + (withoutController ? 1 : 0),
    supplies: box.supplies.length + box.packs.length * Math.max(1, box.tethers.length),
    gears: gears.length + (directDrive ? 1 : 0),
    propellers: [...copies, ...ofSeriesCount].reduce((sum, one) => sum + one, 0),
  };
}

/** Any rotation rate, rev/s: the copy turns at the same tip speed, and only the change of the Reynolds number counts. */
const SOME_RATE = 30;

const millimetres = (metres: number) => `${formatNumber(1000 * metres)} mm`;

function scaledTo(propeller: DrivePropeller, diameter: number, water: FluidState): DrivePropeller {
  const size = { value: diameter, standardUncertainty: 0 };
  const from = { fluid: water, rotationRate: SOME_RATE };
  const { propeller: copy } = scaledPropeller(propeller, size, { from, to: { fluid: water } });
  return { ...copy, name: `${propeller.name} at ${millimetres(diameter)}`.slice(0, 120) };
}

function ofSeries({ series, pitchRatios, diameters }: SeriesToTry) {
  return pitchRatios.flatMap((pitchRatio) => {
    const whole = { ...series, pitchRatio } as SeriesPropeller;
    return diameters.map((diameter) => seriesPropeller(whole, diameter));
  });
}

/** A propeller of a series in a size, as a drive takes it; its mass and price are not known. */
export function seriesPropeller(series: SeriesPropeller, diameter: number) {
  const { curve, warnings } = seriesPropellerCurve({ series });
  const family = seriesWords(series);
  const propeller: DrivePropeller = {
    name: `${family}, P/D ${formatNumber(series.pitchRatio)}, ${millimetres(diameter)}`,
    source: "series",
    from: `${family} as published: what a smooth, well-made propeller of full size does`,
    diameter: { value: diameter, standardUncertainty: 0 },
    ahead: curve,
    ...bladesOf(series),
    pitchRatio: series.pitchRatio,
    nozzle: series.family !== "wageningen-b",
  };
  return { propeller, warnings };
}

/** A series without its pitch, in words. */
export function seriesWords(series: SeriesWithoutPitch): string {
  if (series.family === "wageningen-b")
    return `B series, ${series.blades} blades, area ratio ${formatNumber(series.areaRatio)}`;
  return `${series.family === "ka-4-70-19a" ? "Ka 4-70" : "Ka 5-75"} in nozzle 19A`;
}

function bladesOf(series: SeriesPropeller): Pick<DrivePropeller, "bladeCount" | "areaRatio"> {
  if (series.family === "wageningen-b") return { bladeCount: series.blades, areaRatio: series.areaRatio };
  return series.family === "ka-4-70-19a" ? { bladeCount: 4, areaRatio: 0.7 } : { bladeCount: 5, areaRatio: 0.75 };
}

/** Each warning once: every pitch of a series says the same. */
function once(warnings: readonly Warning[]): Warning[] {
  return [...new Map(warnings.map((one) => [one.message, one])).values()];
}

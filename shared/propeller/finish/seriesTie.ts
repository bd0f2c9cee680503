import { fluidProperties } from "../../fluid/fluidProperties.ts";
import type { BladeGeometry } from "../../model/bladeGeometry.ts";
import type { ModelUncertainty } from "../../model/finishFit.ts";
import { formatNumber } from "../../quantity/format.ts";
import { OutOfDomain } from "../../quantity/problem.ts";
import { type Warning, warning } from "../../quantity/warning.ts";
import { bladeElements } from "../blade/bladeElements.ts";
import { SLENDER } from "../blade/broadBlades.data.ts";
import { comparableSeries } from "../series/comparableSeries.ts";
import { openWaterOfSeries } from "../series/openWaterOfSeries.ts";
import { seriesGeometry } from "../series/seriesGeometry.ts";

/** Factors on the thrust and torque coefficient that blade elements give. */
export interface SeriesTie {
  readonly thrust: number;
  readonly torque: number;
}

export interface TiedBlades {
  readonly tie: SeriesTie;
  /** Doubt that stays. */ readonly model: ModelUncertainty;
  readonly warnings: readonly Warning[];
}

const UNTIED: SeriesTie = { thrust: 1, torque: 1 };

/**
 * What blade elements miss on broad blades of any surface, root mean square over 28 B screws at rest (2 to 5 blades, area
 * ratio 0.3 to 0.7, pitch ratio 0.6 to 1.2) against the polynomials of their tests.
 */
export const BROAD_DOUBT = { thrust: 0.13, torque: 0.1 } as const;

/** Where the B series was tested: a screw of some 0.25 m at a Reynolds number of about 2e6. */
const TESTED = { diameter: 0.25, rotationRate: 30, fluid: { kind: "fresh", temperature: 288.15 } } as const;

/**
 * Blade elements overrate the lift of broad blades, whose sections stand in flow curved by themselves. They are tied to the
 * published tests of the B screw of equal blade count, pitch ratio and area ratio at rest:
 *
 *   factor = K of the series over K of blade elements for the series' own blades, smooth, at its Reynolds number
 *
 * Half of what the factor changes is kept as doubt, since the blades are not the series'. Broad blades outside the tests of
 * the series are not tied, and their doubt is that of all broad blades.
 *
 * Source   Oosterveld & van Oossanen, International Shipbuilding Progress 22 (1975) 251; half: common practice, no source.
 * Assumes  the factor at rest also holds at speed, and does not depend on the surface.
 */
export function seriesTie(geometry: BladeGeometry, model: ModelUncertainty): TiedBlades {
  const series = comparableSeries(geometry);
  if (series !== null && series.areaRatio <= SLENDER) return { tie: UNTIED, model, warnings: [] };
  const tie = series === null ? null : factorsOf(series);
  return {
    tie: tie ?? UNTIED,
    model: {
      thrust: Math.hypot(model.thrust, tie === null ? BROAD_DOUBT.thrust : (1 - tie.thrust) / 2),
      torque: Math.hypot(model.torque, tie === null ? BROAD_DOUBT.torque : (1 - tie.torque) / 2),
    },
    warnings: [tie === null ? untied() : tiedBy(tie)],
  };
}

function factorsOf(series: NonNullable<ReturnType<typeof comparableSeries>>): SeriesTie | null {
  const tested = testedAtRest(series);
  if (tested === null) return null;
  const computed = bladeElements({
    geometry: seriesGeometry({ series, diameter: TESTED.diameter, outsideRange: false }),
    surface: { roughness: 0, liftFactor: 1, dragFactor: 1 },
    fluid: fluidProperties(TESTED.fluid),
    rotationRate: TESTED.rotationRate,
    advanceSpeed: 0,
  });
  if (computed.state === "failed") return null;
  return {
    thrust: tested.thrustCoefficient / computed.thrustCoefficient,
    torque: tested.torqueCoefficient / computed.torqueCoefficient,
  };
}

function tiedBy({ thrust, torque }: SeriesTie): Warning {
  return warning({
    code: "propeller.tied-to-series",
    where: "blade",
    found: `Blade elements were multiplied by ${formatNumber(thrust, 3)} in thrust and ${formatNumber(torque, 3)} in torque, which at rest brings broad blades to the published tests of the B screw of equal pitch, blade count and area`,
    needed: "",
    mend: "Half of that is kept as doubt of each finish; it hardly touches the change between two",
  });
}

function untied(): Warning {
  return warning({
    code: "propeller.broad-untied",
    where: "blade",
    found:
      "Blade elements give broad blades some 13 % too much thrust, and no published screw is near enough to correct that",
    needed: "2 to 7 blades within the pitch and area ratios of the B series",
    mend: "The doubt was widened by as much; read the change between two finishes rather than each number alone",
  });
}

/** Null outside the tests of the series. */
function testedAtRest(series: NonNullable<ReturnType<typeof comparableSeries>>) {
  try {
    return openWaterOfSeries({ series, advanceRatio: 0 });
  } catch (problem) {
    if (problem instanceof OutOfDomain) return null;
    throw problem;
  }
}

import type { Conductor } from "../model/parts/conductor.ts";
import { COPPER_REFERENCE_TEMPERATURE, COPPER_RESISTIVITY, copperResistanceRatio } from "../quantity/copper.ts";
import { positive } from "../quantity/domain.ts";
import { LISTED_CONDUCTORS, type ListedConductor } from "./wireSizes.data.ts";

/** A resistance with its standard uncertainty, both Ω or both Ω/m. */
export interface DoubtfulResistance {
  readonly value: number;
  readonly standardUncertainty: number;
}

/** Stranded wire has 1 to 3 % more resistance than solid copper of its section (common practice, no source). */
const STRANDING = 0.03;
/** A section within this of a listed one is that one: 1.5e-6 m² comes with the rounding of its unit. */
const SAME_AREA = 1e-6;

/**
 * Copper section of a gauge, m².
 *
 *   d = 0.127 mm · 92^((36 − n)/39),   A = π d²/4
 *
 * Source   ASTM B258, Standard nominal diameters and cross-sectional areas of AWG sizes of solid round wires.
 * Range    any number; 0 is 1/0. Solid wire: stranded wire of the gauge has about this section of copper.
 *
 * @example gaugeArea(18) // 8.230468e-7 m²
 */
export function gaugeArea(gauge: number): number {
  const diameter = 0.127e-3 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter ** 2;
}

/** The listed conductor of a nominal section (m²); undefined where it is none of the list. */
export function listedConductor(area: number): ListedConductor | undefined {
  return LISTED_CONDUCTORS.find((listed) => Math.abs(listed.area / area - 1) < SAME_AREA);
}

/**
 * Resistance at 20 °C of one conductor over its length, Ω/m, with its standard uncertainty.
 *
 *   listed section: the largest that IEC 60228 allows for class 5;   else ρ/A,  ρ = 1/58 Ω·mm²/m
 *
 * Source   IEC 60228:2004; ASTM B258; IEC 60028:1925.
 * Error    a listed wire lies between the limits of class 2 and class 5, other wire up to 3 % above solid copper: the
 *          width over sqrt(3), as of a rectangle seen from its end (JCGM 100:2008, 4.3.7). Stated ones are exact.
 * Throws   OutOfDomain unless the area is greater than 0.
 *
 * @example resistancePerLength({ given: "area", area: 1.5e-6 }).value // 0.0133 Ω/m
 */
export function resistancePerLength(size: Conductor["size"]): DoubtfulResistance {
  if (size.given === "resistance") return { value: size.resistancePerLength, standardUncertainty: 0 };
  const area = size.given === "gauge" ? gaugeArea(size.gauge) : positive(size.area, "copper section", "m²");
  const listed = size.given === "area" ? listedConductor(area) : undefined;
  if (listed !== undefined) {
    const width = Math.abs(listed.flexible - listed.stranded);
    return { value: listed.flexible, standardUncertainty: width / Math.sqrt(3) };
  }
  const solid = COPPER_RESISTIVITY / area;
  return { value: solid, standardUncertainty: (STRANDING / Math.sqrt(3)) * solid };
}

/**
 * Resistance of a pair of conductors there and back, Ω, at `temperature` (K; 20 °C if absent).
 *
 *   R = 2 R' l / pairs · (1 + 0.00393 (t − 20 °C))
 *
 * Source, error as `resistancePerLength`; temperature IEC 60028:1925.
 * Assumes  copper at one temperature all along; plugs and joints left out.
 * Throws   OutOfDomain for a length, a number of pairs or a section that is not greater than 0.
 *
 * @example conductorResistance({ length: 25, size: { given: "area", area: 1.5e-6 }, pairs: 1 }).value // 0.665 Ω
 */
export function conductorResistance(
  { length, size, pairs }: Conductor,
  temperature = COPPER_REFERENCE_TEMPERATURE,
): DoubtfulResistance {
  const perLength = resistancePerLength(size);
  const ways = (2 * positive(length, "length", "m")) / positive(pairs, "pairs of conductors", "");
  const factor = ways * copperResistanceRatio(temperature);
  return { value: perLength.value * factor, standardUncertainty: perLength.standardUncertainty * factor };
}

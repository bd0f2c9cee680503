import type { LogTable } from "../log/logTable.ts";
import type { BladeGeometry } from "../model/bladeGeometry.ts";
import { InputProblem } from "../quantity/problem.ts";
import { type ColumnKind, columnOf, readColumn, requireColumn } from "./tableColumn.ts";

const kind = (text: string, header: RegExp, dimension: ColumnKind["dimension"], example: string): ColumnKind => ({
  text,
  header,
  dimension,
  example,
});

const RADIUS = kind("the radius", /^(r|radius|station)$/i, "length", "radius (mm)");
const RADIUS_RATIO = kind("the radius over the tip radius", /^(r\s*\/\s*R|x)$/, "number", "r/R");
const CHORD = kind("the chord", /^(c|chord|chord length|blade width)$/i, "length", "chord (mm)");
const CHORD_TO_DIAMETER = kind("the chord over the diameter", /^c\s*\/\s*D$/, "number", "c/D");
const CHORD_TO_RADIUS = kind("the chord over the tip radius", /^c\s*\/\s*R$/, "number", "c/R");
const PITCH_ANGLE = kind(
  "the pitch angle",
  /^(pitch[ _]?angle|blade[ _]?angle|angle|twist|theta|beta|phi|θ|β|φ)$/i,
  "angle",
  "pitch angle (deg)",
);
const PITCH = kind("the pitch", /^(P|pitch)$/i, "length", "pitch (mm)");
const PITCH_RATIO = kind("the pitch over the diameter", /^P\s*\/\s*D$/, "number", "P/D");
const THICKNESS = kind("the thickness", /^(t|thickness|t_?max)$/i, "length", "thickness (mm)");
const THICKNESS_RATIO = kind("the thickness over the chord", /^t\s*\/\s*c$/, "number", "t/c");
const CAMBER = kind("the camber", /^(f|camber)$/i, "length", "camber (mm)");
const CAMBER_RATIO = kind("the camber over the chord", /^f\s*\/\s*c$/, "number", "f/c");
const SKEW = kind("the skew", /^(skew|skew[ _]?angle|sweep)$/i, "angle", "skew (deg)");

export interface BladeFrame {
  readonly bladeCount: number;
  /** m; twice the outermost radius of the table if absent. */ readonly diameter?: number;
  /** m; twice the innermost radius of the table if absent. */ readonly hubDiameter?: number;
}

/**
 * The shape of a blade from a table of its sections, one row a radius. Each quantity may stand in any unit, which the header
 * gives, or as its usual ratio: r/R, c/D, c/R, P/D, t/c, f/c.
 *
 * Throws   InputProblem `sections.*` naming the column or line; `checkedGeometry` looks at the shape itself.
 */
export function geometryOfTable(table: LogTable, frame: BladeFrame): BladeGeometry {
  const radii = requireColumn(table, [RADIUS, RADIUS_RATIO]);
  const diameter =
    frame.diameter ?? (radii.kind === RADIUS ? 2 * Math.max(...radii.values) : noDiameter(table, RADIUS_RATIO));
  const R = diameter / 2;
  const radius = radii.kind === RADIUS ? radii.values : radii.values.map((x) => x * R);
  const chord = scaled(requireColumn(table, [CHORD, CHORD_TO_DIAMETER, CHORD_TO_RADIUS]), {
    [CHORD_TO_DIAMETER.text]: diameter,
    [CHORD_TO_RADIUS.text]: R,
  });
  const pitchAngle = pitchAngles(table, radius, diameter);
  const thickness = onChord(requireColumn(table, [THICKNESS, THICKNESS_RATIO]), THICKNESS_RATIO, chord);
  const camber = onChord(requireColumn(table, [CAMBER, CAMBER_RATIO]), CAMBER_RATIO, chord);
  const skew = readColumn(table, SKEW);
  return {
    bladeCount: frame.bladeCount,
    diameter,
    hubDiameter: frame.hubDiameter ?? 2 * Math.min(...radius),
    stations: radius.map((r, i) => ({
      radius: r,
      chord: chord[i]!,
      pitchAngle: pitchAngle[i]!,
      thickness: thickness[i]!,
      camber: camber[i]!,
      ...(skew && { skew: skew[i]! }),
    })),
  };
}

interface Column {
  readonly kind: ColumnKind;
  readonly values: number[];
}

function scaled({ kind: { text }, values }: Column, factors: Readonly<Record<string, number>>): number[] {
  const factor = factors[text];
  return factor === undefined ? values : values.map((value) => value * factor);
}

function onChord({ kind, values }: Column, ratio: ColumnKind, chord: readonly number[]): number[] {
  return kind === ratio ? values.map((value, i) => value * chord[i]!) : values;
}

/** Pitch angle as written, or θ = atan(P / 2πr) of the pitch. */
function pitchAngles(table: LogTable, radius: readonly number[], diameter: number): number[] {
  // "pitch (deg)" is an angle, whatever the header calls it.
  const column = columnOf(table, PITCH);
  const isAngle = column >= 0 && /^(°|deg|degrees?|rad|radians?)$/i.test(table.shape.columns[column]!.unit ?? "");
  if (isAngle) return readColumn(table, { ...PITCH, dimension: "angle" })!;
  const { kind, values } = requireColumn(table, [PITCH_ANGLE, PITCH, PITCH_RATIO]);
  if (kind === PITCH_ANGLE) return values;
  const scale = kind === PITCH_RATIO ? diameter : 1;
  return values.map((pitch, i) => Math.atan2(pitch * scale, 2 * Math.PI * radius[i]!));
}

function noDiameter({ fileName }: LogTable, { example }: ColumnKind): never {
  throw new InputProblem({
    code: "sections.no-diameter",
    where: fileName,
    found: `The radii are given as ${example}, without the diameter`,
    needed: "the diameter of the propeller",
    mend: "Give the diameter, or radii with a unit",
  });
}

import type { BladeElement, BladeElementsResult, BladePower } from "../../../../shared/model/bladeElements.ts";
import type { BladeGeometry } from "../../../../shared/model/bladeGeometry.ts";
import type { BladeStrengthAnswer, PrintedMaterial } from "../../../../shared/model/bladeStrength.ts";
import type { FluidProperties } from "../../../../shared/model/fluid.ts";
import type { SectionPolar } from "../../../../shared/model/sectionPolar.ts";
import type { BladeSurface } from "../../../../shared/model/surface.ts";
import { bladeElements } from "../../../../shared/propeller/blade/bladeElements.ts";
import { predictedStrength } from "../../../../shared/propeller/strength/predictedStrength.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import { sectionPolarOf } from "../../../../shared/sections/sectionPolarOf.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";
import { MEGAPASCAL, MILLIMETRE, NEWTON, RPM, WATT } from "../../bench/shownUnits.ts";

export interface BladeRun {
  readonly geometry: BladeGeometry;
  readonly surface: BladeSurface;
  readonly fluid: FluidProperties;
  /** rev/s */
  readonly rotationRate: number;
  /** m/s */
  readonly advanceSpeed: number;
  /** Lift and drag of the sections instead of the section model. */
  readonly polars?: SectionPolar;
}

export type PolarRead = { readonly polars: SectionPolar | null } | { readonly problem: string };

/** The polar that `text` holds; none where it is empty; in words what is wrong with it. */
export function polarOf(text: string): PolarRead {
  if (text.trim() === "") return { polars: null };
  try {
    return { polars: sectionPolarOf(text) };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

type Solved = Extract<BladeElementsResult, { state: "solved" }>;
export type BladeTold = { readonly solved: Solved } | { readonly problem: string };

export function bladeTold(run: BladeRun): BladeTold {
  try {
    const result = bladeElements(run);
    return result.state === "solved"
      ? { solved: result }
      : { problem: `No solution at a radius of ${formatQuantity(result.radius, MILLIMETRE)}: ${result.reason}.` };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

/** One sentence: what the blades do at this running. */
export function bladeSentence(
  { thrust, power, thrustCoefficient, torqueCoefficient }: Solved,
  { rotationRate }: BladeRun,
): string {
  return (
    `By blade elements it pushes ${formatQuantity(thrust, NEWTON)} at ${formatQuantity(rotationRate, RPM)} and takes ` +
    `${formatQuantity(power.shaft, WATT)}: K_T ${formatNumber(thrustCoefficient)}, 10 K_Q ${formatNumber(10 * torqueCoefficient)}.`
  );
}

/** Load along one blade. */
export function loadPicture({ elements }: Solved): ChartSpec {
  return {
    title: "Load along one blade",
    x: RADIUS,
    y: { label: "Force for each length", unit: "N/m" },
    series: [
      {
        id: "thrust",
        name: "Thrust",
        kind: "prediction",
        style: 0,
        points: along(elements, (one) => one.thrustPerLength),
      },
      {
        id: "tangential",
        name: "Against the turning",
        kind: "prediction",
        style: 1,
        points: along(elements, (one) => one.tangentialForcePerLength),
      },
    ],
  };
}

/** How each section works. */
export function sectionPicture({ elements }: Solved): ChartSpec {
  return {
    title: "Sections along one blade",
    x: RADIUS,
    y: { label: "Lift coefficient, ten times drag", unit: "" },
    y2: { label: "Angle of attack", unit: "°" },
    series: [
      {
        id: "lift",
        name: "Lift coefficient C_L",
        kind: "prediction",
        style: 0,
        points: along(elements, (one) => one.liftCoefficient),
      },
      {
        id: "drag",
        name: "10 C_D",
        kind: "prediction",
        style: 1,
        points: along(elements, (one) => 10 * one.dragCoefficient),
      },
      {
        id: "attack",
        name: "Angle of attack, right axis",
        kind: "prediction",
        style: 2,
        secondAxis: true,
        points: along(elements, (one) => (one.angleOfAttack * 180) / Math.PI),
      },
    ],
  };
}

const RADIUS = { label: "Radius", unit: "mm", min: 0 } as const;

function along(elements: readonly BladeElement[], y: (one: BladeElement) => number) {
  return elements.map((one) => ({ x: one.radius * 1000, y: y(one) }));
}

const POWERS: readonly (readonly [keyof BladePower, string, string])[] = [
  ["useful", "Useful", "thrust times advance speed"],
  ["ideal", "Ideal stream", "the least an open disc needs for this thrust"],
  ["induced", "Uneven load", "stream along the shaft beyond the ideal"],
  ["swirl", "Swirl", "rotation left in the stream"],
  ["tip", "Tips", "flow round the tips of few blades"],
  ["hub", "Hub", "flow round the inner ends"],
  ["profile", "Section drag", "friction and shape of the sections"],
];

export function powerRows({ power }: Solved) {
  return POWERS.map(([key, name, how]) => ({
    name,
    value: `${formatQuantity(power[key], WATT)} (${formatNumber((100 * power[key]) / power.shaft, 2)}\u202f%)`,
    how,
  }));
}

export type StrengthTold = { readonly answer: BladeStrengthAnswer } | { readonly problem: string };

export function strengthTold(run: BladeRun, material: PrintedMaterial, loadFactor: number): StrengthTold {
  try {
    return {
      answer: predictedStrength({
        ...run,
        material,
        sectionShape: "parabolic",
        rakeAngle: 0,
        loadFactor,
        wantedSafety: 2,
      }),
    };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

type Strong = Extract<BladeStrengthAnswer, { state: "solved" }>;

/** Stress along the blade against what the print bears. */
export function stressPicture({ sections, strength, fatigueStrength }: Strong): ChartSpec {
  const at = (y: (section: Strong["sections"][number]) => number) =>
    sections.map((section) => ({ x: section.radius * 1000, y: y(section) / MEGAPASCAL.factor }));
  return {
    title: "Stress along the blade",
    x: RADIUS,
    y: { label: "Stress", unit: "MPa", min: 0 },
    series: [
      {
        id: "tension",
        name: "Greatest tension",
        kind: "prediction",
        style: 0,
        points: at((one) => one.greatestTension),
      },
      {
        id: "compression",
        name: "Greatest compression",
        kind: "prediction",
        style: 1,
        points: at((one) => one.greatestCompression),
      },
      { id: "strength", name: "Strength along the blade", kind: "fit", style: 4, points: at(() => strength) },
      {
        id: "fatigue",
        name: "Strength under load repeated at blade rate",
        kind: "fit",
        style: 2,
        points: at(() => fatigueStrength),
      },
    ],
  };
}

export function strengthRows({ critical, tipDeflection }: Strong) {
  const factor = (value: number | null) => (value === null ? "no load" : formatNumber(value));
  return [
    {
      name: "Critical section",
      value: formatQuantity(critical.radius, MILLIMETRE),
      how: "distance from the shaft axis",
    },
    {
      name: "Greatest tension there",
      value: formatQuantity(critical.greatestTension, MEGAPASCAL),
      how: "bending and centrifugal pull",
    },
    {
      name: "Greatest compression there",
      value: formatQuantity(critical.greatestCompression, MEGAPASCAL),
      how: "bending less centrifugal pull; the strength is held against the greater of the two",
    },
    {
      name: "Safety factor",
      value: factor(critical.safetyFactor),
      how: "strength over the greater of tension and compression, standing load",
    },
    {
      name: "Safety factor at blade rate",
      value: factor(critical.fatigueSafetyFactor),
      how: "strength under repeated load over the same",
    },
    { name: "Tip deflection", value: formatQuantity(tipDeflection.total, MILLIMETRE), how: "under this load" },
  ];
}

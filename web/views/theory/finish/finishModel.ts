import { type FinishFit, type FinishResult, ModelUncertainty } from "../../../../shared/model/finishFit.ts";
import { finishFit } from "../../../../shared/propeller/finish/finishFit.ts";
import { roughnessInWords } from "../../../../shared/propeller/finish/finishInWords.ts";
import { formatNumber, formatUncertain } from "../../../../shared/quantity/format.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { capitalised } from "../../../app/words.ts";
import type { ChartPoint, ChartSeries, ChartSpec } from "../../../charts/chartSpec.ts";
import { describedBlade, measuredPoint } from "../describedBlade.ts";
import type { Subject } from "../subject.ts";

export type FinishTold = { readonly result: FinishFit } | { readonly problem: string };

/** The finishes that can be compared on one blade: the chosen two, or the one that pushes least first. */
export function finishPair(
  subjects: readonly Subject[],
  chosen: readonly [string | null, string | null],
): readonly Subject[] {
  const named = (name: string | null) => subjects.find((one) => one.name === name);
  const known = subjects.filter((one) => measuredPoint(one) !== null);
  const byThrust = [...known].sort((a, b) => a.thrustCoefficient.value - b.thrustCoefficient.value);
  const first = named(chosen[0]) ?? byThrust[0];
  const second = named(chosen[1]) ?? byThrust.filter((one) => one !== first && isAlike(one, first)).at(-1);
  return [first, second].filter((one) => one !== undefined);
}

/** Two finishes are of one blade when size, pitch and blades are the same. */
function isAlike({ propeller: a }: Subject, other: Subject | undefined): boolean {
  const b = other?.propeller;
  return b !== undefined && a.diameter === b.diameter && a.pitchRatio === b.pitchRatio && a.bladeCount === b.bladeCount;
}

/** Section lift and drag of one or two finishes, from what was measured; or in words what is missing. */
export function finishTold(pair: readonly Subject[], claimedFactor: number | null): FinishTold {
  const [first, second] = pair;
  if (first === undefined)
    return {
      problem: "Reduce a run with shaft power on Bench first: lift and drag follow from thrust and torque together.",
    };
  if (second !== undefined && second !== first && !isAlike(second, first))
    return {
      problem:
        "These two differ in more than the finish: diameter, pitch or number of blades. Choose two finishes of one blade.",
    };
  const described = describedBlade(first.propeller);
  if ("missing" in described) return { problem: described.missing };
  const finishes = [...new Set(pair)].flatMap((one) => {
    const measured = measuredPoint(one);
    return measured === null ? [] : [{ name: one.name, measured: [measured] }];
  });
  try {
    return {
      result: finishFit({
        blade: described.blade,
        fluid: first.reductions[0]!.fluid,
        rotationRate: Math.min(...pair.map(({ topRate }) => topRate)),
        finishes,
        modelUncertainty: ModelUncertainty.parse(undefined),
        ...(claimedFactor !== null && { claimedFactor }),
        draws: 0,
      }),
    };
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

/** What the finish did, in one sentence, and what follows from it. */
export function finishSentences({ change, smoothGain, claim, shape, sentence }: FinishFit): {
  readonly first: string;
  readonly others: readonly string[];
} {
  const others = [smoothGain?.sentence, claim?.sentence, shape].filter((one) => one !== undefined);
  return change === null ? { first: sentence, others: [] } : { first: change.sentence, others };
}

/** One row a finish: section drag, lift factor and what roughness that drag would mean. */
export function finishRows({ finishes }: FinishFit) {
  return finishes.map((one) => {
    const name = capitalised(one.name);
    if (one.state === "failed") return { name, cells: ["no answer", "", one.reason] };
    if (one.state === "outOfReach")
      return { name, cells: ["out of reach", formatNumber(one.liftFactor), one.sentence] };
    return {
      name,
      cells: [formatUncertain(one.sectionDrag), formatUncertain(one.liftFactor), roughnessInWords(one)],
    };
  });
}

/** Section drag against roughness: the model at the lift of each finish, the finishes' own drag, and the laminar floor. */
export function dragPicture({ picture, finishes }: FinishFit): ChartSpec | null {
  if (picture === null) return null;
  const reach = reachOf(picture.dragAgainstRoughness, finishes);
  const level = (y: number): ChartPoint[] => [0, reach].map((x) => ({ x, y }));
  return {
    title: "Section drag at 0.7 R against roughness",
    x: { label: "Roughness height", unit: "µm", min: 0, max: reach },
    y: { label: "Section drag C_D", unit: "", min: 0 },
    numbered: true,
    series: [
      ...picture.dragAgainstRoughness.map((one) => modelSeries(one, finishes, reach)),
      {
        id: "floor",
        name: "Laminar friction of both sides",
        kind: "fit",
        style: 4,
        points: level(picture.laminarFloor),
      },
      ...finishes.flatMap((one, style) => levelOf(one, style, reach)),
    ],
  };
}

type ModelCurve = NonNullable<FinishFit["picture"]>["dragAgainstRoughness"][number];

/** Dashed in the colour of its finish: the roughness of the finish is where the two meet. */
function modelSeries({ finish, points }: ModelCurve, finishes: FinishFit["finishes"], reach: number): ChartSeries {
  return {
    id: `model-${finish ?? "clean"}`,
    name: `Section model at the lift of ${finish ?? "a clean section"}`,
    kind: "prediction",
    style: finish === null ? CLEAN_STYLE : finishes.findIndex(({ name }) => name === finish),
    points: points.map(({ at, drag }) => ({ x: at * 1e6, y: drag })).filter(({ x }) => x <= reach),
  };
}

const CLEAN_STYLE = 3;

/** Roughness that the picture goes to at least, m. */
const USUAL_REACH = 500e-6;

/** The first roughness of the curves, in µm, that lies beyond those of the finishes. */
function reachOf(curves: readonly ModelCurve[], finishes: FinishFit["finishes"]): number {
  const read = finishes.flatMap((one) => (one.state === "fitted" && one.roughness !== null ? [one.roughness] : []));
  const wanted = Math.max(USUAL_REACH, ...read);
  const heights = curves.flatMap(({ points }) => points.map(({ at }) => at)).sort((one, other) => one - other);
  return 1e6 * (heights.find((at) => at >= wanted) ?? wanted);
}

/** The drag of a finish as a level with its band: where the curve of the model meets it lies its roughness, if it has one. */
function levelOf(one: FinishResult, style: number, reach: number): ChartSeries[] {
  if (one.state !== "fitted") return [];
  const { value: y, interval95: band } = one.sectionDrag;
  const points = [0, reach].map((x): ChartPoint => ({ x, y, yInterval: band }));
  return [
    {
      id: `finish-${one.name}`,
      name: `${capitalised(one.name)}, from its thrust and torque`,
      kind: "fit",
      style,
      points,
    },
  ];
}

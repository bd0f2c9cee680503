import { describe, expect, it } from "vitest";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { plainGeometry } from "../../shared/propeller/blade/plainGeometry.ts";
import { PRINTED_MATERIALS } from "../../shared/propeller/strength/printedMaterials.data.ts";
import { uncertain } from "../../shared/quantity/uncertain.ts";
import {
  type BladeRun,
  bladeSentence,
  bladeTold,
  loadPicture,
  polarOf,
  powerRows,
  sectionPicture,
  strengthRows,
  strengthTold,
  stressPicture,
} from "../../web/views/theory/blade/bladeModel.ts";
import { describedBlade, measuredPoint } from "../../web/views/theory/describedBlade.ts";
import {
  dragPicture,
  finishPair,
  finishRows,
  finishSentences,
  finishTold,
} from "../../web/views/theory/finish/finishModel.ts";
import { lossBars, lossesTold } from "../../web/views/theory/losses/lossesModel.ts";
import type { Subject } from "../../web/views/theory/subject.ts";
import { reductionOf } from "./webBenchReduction.fixture.ts";

const PROPELLER = Propeller.parse({
  name: "Net propeller",
  diameter: 0.1,
  diameterUncertainty: 1e-4,
  bladeCount: 3,
  pitchRatio: 0.8,
  chordAt07: 0.028,
});

function subjectOf(name: string, K_T: number, K_Q: number): Subject {
  return {
    name,
    propeller: PROPELLER,
    reductions: [reductionOf({ thrustCoefficient: K_T, powerCoefficient: 2 * Math.PI * K_Q })],
    thrustCoefficient: uncertain(K_T, 0.004),
    torqueCoefficient: uncertain(K_Q, 0.0005),
    staticMerit: null,
    topRate: 50,
  };
}

const PRINTED = subjectOf("as printed", 0.2, 0.029);
const SANDED = subjectOf("sanded", 0.26, 0.028);

describe("the blades of a measured propeller", () => {
  it("are its shape where it is known, else an outline, else what is missing is named", () => {
    expect(describedBlade(PROPELLER)).toMatchObject({ blade: { given: "outline", outline: { chordAt07: 0.028 } } });
    const { chordAt07: _, ...bare } = PROPELLER;
    expect(describedBlade(bare)).toMatchObject({ missing: expect.stringContaining("chord at 0.7 R") });
    const geometry = outlined();
    expect(describedBlade({ ...bare, geometry })).toEqual({ blade: { given: "geometry", geometry } });
  });

  it("come with coefficients only where the shaft power is known", () => {
    expect(measuredPoint({ ...PRINTED, torqueCoefficient: null })).toBeNull();
    const point = measuredPoint(PRINTED)!;
    expect(point.thrustCoefficient).toMatchObject({ value: 0.2, standardUncertainty: 0.004 });
    expect(point.thrustCoefficient.commonUncertainty).toBeLessThanOrEqual(0.004);
  });

  it("come with the correlation that gives the static merit the doubt it was reduced with", () => {
    // JCGM 100:2008, 5.2.2, eq. 16, by hand: K_T 2 %, K_Q 2 %, FM 1.5 %: r = (9 + 4 - 2.25)/(3 × 4) = 0.8958.
    const subject = {
      ...PRINTED,
      thrustCoefficient: uncertain(0.2, 0.004),
      torqueCoefficient: uncertain(0.03, 0.0006),
      staticMerit: uncertain(0.4, 0.006),
    };
    expect(measuredPoint(subject)!.correlation).toBeCloseTo(0.8958, 4);
    expect(measuredPoint({ ...subject, staticMerit: uncertain(0.4, 0) })!.correlation).toBe(0.95);
    expect(measuredPoint({ ...subject, staticMerit: null })!.correlation).toBe(0);
  });
});

describe("what the finish does", () => {
  it("takes the finish that pushes least first, and refuses another pitch", () => {
    expect(finishPair([SANDED, PRINTED], [null, null]).map(({ name }) => name)).toEqual(["as printed", "sanded"]);
    const steep = { ...SANDED, name: "steep", propeller: { ...PROPELLER, pitchRatio: 1.2 } };
    expect(finishPair([steep, PRINTED], [null, null]).map(({ name }) => name)).toEqual(["as printed"]);
    const told = finishTold([PRINTED, steep], 2);
    expect("problem" in told && told.problem).toContain("more than the finish");
  });

  it("tells lift and drag of both, and draws each as a level with its band", () => {
    const told = finishTold([PRINTED, SANDED], 2);
    if ("problem" in told) throw new Error(told.problem);
    const { result } = told;
    expect(finishSentences(result).first).toContain("as printed to sanded");
    expect(finishRows(result).map(({ name }) => name)).toEqual(["As printed", "Sanded"]);
    const spec = dragPicture(result)!;
    const sanded = spec.series.find(({ id }) => id === "finish-sanded")!;
    const fitted = result.finishes[1]!;
    if (fitted.state !== "fitted") throw new Error("sanded was not fitted");
    expect(sanded.points[0]).toMatchObject({ y: fitted.sectionDrag.value });
    expect(sanded.points[0]!.yInterval![0]).toBeGreaterThanOrEqual(0);
    const floor = spec.series.find(({ id }) => id === "floor")!.points[0]!.y;
    const { reynolds } = result.picture!;
    // Blasius, two sides: 2.656/sqrt(Re); Schlichting, Boundary-Layer Theory, ch. VII.
    expect(floor).toBeCloseTo(2.656 / Math.sqrt(reynolds), 12);
  });

  it("draws the section model at the lift of each, so that it meets the drag of a finish at the roughness told for it", () => {
    const told = finishTold([PRINTED, SANDED], 2);
    if ("problem" in told) throw new Error(told.problem);
    const { series } = dragPicture(told.result)!;
    const known = told.result.finishes.flatMap((one) =>
      one.state === "fitted" && one.roughness !== null ? [{ ...one, roughness: one.roughness * 1e6 }] : [],
    );
    expect(known.length).toBeGreaterThan(0);
    for (const { name, roughness, sectionDrag } of known) {
      const { points } = series.find(({ id }) => id === `model-${name}`)!;
      const after = points.findIndex(({ x }) => x >= roughness);
      expect(points[after - 1]!.y).toBeLessThanOrEqual(sectionDrag.value);
      expect(points[after]!.y).toBeGreaterThanOrEqual(sectionDrag.value);
    }
  });
});

describe("where the power goes", () => {
  it("takes the static merit of the section's head, interval and all", () => {
    // As of three mountings: Student's t makes the interval wider than 1.96 u.
    const staticMerit = { value: 0.428, standardUncertainty: 0.008, interval95: [0.407, 0.449] } as const;
    const told = lossesTold({ ...SANDED, staticMerit });
    if ("problem" in told) throw new Error(told.problem);
    expect(told.report.staticMerit).toEqual(staticMerit);
    expect(told.report.short).toContain("static merit of 0.428 ± 0.021");
    const { value, interval95 } = told.report.thrustOverIdeal;
    expect([value, ...interval95]).toEqual([0.428, 0.407, 0.449].map((merit) => merit ** (2 / 3)));
  });
  it("gives parts that with the ideal add up to the whole", () => {
    const told = lossesTold(SANDED);
    if ("problem" in told) throw new Error(told.problem);
    const bars = lossBars(told.report);
    expect(bars.length).toBeGreaterThan(3);
    const whole = told.report.staticMerit.value + told.report.shares.reduce((sum, { share }) => sum + share.value, 0);
    expect(whole).toBeCloseTo(1, 2);
    expect(bars[0]).toMatchObject({ name: "The thrust itself, at its ideal" });
    expect(bars[0]!.words).toMatch(/%$/);
  });

  it("says what is missing", () => {
    expect(lossesTold(null)).toHaveProperty("problem");
    expect(lossesTold({ ...SANDED, torqueCoefficient: null })).toHaveProperty("problem");
  });
});

describe("along the blade", () => {
  const run: BladeRun = {
    geometry: outlined(),
    surface: { roughness: 0, liftFactor: 1, dragFactor: 1 },
    fluid: { density: 998.6, dynamicViscosity: 1.053e-3, kinematicViscosity: 1.054e-6, vapourPressure: 2063 },
    rotationRate: 50,
    advanceSpeed: 0,
  };
  const told = bladeTold(run);
  if ("problem" in told) throw new Error(told.problem);
  const { solved } = told;

  it("draws a load that makes the thrust of the whole propeller", () => {
    const points = loadPicture(solved).series.find(({ id }) => id === "thrust")!.points;
    const widths = solved.elements.map(({ width }) => width);
    const sum = points.reduce((all, { y }, at) => all + y * widths[at]!, 0);
    expect((3 * sum) / solved.thrust).toBeCloseTo(1, 9);
    expect(sectionPicture(solved).series.map(({ id }) => id)).toEqual(["lift", "drag", "attack"]);
    expect(bladeSentence(solved, run)).toContain("at 3000\u202frpm");
  });

  it("lists where the power goes, in watts that add up to the shaft power", () => {
    const watts = powerRows(solved).map(({ value }) => Number(/^−?[\d.]+/.exec(value)![0]));
    const sum = watts.reduce((all, one) => all + one, 0);
    expect(sum / solved.power.shaft).toBeCloseTo(1, 2);
  });

  it("takes a polar of one's own in place of the section model, and names the row that is wrong", () => {
    // A thin section without drag but for 0.01, lift slope 2π: thin-aerofoil theory, Abbott & von Doenhoff (1959), ch. 4.
    const row = (degrees: number) => `${degrees};${((2 * Math.PI * degrees * Math.PI) / 180).toFixed(5)};0.01`;
    const table = ["alpha (deg);C_L;C_D", ...[-15, -5, 5, 15].map(row)].join("\n");
    const read = polarOf(table);
    if ("problem" in read || read.polars === null) throw new Error("no polar");
    const own = bladeTold({ ...run, polars: read.polars });
    if ("problem" in own) throw new Error(own.problem);
    const middle = own.solved.elements.find(({ radius }) => radius > 0.035)!;
    // A blade of finite length lifts less than the section alone, and not under half of it (Helmbold 1942).
    const ratio = middle.liftCoefficient / (2 * Math.PI * middle.angleOfAttack);
    expect(ratio).toBeGreaterThan(0.5);
    expect(ratio).toBeLessThanOrEqual(1);
    expect(middle.dragCoefficient).toBeCloseTo(0.01, 6);
    expect(polarOf("")).toEqual({ polars: null });
    const wrong = polarOf(table.replace("5;0.54831;0.01", "5;0.54831;-0.01"));
    expect("problem" in wrong && wrong.problem).toMatch(/drag coefficient at/);
  });

  it("holds the stress against what the print bears", () => {
    const strength = strengthTold(run, PRINTED_MATERIALS[0]!, 1);
    if ("problem" in strength || strength.answer.state === "failed") throw new Error("no strength");
    const { answer } = strength;
    const tension = stressPicture(answer).series.find(({ id }) => id === "tension")!.points;
    expect(tension[0]!.y).toBeCloseTo(answer.sections[0]!.greatestTension / 1e6, 9);
    expect(strengthRows(answer).find(({ name }) => name === "Critical section")!.value).toMatch(/mm$/);
    const twice = strengthTold(run, PRINTED_MATERIALS[0]!, 2);
    if ("problem" in twice || twice.answer.state === "failed") throw new Error("no strength");
    expect(twice.answer.critical.safetyFactor!).toBeLessThan(answer.critical.safetyFactor!);
  });
});

function outlined() {
  return plainGeometry({
    from: "outline",
    outline: "elliptic",
    bladeCount: 3,
    diameter: 0.1,
    hubDiameter: 0.02,
    pitchRatio: 0.8,
    areaRatio: 0.35,
    thicknessRatio: 0.08,
    camberRatio: 0.04,
  });
}

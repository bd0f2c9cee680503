import { z } from "zod";
import { Note, si } from "../fields.ts";
import { ResultWarning, UncertainNumber } from "../uncertain.ts";

/** Most rows of one log in a document; longer ones are to be thinned before. */
const MOST_ROWS = 20_000;

const column = (symbol: string, unit: string, text: string) =>
  si(z.array(z.number()).min(1).max(MOST_ROWS), { symbol, unit, text });
const relative = (text: string) =>
  z.number().min(0).max(1).default(0).describe(`Relative standard uncertainty of ${text}, common to all points`);
const density = si(z.number().positive().max(20_000), { symbol: "rho", unit: "kg/m³", text: "Density of the water" });

/** A mass with its doubt. */
const massOf = (symbol: string, text: string, least: z.ZodNumber) =>
  z.strictObject({
    value: si(least, { symbol, unit: "kg", text }),
    standardUncertainty: z.number().min(0).default(0).describe("Standard uncertainty, kg"),
  });

const model = z
  .enum(["quadratic", "quadraticLinear"])
  .default("quadratic")
  .describe("D = ½ ρ C_D A V|V|, or with a term a V for slow flow and lines that rub");

/** Towed at measured speed with measured force: a table of steady points, or the columns of a log with its clock. */
export const TowData = z.strictObject({
  method: z.literal("tow"),
  density,
  speed: column("V", "m/s", "Speeds through the water"),
  force: column("F", "N", "Tow forces, tow rope's own drag taken off"),
  time: column("t", "s", "Times, where the points are the rows of a log; absent: points of a table").exactOptional(),
  speedRelativeUncertainty: relative("the speeds"),
  forceRelativeUncertainty: relative("the forces"),
  model,
  note: Note.exactOptional(),
});

/** Thrust off at speed, then left to itself: speed or distance against time. */
export const CoastDownData = z.strictObject({
  method: z.literal("coastDown"),
  density,
  time: column("t", "s", "Times; thrust is off from the first"),
  measured: z.enum(["speed", "distance"]).describe("What the values are"),
  values: column("V or x", "m/s or m", "Speeds, m/s, or distances, m"),
  mass: massOf("M", "Mass of the vehicle with the water it encloses", z.number().positive().max(1e6)),
  addedMass: massOf("m_a", "Added mass in the direction of the run", z.number().min(0).max(1e6)).exactOptional(),
  valuesRelativeUncertainty: relative("the speeds or distances"),
  model,
  note: Note.exactOptional(),
});

/** Runs over a course at steady speed under known thrust. */
export const TimedRunData = z.strictObject({
  method: z.literal("timedRuns"),
  density,
  runs: z
    .array(
      z.strictObject({
        thrust: si(z.number().positive(), {
          symbol: "T",
          unit: "N",
          text: "Useful thrust, what the hull takes off it",
        }),
        speed: si(z.number().positive(), {
          symbol: "V",
          unit: "m/s",
          text: "Speed, where it was read",
        }).exactOptional(),
        distance: si(z.number().positive(), { symbol: "s", unit: "m", text: "Length of the course" }).exactOptional(),
        duration: si(z.number().positive(), { symbol: "t", unit: "s", text: "Time over the course" }).exactOptional(),
        way: z.enum(["there", "back"]).exactOptional().describe("Way over the course, to take a current out"),
      }),
    )
    .min(1)
    .max(500),
  thrustRelativeUncertainty: relative("the thrusts"),
  speedRelativeUncertainty: relative("the speeds (course and clock)"),
  note: Note.exactOptional(),
});

/** Let go without thrust: sinks or climbs at its terminal speed under its own net weight. */
export const TerminalData = z.strictObject({
  method: z.literal("terminal"),
  density,
  runs: z
    .array(
      z.strictObject({
        netWeight: si(z.number(), { symbol: "W", unit: "N", text: "Weight less buoyancy: positive sinks" }),
        time: column("t", "s", "Times"),
        depth: column("z", "m", "Depths, positive down"),
        steadyFrom: si(z.number(), { symbol: "t", unit: "s", text: "Steady from this time on" }).exactOptional(),
      }),
    )
    .min(1)
    .max(100),
  netWeightRelativeUncertainty: relative("the net weights"),
  depthRelativeUncertainty: relative("the depths"),
  note: Note.exactOptional(),
});

/** What was measured to find the drag of one direction, as it came. */
export const DragFitData = z
  .discriminatedUnion("method", [TowData, CoastDownData, TimedRunData, TerminalData])
  .meta({ id: "DragFitData" });
export type DragFitData = z.infer<typeof DragFitData>;
export type TowData = z.infer<typeof TowData>;
export type CoastDownData = z.infer<typeof CoastDownData>;
export type TimedRunData = z.infer<typeof TimedRunData>;
export type TerminalData = z.infer<typeof TerminalData>;

const chance = z.number().min(0).max(1).describe("Chance of so much if there were nothing");

export const DragFit = z
  .strictObject({
    method: z.enum(["tow", "coastDown", "timedRuns", "terminal"]),
    dragArea: si(UncertainNumber, { symbol: "C_D A", unit: "m²", text: "Drag area" }),
    linear: si(UncertainNumber, { symbol: "a", unit: "N·s/m", text: "Linear term; 0 where it was not fitted" }),
    degreesOfFreedom: z.number().positive().nullable().describe("Of C_D A, effective; null: beyond number"),
    parts: z
      .array(z.strictObject({ cause: z.string(), standardUncertainty: z.number().min(0).describe("Its part, m²") }))
      .describe("Where the doubt of C_D A comes from, m²"),
    fitted: z
      .strictObject({
        across: z.string().describe("What the points lie over, with unit"),
        up: z.string().describe("What was measured, with unit"),
        points: z.array(
          z.strictObject({
            x: z.number().describe("Place, in the unit of `across`"),
            measured: z.number().describe("Measured, in the unit of `up`"),
            fitted: z.number().describe("Fitted, in the unit of `up`"),
          }),
        ),
      })
      .describe("Measured against fitted, for a picture"),
    residuals: z.array(z.number()).describe("Measured less fitted, unit of what was measured"),
    residualStandardDeviation: z
      .number()
      .min(0)
      .nullable()
      .describe("Unit of what was measured; null without spare points"),
    autocorrelation: z.number().min(-1).max(1).describe("Of neighbouring residuals; 0 for a table"),
    effectiveSamples: z.number().positive().describe("Independent readings that the samples are worth"),
    speedRange: z.tuple([z.number(), z.number()]).readonly().describe("Least and greatest speed, m/s"),
    linearTest: z
      .strictObject({
        linear: si(UncertainNumber, { symbol: "a", unit: "N·s/m", text: "Linear term when it is let in" }),
        pValue: chance,
      })
      .nullable()
      .describe("Is there a part that grows with V alone? Null where the points can not tell"),
    lackOfFit: z
      .strictObject({ ratio: z.number().min(0).describe("Ratio of variances, 1"), pValue: chance })
      .nullable()
      .describe("F test of the means of repeats against the curve; null without repeats"),
    sentence: z.string(),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "DragFit" });
export type DragFit = z.infer<typeof DragFit>;

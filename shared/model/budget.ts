import { z } from "zod";
import { UncertainNumber } from "./uncertain.ts";

/** What would have to be done better to make a cause of doubt smaller. */
export const DoubtSource = z.enum([
  "plateauScatter",
  "plateauSpread",
  "plateauResolution",
  "rateResolution",
  "repeatability",
  "tareReadings",
  "tareResolution",
  "tareDrift",
  "calibration",
  "diameter",
  "fluid",
  "other",
]);
export type DoubtSource = z.infer<typeof DoubtSource>;

const degrees = z.number().positive().nullable();

/** One cause of doubt of a coefficient. */
export const BudgetRow = z
  .strictObject({
    name: z.string().describe("Cause in words"),
    source: DoubtSource,
    kind: z.enum(["A", "B"]).describe("A: from the scatter of readings; B: from other knowledge"),
    distribution: z.enum(["normal", "student", "rectangular"]),
    inputUncertainty: z.number().min(0).describe("Standard uncertainty of the input, in inputUnit"),
    inputUnit: z.string().describe("Unit of the input; 1 for a relative one"),
    sensitivity: z
      .number()
      .describe(
        "Change of the coefficient by one unit of the input; root sum of squares where each plateau has its own",
      ),
    standardUncertainty: z.number().min(0).describe("Part of the standard uncertainty of the coefficient"),
    share: z.number().min(0).max(1).describe("Part of the variance of the coefficient; the shares sum to 1"),
    degreesOfFreedom: degrees.describe("Degrees of freedom of the input; null: so many that they count as infinite"),
    key: z.string().describe("Runs that share this key share the error, and it cancels between them"),
  })
  .meta({ id: "BudgetRow" });
export type BudgetRow = z.infer<typeof BudgetRow>;

/** What would bring the 95 % interval of a coefficient to half its width. */
export const Improvement = z
  .strictObject({
    sentence: z.string().describe("The whole sentence, ready to show"),
    causes: z.array(z.string()).describe("Names of the causes it acts on"),
    single: z.boolean().describe("One act is enough"),
    factor: z.number().min(0).max(1).nullable().describe("To what part of itself the cause must go; null: not enough"),
  })
  .meta({ id: "Improvement" });
export type Improvement = z.infer<typeof Improvement>;

/** Uncertainty budget of one coefficient of a run. */
export const Budget = z
  .strictObject({
    quantity: z.enum(["thrustCoefficient", "powerCoefficient", "staticMerit"]),
    result: UncertainNumber,
    coverageFactor: z.number().positive().describe("Student factor of the 95 % interval"),
    degreesOfFreedom: degrees.describe("Effective degrees of freedom (Welch-Satterthwaite); null: infinite"),
    rows: z
      .array(BudgetRow)
      .describe("Greatest share first; the squares of their parts sum to the square of the whole"),
    halving: Improvement,
  })
  .meta({ id: "Budget" });
export type Budget = z.infer<typeof Budget>;

export const RunBudget = z
  .strictObject({
    thrustCoefficient: Budget,
    powerCoefficient: Budget.nullable(),
    staticMerit: Budget.nullable(),
  })
  .meta({ id: "RunBudget" });
export type RunBudget = z.infer<typeof RunBudget>;

/** One coefficient by Monte Carlo beside the first-order interval. */
export const MonteCarloResult = z
  .strictObject({
    quantity: z.enum(["thrustCoefficient", "powerCoefficient", "staticMerit"]),
    mean: z.number().describe("Mean of the draws"),
    standardUncertainty: z.number().min(0).describe("Standard deviation of the draws"),
    interval95: z.tuple([z.number(), z.number()]).readonly().describe("Symmetric in probability"),
    shortest95: z.tuple([z.number(), z.number()]).readonly().describe("Shortest interval that holds 95 %"),
    firstOrder95: z.tuple([z.number(), z.number()]).readonly().describe("The published interval"),
    difference: z.number().min(0).describe("Greatest distance between ends of the two intervals"),
    tolerance: z.number().min(0).describe("Numerical tolerance of the standard uncertainty to one digit"),
    agrees: z.boolean().describe("The difference is within the tolerance: the first order holds"),
    settled: z.boolean().describe("More draws would not move the numbers by more than the tolerance"),
  })
  .meta({ id: "MonteCarloResult" });
export type MonteCarloResult = z.infer<typeof MonteCarloResult>;

/** Propagation of distributions through the fit of a run. */
export const MonteCarlo = z
  .strictObject({
    draws: z.int().min(1).describe("Times that all inputs were drawn"),
    seed: z.int().min(0).describe("The same seed gives the same draws"),
    results: z.array(MonteCarloResult),
  })
  .meta({ id: "MonteCarlo" });
export type MonteCarlo = z.infer<typeof MonteCarlo>;

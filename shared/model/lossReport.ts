import { z } from "zod";
import { Name, si } from "./fields.ts";
import { DescribedBlade, MeasuredPoint, ModelUncertainty } from "./finishFit.ts";
import { FluidState } from "./fluid.ts";
import { SeriesPropeller } from "./seriesPropeller.ts";
import { ResultWarning, UncertainNumber, uncertainSi } from "./uncertain.ts";

const merit = { symbol: "FM", unit: "1" };

const StatedMerit = z.strictObject({
  value: si(z.number().positive().max(10), { ...merit, text: "Best estimate" }),
  standardUncertainty: si(z.number().min(0).max(10), { ...merit, text: "Standard uncertainty" }),
  interval95: z.tuple([z.number(), z.number()]).readonly().describe("95 % interval"),
});

export const LossReportRequest = z
  .strictObject({
    name: Name,
    blade: DescribedBlade,
    fluid: FluidState,
    rotationRate: si(z.number().positive().max(2000), {
      symbol: "n",
      unit: "rev/s",
      text: "Rotation rate of the measurement, for the Reynolds number",
    }),
    measured: MeasuredPoint.omit({ advanceRatio: true }).describe("Coefficients at bollard"),
    staticMerit: StatedMerit.exactOptional().describe(
      "Static merit of the measurement with its own interval, where the coefficients are means of several mountings; worked out from the coefficients if absent",
    ),
    modelUncertainty: ModelUncertainty,
    series: SeriesPropeller.exactOptional().describe(
      "Propeller to compare with; one of the B series of equal pitch, blade count and area if absent",
    ),
  })
  .meta({ id: "LossReportRequest" });
export type LossReportRequest = z.infer<typeof LossReportRequest>;

export const LossCause = z.enum(["profile", "swirl", "tip", "hub", "induced"]);
export type LossCause = z.infer<typeof LossCause>;

export const LossReport = z
  .strictObject({
    staticMerit: uncertainSi({ symbol: "FM", unit: "1", text: "Ideal over real shaft power for this thrust" }),
    thrustOverIdeal: uncertainSi({
      symbol: "T/T_max",
      unit: "1",
      text: "Thrust over the greatest that momentum theory allows an open disc at this shaft power",
    }),
    series: z
      .strictObject({
        name: z.string(),
        staticMerit: si(z.number(), { symbol: "FM", unit: "1", text: "Static merit of the series propeller" }),
        thrustRatio: uncertainSi({
          symbol: "K_T/K_T,s",
          unit: "1",
          text: "Thrust over its own at equal rotation rate",
        }),
        powerRatio: uncertainSi({ symbol: "C_P/C_P,s", unit: "1", text: "Power over its own at equal rotation rate" }),
        thrustAtEqualPower: uncertainSi({
          symbol: "T/T_s",
          unit: "1",
          text: "Thrust over its own at equal shaft power",
        }),
      })
      .nullable()
      .describe("Null where no series propeller is comparable"),
    shares: z
      .array(
        z.strictObject({
          cause: LossCause,
          share: UncertainNumber.describe("Part of the shaft power"),
        }),
      )
      .describe(
        "Where the shaft power goes beyond the ideal, greatest first; empty where blade elements have no solution",
      ),
    sharesFrom: z
      .enum(["fitted", "scaled", "none"])
      .describe("Blade elements that make what was measured; those that come nearest, scaled to it; or none"),
    short: z.string().describe("The report in two sentences"),
    long: z.string().describe("The report with every loss and what acts on the greatest"),
    warnings: z.array(ResultWarning),
  })
  .meta({ id: "LossReport" });
export type LossReport = z.infer<typeof LossReport>;

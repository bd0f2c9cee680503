import type { BestPitch, BestPitchRequest, PitchCandidate } from "../../../../shared/model/bestPitch.ts";
import type { Prediction } from "../../../../shared/model/prediction.ts";
import type { SeriesWithoutPitch } from "../../../../shared/model/seriesPropeller.ts";
import { reynoldsWords } from "../../../../shared/propeller/reynoldsWords.ts";
import { formatNumber, formatQuantity } from "../../../../shared/quantity/format.ts";
import type { ChartSpec } from "../../../charts/chartSpec.ts";
import { MILLIMETRE, NEWTON, NEWTON_METRE, RPM, WATT } from "../../bench/shownUnits.ts";
import { FAMILY_NAMES } from "../series/familyNames.ts";

type Found = Extract<BestPitch, { state: "found" }>;

/** One sentence: the pitch, how fast it turns and what it takes; or why there is none. */
export function pitchSentence(result: BestPitch, { duty, series }: BestPitchRequest): string {
  if (result.state === "failed") return result.reason;
  const { pitchRatio, rotationRate, diameter, thrust, shaftPower } = result.best;
  const gives =
    duty.given === "thrust"
      ? `needs ${formatQuantity(shaftPower, WATT)} at the shaft for ${formatQuantity(thrust, NEWTON)}`
      : `makes ${formatQuantity(thrust, NEWTON)} of ${formatQuantity(shaftPower, WATT)} at the shaft`;
  const kind = {
    optimum: "does best with",
    edge: "does best, at the edge of what was tested, with",
    only: "does it with",
  };
  return (
    `${FAMILY_NAMES[series.family]} ${kind[result.kind]} P/D ${formatNumber(pitchRatio)}: a ${formatQuantity(diameter, MILLIMETRE)} ` +
    `propeller at ${formatQuantity(rotationRate, RPM)} ${gives}.`
  );
}

export function pitchRows({ best, reynolds }: Found) {
  return [
    { name: "Pitch ratio", value: formatNumber(best.pitchRatio), how: "at 0.7 R" },
    { name: "Diameter", value: formatQuantity(best.diameter, MILLIMETRE), how: "over the tips" },
    { name: "Rotation rate", value: formatQuantity(best.rotationRate, RPM), how: "of the shaft" },
    { name: "Thrust", value: formatQuantity(best.thrust, NEWTON), how: "propeller and nozzle together" },
    { name: "Shaft power", value: formatQuantity(best.shaftPower, WATT), how: "delivered to the propeller" },
    { name: "Torque", value: formatQuantity(best.torque, NEWTON_METRE), how: "of the shaft" },
    {
      name: "Share of the ideal",
      value: `${formatNumber(100 * best.merit)}\u202f%`,
      how: "power of an ideal open disc over this power; a nozzle can pass 100 %",
    },
    {
      name: "Blade Reynolds number at 0.75 R",
      value: reynolds === null ? "not known" : reynoldsWords(reynolds),
      how: "the series was tested at 2e6; below, a small propeller does worse",
    },
  ];
}

/** Power for the thrust, or thrust of the power, over the pitch ratio. */
export function pitchPicture({ best, candidates }: Found, { duty }: BestPitchRequest): ChartSpec {
  const byThrust = duty.given === "thrust";
  const worth = (one: PitchCandidate) => (byThrust ? one.shaftPower : one.thrust);
  return {
    title: byThrust ? "Shaft power for the thrust against pitch ratio" : "Thrust of the power against pitch ratio",
    x: { label: "Pitch ratio P/D", unit: "", min: 0.4, max: 1.5 },
    y: { label: byThrust ? "Shaft power" : "Thrust", unit: byThrust ? "W" : "N", min: 0 },
    series: [
      {
        id: "series",
        name: "Series",
        kind: "prediction",
        style: 0,
        points: candidates.map((one) => ({
          x: one.pitchRatio,
          y: worth(one),
          note: formatQuantity(one.rotationRate, RPM),
        })),
      },
    ],
    markers: [{ x: best.pitchRatio, label: `P/D ${formatNumber(best.pitchRatio)}` }],
  };
}

/** The propeller found, as a prediction to lay over the measurements. */
export function predictionOfPitch({ best }: Found, series: SeriesWithoutPitch): Prediction {
  const pitchRatio = Math.round(best.pitchRatio * 1000) / 1000;
  return {
    name: `Best pitch, P/D ${formatNumber(pitchRatio)}, ${formatQuantity(best.diameter, MILLIMETRE)}`,
    source: { kind: "series", diameter: best.diameter, series: { ...series, pitchRatio } },
  };
}

import type { Front, FrontQuantity } from "../../../shared/model/shortlistResult.ts";
import type { ChartAxis, ChartSpec } from "../../charts/chartSpec.ts";
import { combinationText } from "./resultModel.ts";

const AXES: Readonly<Record<FrontQuantity, ChartAxis & { readonly factor: number }>> = {
  thrustPerPower: { label: "Thrust over electrical power", unit: "N/W", factor: 1 },
  mass: { label: "Mass", unit: "g", factor: 1e-3 },
  price: { label: "Price", unit: "", factor: 1 },
  thrust: { label: "Greatest thrust within all limits", unit: "N", factor: 1 },
};

/** The combinations that no other beats in both quantities. */
export function frontChart({ x, y, points, of, on }: Front): ChartSpec {
  const [across, up] = [AXES[x], AXES[y]];
  return {
    title: `${up.label} and ${across.label.toLowerCase()}: ${on} of ${of} that no other beats in both`,
    x: { label: across.label, unit: across.unit },
    y: { label: up.label, unit: up.unit },
    series: [
      {
        id: `front-${x}-${y}`,
        name: "Not beaten in both",
        kind: "measured",
        style: 0,
        points: points.map((point) => ({
          x: point.x / across.factor,
          y: point.y / up.factor,
          note: combinationText(point.combination),
        })),
      },
    ],
  };
}

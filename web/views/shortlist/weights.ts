import type { Criterion } from "../../../shared/model/shortlist.ts";

/** What the builder may weigh, in the order of the sliders. */
export const WEIGHED: readonly { readonly key: Criterion; readonly label: string; readonly better: string }[] = [
  { key: "thrustPerPower", label: "Thrust for its power", better: "more is better" },
  { key: "thrustMargin", label: "Thrust to spare", better: "more is better" },
  { key: "endurance", label: "Endurance", better: "more is better" },
  { key: "mass", label: "Mass", better: "less is better" },
  { key: "price", label: "Price", better: "less is better" },
  { key: "tipSpeed", label: "Tip speed", better: "less is better" },
];

export type Weights = Readonly<Record<Criterion, number>>;

export const EQUAL_START: Weights = {
  thrustPerPower: 3,
  thrustMargin: 1,
  endurance: 0,
  mass: 1,
  price: 1,
  tipSpeed: 0,
};

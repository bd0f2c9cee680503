import type { ShortlistRequirement } from "../../../shared/model/shortlist.ts";
import type { Dimension } from "../../../shared/quantity/units.data.ts";

/** One demand of the form: where it stands in the requirement and how a person types it. */
export interface DemandField {
  /** Keys from the requirement inwards. */
  readonly path: readonly [keyof ShortlistRequirement, string?];
  readonly label: string;
  readonly symbol: string;
  readonly dimension: Dimension;
  readonly unit: string;
  readonly help?: string;
  readonly max?: number;
}

export interface DemandGroup {
  readonly title: string;
  readonly fields: readonly DemandField[];
}

/** All that can be asked, in the order people think of it; an empty field asks nothing. */
export const DEMAND_GROUPS: readonly DemandGroup[] = [
  {
    title: "What each thruster must push",
    fields: [
      {
        path: ["thrustAhead"],
        label: "Ahead, vehicle held still",
        symbol: "T",
        dimension: "massAsForce",
        unit: "N",
        help: "With all thrusters on the bus running.",
      },
      { path: ["thrustAstern"], label: "Astern, vehicle held still", symbol: "T", dimension: "massAsForce", unit: "N" },
      {
        path: ["thrustAtSpeed", "thrust"],
        label: "Ahead at a speed",
        symbol: "T",
        dimension: "massAsForce",
        unit: "N",
        help: "Needs a propeller known at speed: a tow, or a series.",
      },
      { path: ["thrustAtSpeed", "speed"], label: "That speed", symbol: "V_A", dimension: "speed", unit: "m/s" },
    ],
  },
  {
    title: "What it may take",
    fields: [
      {
        path: ["supplyCurrent"],
        label: "Current from the supply, all together",
        symbol: "I_s",
        dimension: "current",
        unit: "A",
      },
      { path: ["supplyVoltage", "least"], label: "Supply at least", symbol: "U", dimension: "voltage", unit: "V" },
      { path: ["supplyVoltage", "greatest"], label: "Supply at most", symbol: "U", dimension: "voltage", unit: "V" },
      { path: ["windingTemperature"], label: "Winding at most", symbol: "T_max", dimension: "temperature", unit: "°C" },
    ],
  },
  {
    title: "What fits and what it costs",
    fields: [
      { path: ["diameter"], label: "Propeller at most", symbol: "D", dimension: "length", unit: "mm" },
      {
        path: ["depth"],
        label: "Depth of the shaft",
        symbol: "h",
        dimension: "length",
        unit: "m",
        help: "For cavitation and air drawn in.",
      },
      { path: ["mass"], label: "Mass at most", symbol: "m", dimension: "mass", unit: "g" },
      {
        path: ["price"],
        label: "Price at most",
        symbol: "",
        dimension: "number",
        unit: "",
        help: "In the one currency of your parts.",
      },
      {
        path: ["tipSpeed"],
        label: "Tip speed at most",
        symbol: "V_tip",
        dimension: "speed",
        unit: "m/s",
        help: "A stand-in for noise.",
      },
    ],
  },
  {
    title: "How long it must last",
    fields: [
      {
        path: ["endurance", "meanThrust"],
        label: "Mean thrust of each",
        symbol: "T",
        dimension: "massAsForce",
        unit: "N",
      },
      { path: ["endurance", "duration"], label: "For", symbol: "t", dimension: "time", unit: "min" },
      {
        path: ["endurance", "reserve"],
        label: "Charge left at the end",
        symbol: "r",
        dimension: "fraction",
        unit: "%",
        max: 0.99,
      },
    ],
  },
];

/** Demands that stand alone or not at all: a thrust at speed needs both, an endurance its thrust and time. */
export const PAIRED = {
  thrustAtSpeed: ["thrust", "speed"],
  endurance: ["meanThrust", "duration"],
} as const;

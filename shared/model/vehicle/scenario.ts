import { z } from "zod";
import { Doubtful } from "../drivePropeller.ts";
import { si } from "../fields.ts";

const positiveOr0 = (symbol: string, unit: string, text: string) => si(z.number().min(0), { symbol, unit, text });

/** Where and how the vehicle works: what the sliders of a screen move. */
export const Scenario = z
  .strictObject({
    depth: positiveOr0("h", "m", "Depth of the vehicle").default(5),
    currentSpeed: positiveOr0("U", "m/s", "Speed of the water over the ground").default(0),
    currentSpeedUncertainty: positiveOr0("u(U)", "m/s", "Standard uncertainty of the current").default(0),
    currentProfile: z
      .enum(["uniform", "triangular"])
      .default("uniform")
      .describe(
        "Current over depth: the same everywhere, or in full at the vehicle and falling evenly to none at the surface",
      ),
    currentFrom: si(z.number().min(-6.3).max(6.3), {
      symbol: "psi",
      unit: "rad",
      text: "Where the current comes from, from the bow: 0 ahead, π/2 from starboard, π from astern",
    }).default(0),
    tetherLength: positiveOr0("L", "m", "Tether paid out; 0: none counts").default(0),
    tetherOffset: positiveOr0("x", "m", "Horizontal distance to where the tether is held at the surface").default(0),
    payload: si(Doubtful, {
      symbol: "W_p",
      unit: "N",
      text: "Weight in water of what it carries; negative: it lifts by itself",
    }).default({ value: 0, standardUncertainty: 0 }),
  })
  .meta({ id: "Scenario" });
export type Scenario = z.infer<typeof Scenario>;

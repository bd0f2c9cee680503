import { expect, test } from "vitest";
import { parseQuantity } from "../../shared/quantity/parseQuantity.ts";
import type { Dimension } from "../../shared/quantity/units.data.ts";
import { relativeError } from "../relative.ts";

interface Definition {
  readonly text: string;
  readonly as: Dimension;
  readonly si: number;
}

// BIPM, The International System of Units, 9th ed. (2019); Thompson & Taylor, NIST SP 811 (2008), Appendix B; inch, foot
// and pound by the agreement of 1959. All exact by definition.
test.each<Definition>([
  { text: "1 in", as: "length", si: 0.0254 },
  { text: "1 ft", as: "length", si: 0.3048 },
  { text: "1 lb", as: "mass", si: 0.45359237 },
  { text: "1 oz", as: "mass", si: 0.028349523125 },
  { text: "1 kgf", as: "force", si: 9.80665 },
  { text: "1 gf", as: "force", si: 0.00980665 },
  { text: "1 lbf", as: "force", si: 4.4482216152605 },
  { text: "1 ozf", as: "force", si: 0.2780138509537812 },
  { text: "1 kg", as: "massAsForce", si: 9.80665 },
  { text: "1 ozf·in", as: "torque", si: 0.007061551814226044 },
  { text: "1 lbf·in", as: "torque", si: 0.1129848290276167 },
  { text: "1 lbf·ft", as: "torque", si: 1.3558179483314 },
  { text: "1 kgf·cm", as: "torque", si: 0.0980665 },
  { text: "1 gf·cm", as: "torque", si: 9.80665e-5 },
  { text: "1 bar", as: "pressure", si: 100000 },
  { text: "1 atm", as: "pressure", si: 101325 },
  { text: "1 hp", as: "power", si: 745.6998715822702 },
  { text: "1 kn", as: "speed", si: 1852 / 3600 },
  { text: "1 km/h", as: "speed", si: 1 / 3.6 },
  { text: "1 rpm", as: "rotationRate", si: 1 / 60 },
  { text: "1 rad/s", as: "rotationRate", si: 1 / 6.283185307179586 },
  { text: "1 rpm/V", as: "speedConstant", si: 0.10471975511966 },
  { text: "1 Wh", as: "energy", si: 3600 },
  { text: "1 mAh", as: "charge", si: 3.6 },
  { text: "180 °", as: "angle", si: Math.PI },
])("$text is $si in SI", ({ text, as, si }) => {
  // The factors are exact; products of them are rounded once or twice in double precision.
  expect(relativeError(parseQuantity(text, as), si)).toBeLessThan(1e-14);
});

// The same sources, worked examples.
test.each<Definition>([
  { text: "5.1 kgf", as: "force", si: 50.013915 },
  { text: "1000 gf", as: "force", si: 9.80665 },
  { text: "11.2 lbf", as: "force", si: 49.8200820909176 },
  { text: "100 ozf·in", as: "torque", si: 0.706155181422604 },
  { text: "76.96 Wh", as: "energy", si: 277056 },
  { text: "3000 rpm", as: "rotationRate", si: 50 },
  { text: "64.4 °F", as: "temperature", si: 291.15 },
  { text: "-40 °F", as: "temperature", si: 233.15 },
  { text: "0 °F", as: "temperature", si: 273.15 - 160 / 9 },
  { text: "18 °C", as: "temperature", si: 291.15 },
  { text: "9 °F", as: "temperatureDifference", si: 5 },
])("$text works out to $si", ({ text, as, si }) => {
  expect(relativeError(parseQuantity(text, as), si)).toBeLessThan(1e-14);
});

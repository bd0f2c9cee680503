import { operatingPoint } from "../../shared/drive/operatingPoint.ts";
import { fluidProperties } from "../../shared/fluid/fluidProperties.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import {
  DriveRequest,
  type DriveRequestInput,
  OPERATING_POINT_NUMBERS,
  type OperatingPoint,
} from "../../shared/model/drive.ts";
import { formatNumber, formatUncertain } from "../../shared/quantity/format.ts";
import type { Dimension } from "../../shared/quantity/units.data.ts";
import { checked } from "./checked.ts";
import type { Option, Usage, Words } from "./options.ts";

/** Options that become numbers of the request, with their dimension; the key of the request, whether it must be there. */
const QUANTITIES = {
  kv: ["speedConstant", "speedConstant", "motor speed constant, e.g. 900rpm/V", true],
  resistance: ["motorResistance", "resistance", "motor winding resistance between two terminals", true],
  "no-load-current": ["noLoadCurrent", "current", "motor no-load current", true],
  "controller-resistance": ["controllerResistance", "resistance", "controller resistance", false],
  supply: ["supplyVoltage", "voltage", "open-circuit voltage of the supply", true],
  "supply-resistance": ["supplyResistance", "resistance", "resistance of supply and leads", false],
  "hotel-power": ["hotelPower", "power", "power the rest of the vehicle draws all the time", false],
  diameter: ["diameter", "length", "propeller diameter", true],
  "thrust-coefficient": ["thrustCoefficient", "number", "K_T = T/(rho n² D⁴)", true],
  "torque-coefficient": ["torqueCoefficient", "number", "K_Q = Q/(rho n² D⁵)", true],
  throttle: ["throttle", "fraction", "throttle, e.g. 60% (100% if absent)", false],
} as const satisfies Record<string, readonly [keyof DriveRequestInput, Dimension, string, boolean]>;

const LIMITS = {
  "motor-current-limit": ["motorCurrent", "current", "continuous motor current"],
  "motor-power-limit": ["motorPower", "power", "continuous electrical power of the motor"],
  "controller-current-limit": ["controllerCurrent", "current", "continuous controller current"],
  "supply-current-limit": ["supplyCurrent", "current", "continuous current of the supply"],
} as const satisfies Record<string, readonly [string, Dimension, string]>;

const option = (value: string, text: string): Option => ({ value, text });

export const USAGE: Usage = {
  verb: "drive",
  arguments: "",
  about:
    'The steady point of motor, controller, supply and propeller at bollard in the stated water.\nAny quantity may carry its standard uncertainty: --thrust-coefficient "0.2 ± 0.004".',
  options: {
    ...Object.fromEntries(Object.entries(QUANTITIES).map(([name, row]) => [name, option("QUANTITY", row[2])])),
    water: option("FLUID", 'e.g. "fresh 18C", "sea 12C 33", "air 20C 1013hPa 50%"'),
    thrusters: option("COUNT", "equal thrusters on the same supply (1 if absent)"),
    ...Object.fromEntries(Object.entries(LIMITS).map(([name, row]) => [name, option("QUANTITY", row[2])])),
    "wanted-thrust": option("QUANTITY", "exit with 1 unless one thruster makes this much"),
    json: { text: "print the whole result as JSON, SI units" },
  },
  examples: [
    'drive --kv 900rpm/V --resistance 120mohm --no-load-current 0.6A --supply 14.8V --supply-resistance 40mohm --diameter 76mm --thrust-coefficient 0.2 --torque-coefficient 0.02 --water "fresh 18C" --throttle 100%',
  ],
};

/** The request that the words ask for. */
export function driveRequest(words: Words): DriveRequest {
  const request: Record<string, unknown> = { throttle: 1 };
  const uncertainties: Record<string, number> = {};
  for (const [name, [key, dimension, , needed]] of Object.entries(QUANTITIES)) {
    const found = needed ? words.required(name, dimension) : words.quantity(name, dimension);
    if (!found) continue;
    request[key] = found.value;
    if (found.standardUncertainty !== null) uncertainties[key] = found.standardUncertainty;
  }
  const limits: Record<string, number> = {};
  for (const [name, [key, dimension]] of Object.entries(LIMITS)) {
    const found = words.quantity(name, dimension);
    if (found) limits[key] = found.value;
  }
  const { density } = fluidProperties(parseFluid(words.text("water") ?? "fresh 18C", "--water"));
  const whole = {
    ...request,
    thrusters: words.whole("thrusters", 1) ?? 1,
    density,
    limits,
    uncertainties,
  };
  return checked(DriveRequest, whole, optionOf);
}

/** The option that a field of the request came from. */
function optionOf(field: string): string | undefined {
  const rows: [string, readonly [string, ...unknown[]]][] = [...Object.entries(QUANTITIES), ...Object.entries(LIMITS)];
  return rows.find(([, [key]]) => field.endsWith(key))?.[0] ?? (field === "thrusters" ? "thrusters" : undefined);
}

export function run(words: Words): number {
  const point = operatingPoint(driveRequest(words));
  process.stdout.write(words.has("json") ? `${JSON.stringify(point, null, 2)}\n` : readable(point));
  const wanted = words.quantity("wanted-thrust", "massAsForce");
  return wanted && point.thrust < wanted.value ? 1 : 0;
}

function readable(point: OperatingPoint): string {
  const keys = Object.keys(OPERATING_POINT_NUMBERS) as (keyof typeof OPERATING_POINT_NUMBERS)[];
  const lines = keys.map((key) => {
    const { description = "", unit = "1" } = OPERATING_POINT_NUMBERS[key].meta() ?? {};
    const rpm = key === "rotationRate";
    const shownUnit = { symbol: rpm ? "rpm" : String(unit), factor: rpm ? 1 / 60 : 1 };
    const doubt = point.uncertainties?.[key];
    const text = doubt
      ? formatUncertain(doubt, shownUnit)
      : `${formatNumber(point[key] / shownUnit.factor, 4)}${shownUnit.symbol === "1" ? "" : ` ${shownUnit.symbol}`}`;
    return `${description.replace(/, [^,]*$/, "").padEnd(52)} ${text}`;
  });
  return `${[
    ...lines,
    `${"Governing limit".padEnd(52)} ${point.governingLimit === "supply voltage" ? "greatest power of the supply (half of its open-circuit voltage)" : point.governingLimit}`,
    ...point.warnings.map(({ message }) => `Note: ${message}`),
  ].join("\n")}\n`;
}

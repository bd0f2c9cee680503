import type { ShortlistRequirement } from "../model/shortlist.ts";
import { formatNumber, formatPercent } from "../quantity/format.ts";
import { amountInWords, probabilityInWords } from "./words.ts";

/** A demand as somebody typed it: no digits that were not given. */
function asTyped(value: number, unit: string): string {
  return amountInWords(value, unit, 6)
    .replace(/(\.\d*?)0+(?= |$)/, "$1")
    .replace(/\.(?= |$)/, "");
}

/** What is asked of a combination besides what its parts are rated for, a line each. */
function askedInWords(requirement: ShortlistRequirement): string[] {
  return [...thrustInWords(requirement), ...takenInWords(requirement), ...fitInWords(requirement)];
}

/** Whether a requirement demands nothing of a combination besides what its parts are rated for. */
export const asksNothing = (requirement: ShortlistRequirement): boolean => askedInWords(requirement).length === 0;

/**
 * What a requirement asks, a line each, as it stands beside every "meets the requirement"; last on what terms.
 * @example demandsInWords(ShortlistRequirement.parse({ thrustAhead: 15, water: { kind: "fresh", temperature: 291.15 } }))[0]
 *   // "Each thruster pushes at least 15 N ahead at rest."
 */
export function demandsInWords(requirement: ShortlistRequirement): string[] {
  const asked = askedInWords(requirement);
  const nothing = "Nothing is asked; the ratings of the parts alone decide.";
  return [...(asked.length === 0 ? [nothing] : asked), termsInWords(requirement)];
}

function thrustInWords({ thrustAhead, thrustAstern, asternEstimate, thrustAtSpeed }: ShortlistRequirement): string[] {
  const push = (thrust: number, state: string) => `Each thruster pushes at least ${asTyped(thrust, "N")} ${state}`;
  const guessed =
    asternEstimate === undefined
      ? ""
      : `; where nothing was measured astern, ${formatPercent(asternEstimate.thrustShare)} of the thrust coefficient ahead is taken, a guess`;
  return [
    ...(thrustAhead === undefined ? [] : [`${push(thrustAhead, "ahead at rest")}.`]),
    ...(thrustAstern === undefined ? [] : [`${push(thrustAstern, "astern at rest")}${guessed}.`]),
    ...(thrustAtSpeed === undefined
      ? []
      : [`${push(thrustAtSpeed.thrust, `ahead at ${asTyped(thrustAtSpeed.speed, "m/s")}`)}.`]),
  ];
}

function takenInWords(requirement: ShortlistRequirement): string[] {
  const { supplyCurrent, supplyVoltage, windingTemperature, endurance } = requirement;
  const { least, greatest } = supplyVoltage ?? {};
  return [
    ...atMost("Current from the supply", supplyCurrent, "A"),
    ...(least === undefined ? [] : [`Voltage of the supply: at least ${asTyped(least, "V")}.`]),
    ...atMost("Voltage of the supply", greatest, "V"),
    ...atMost("Winding", windingTemperature, "K"),
    ...(endurance === undefined
      ? []
      : [
          `A mean thrust of ${asTyped(endurance.meanThrust, "N")} each is kept up for ${asTyped(endurance.duration, "s")}, with ${formatPercent(endurance.reserve)} of the charge left.`,
        ]),
  ];
}

function fitInWords({ diameter, depth, mass, price, tipSpeed, counted }: ShortlistRequirement): string[] {
  const of = counted === "all" ? "of all thrusters with supply and tether" : "of one thruster";
  return [
    ...atMost("Propeller", diameter, "m"),
    ...(depth === undefined
      ? []
      : [`No cavitation and no air drawn in, with the shaft ${formatNumber(depth)} m below the surface.`]),
    ...atMost(`Mass ${of}`, mass, "kg"),
    ...atMost(`Price ${of}`, price, ""),
    ...atMost("Tip speed", tipSpeed, "m/s"),
  ];
}

function atMost(what: string, value: number | undefined, unit: string): string[] {
  return value === undefined ? [] : [`${what}: at most ${asTyped(value, unit)}.`];
}

function termsInWords({ thrusters, position, hotelPower, water, confidence }: ShortlistRequirement): string {
  const count = thrusters === 1 ? "One thruster runs" : `${thrusters} equal thrusters run together`;
  const load = hotelPower === 0 ? "no hotel load" : `a hotel load of ${asTyped(hotelPower, "W")}`;
  const kind = { fresh: "fresh water", sea: "sea water", air: "air" }[water.kind];
  const sure =
    confidence === undefined
      ? "the best estimate decides"
      : `each demand must hold with a probability of ${probabilityInWords(confidence)}`;
  const place = position === "" ? "" : ` (${position})`;
  return `${count}${place} in ${kind} of ${asTyped(water.temperature, "K")}, with ${load}; ${sure}.`;
}

import type { ShortlistRequest } from "../model/shortlist.ts";
import { formatNumber } from "../quantity/format.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { greatestSupplyPower } from "../supply/busVoltage.ts";
import type { PartRecords } from "./partRecords.ts";
import type { Tally } from "./tally.ts";

/** What a reader must know of a shortlist as a whole. */
export function shortlistWarnings({ requirement }: ShortlistRequest, records: PartRecords, tally: Tally): Warning[] {
  return [
    ...records.warnings,
    ...collapsingSupplies(records),
    ...withoutUncertainty(records),
    ...notStated(requirement, records, tally),
    ...enduranceNotAsked(requirement),
  ];
}

function collapsingSupplies({ supplies, common }: PartRecords): Warning[] {
  return supplies.flatMap(({ name, inputs }) => {
    const supply = { openCircuitVoltage: inputs.supplyVoltage, resistance: inputs.supplyResistance };
    const most = greatestSupplyPower(supply);
    if (common.hotelPower <= most) return [];
    return [
      warning({
        code: "shortlist.supply-collapses",
        where: name,
        found: `This supply collapses under the hotel load alone: it can give ${formatNumber(most)} W at most`,
        needed: `more than ${formatNumber(common.hotelPower)} W`,
        mend: "Use a pack or tether of lower resistance or higher voltage; every combination with it fails",
      }),
    ];
  });
}

function withoutUncertainty({ motors, supplies, propellers, commonDoubts }: PartRecords): Warning[] {
  const stated = [commonDoubts, ...[...motors, ...supplies, ...propellers].map(({ doubts }) => doubts)];
  if (stated.some(({ inputs }) => inputs.length > 0)) return [];
  return [
    warning({
      code: "shortlist.no-uncertainty",
      where: "box",
      found: "No part states an uncertainty, so that a demand that is just kept counts as certain",
      needed: "standard uncertainties of motor constants, supplies and coefficients",
      mend: "Take the parts from measurements, or state what is known of their doubt",
    }),
  ];
}

function notStated({ weights }: ShortlistRequest["requirement"], records: PartRecords, { ranges }: Tally): Warning[] {
  const { motors, controllers, gears, propellers } = records;
  const parts = [...motors, ...controllers, ...gears, ...propellers];
  return (["mass", "price"] as const).flatMap((what) => {
    const without = parts.filter((part) => Number.isNaN(part[what]));
    if (weights[what] === 0 || without.length === 0) return [];
    const all = Number.isFinite(ranges[what].least)
      ? ""
      : ", so that none of those that meet the requirement can be ranked by it";
    return [
      warning({
        code: "shortlist.not-stated",
        where: without
          .map(({ name }) => name)
          .slice(0, 5)
          .join(", "),
        found: `${without.length} part${without.length === 1 ? " does" : "s do"} not state the ${what}${all}`,
        needed: `the ${what} of every part that is ranked by it`,
        mend: "State it; until then combinations with these parts score 0 in it",
      }),
    ];
  });
}

function enduranceNotAsked({ weights, endurance }: ShortlistRequest["requirement"]): Warning[] {
  if (weights.endurance === 0 || endurance !== undefined) return [];
  return [
    warning({
      code: "shortlist.endurance-not-asked",
      where: "requirement.endurance",
      found: "The ranking weighs endurance, but the requirement states no mean thrust",
      needed: "a mean thrust, for a time to be worked out",
      mend: "State the endurance, or give it no weight",
    }),
  ];
}

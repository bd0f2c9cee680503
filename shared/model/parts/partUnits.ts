import type { Dimension } from "../../quantity/units.data.ts";

interface Written {
  readonly dimension: Dimension;
  readonly unit: string;
}

/** How builders write each unit that parts are kept in: dimension to read it in, and the unit it is first shown in. */
const WRITTEN: Readonly<Record<string, Written>> = {
  m: { dimension: "length", unit: "mm" },
  "m²": { dimension: "area", unit: "mm²" },
  kg: { dimension: "mass", unit: "g" },
  "rad/(V·s)": { dimension: "speedConstant", unit: "rpm/V" },
  "A·s/rad": { dimension: "currentPerAngularVelocity", unit: "A per 1000 rpm" },
  Ω: { dimension: "resistance", unit: "mΩ" },
  "Ω/m": { dimension: "resistancePerLength", unit: "mΩ/m" },
  A: { dimension: "current", unit: "A" },
  V: { dimension: "voltage", unit: "V" },
  W: { dimension: "power", unit: "W" },
  C: { dimension: "charge", unit: "Ah" },
  K: { dimension: "temperature", unit: "°C" },
  "K/W": { dimension: "thermalResistance", unit: "K/W" },
  N: { dimension: "force", unit: "N" },
  "N/m": { dimension: "forcePerLength", unit: "N/m" },
  "1": { dimension: "number", unit: "1" },
};

/** Values whose size asks for another unit than the rest of their dimension. */
const OWN: Readonly<Record<string, string>> = { "lead.length": "m", "conductor.length": "m", roughness: "µm" };

/** Shares of a whole, which people write in per cent as well. */
const SHARES: ReadonlySet<string> = new Set(["efficiency", "switchingLoss", "cells.statedCharge"]);

/** How the value at `key`, kept in `unit`, is written; null where it is a plain number. */
export function writtenUnit(key: string, unit: string): Written | null {
  if (SHARES.has(key)) return { dimension: "fraction", unit: "%" };
  const usual = WRITTEN[unit];
  if (!usual) return null;
  return { dimension: usual.dimension, unit: OWN[key] ?? usual.unit };
}

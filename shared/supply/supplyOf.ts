import type { SupplyAssembly } from "../model/driveTrain.ts";
import type { SupplyState } from "../model/supplyState.ts";
import { type Warning, warning } from "../quantity/warning.ts";
import { conductorResistance } from "./conductor.ts";
import { packState } from "./packState.ts";

/**
 * Pack, leads and tether as one source: open-circuit voltage behind one resistance, with what each part brings, its
 * doubt and its limits.
 *
 *   R_s = R_pack + R_leads + R_tether,   u²(R_s) = Σ u²
 *
 * Source   Kirchhoff's voltage law; parts as `packState` and `conductorResistance`.
 * Assumes  one temperature of pack, leads and tether; plugs and joints are part of what was stated.
 * Throws   OutOfDomain as `packState` and `conductorResistance`.
 */
export function supplyOf({ pack, tether, charge, temperature }: SupplyAssembly): SupplyState {
  const condition = { ...(charge !== undefined && { charge }), ...(temperature !== undefined && { temperature }) };
  const state = packState(pack, condition);
  const part = (name: "leads" | "tether", { value, standardUncertainty }: ReturnType<typeof conductorResistance>) => ({
    ...{ name, resistance: value, resistanceUncertainty: standardUncertainty },
  });
  const parts: SupplyState["parts"] = [
    { name: "pack", resistance: state.resistance, resistanceUncertainty: state.uncertainties.resistance },
    ...(pack.lead ? [part("leads", conductorResistance(pack.lead, temperature))] : []),
    ...(tether?.conductor ? [part("tether", conductorResistance(tether.conductor, temperature))] : []),
  ];
  return {
    openCircuitVoltage: state.openCircuitVoltage,
    resistance: parts.reduce((sum, { resistance }) => sum + resistance, 0),
    parts,
    uncertainties: {
      openCircuitVoltage: state.uncertainties.openCircuitVoltage,
      resistance: Math.hypot(...parts.map(({ resistanceUncertainty }) => resistanceUncertainty)),
    },
    limits: limitsOf({ pack, ...(tether && { tether }) }),
    warnings: [...state.warnings, ...withoutConductor(tether)],
  };
}

function limitsOf({ pack, tether }: Pick<SupplyAssembly, "pack" | "tether">): SupplyState["limits"] {
  return {
    ...(pack.currentLimit !== undefined && { supplyCurrent: pack.currentLimit }),
    ...(pack.fuseCurrent !== undefined && { fuseCurrent: pack.fuseCurrent }),
    ...(tether?.conductor && tether.currentLimit !== undefined && { tetherCurrent: tether.currentLimit }),
    ...(pack.leastVoltage !== undefined && { supplyVoltage: pack.leastVoltage }),
  };
}

function withoutConductor(tether: SupplyAssembly["tether"]): Warning[] {
  if (tether === undefined || tether.conductor !== undefined) return [];
  return [
    warning({
      code: "supply.tether-without-conductor",
      where: "tether.conductor",
      found: "The tether that is to carry the power has no power conductors stated; it is taken as without resistance",
      needed: "length, section and pairs of its conductors",
      mend: "State them with the tether, or leave the tether out of the supply where the pack is aboard",
    }),
  ];
}

import { LIMIT_NAMES, type LimitState } from "../../model/drive.ts";
import type { LimitingPart } from "../../model/vehicle/motionAnswer.ts";
import type { BusSolution } from "./busDemand.ts";
import type { BusBound } from "./busProblem.ts";
import type { PropulsionModel } from "./propulsionModel.ts";
import type { WayAtSpeed } from "./wayModel.ts";

const OF_BUS: Readonly<Record<Exclude<BusBound, "asked" | "thrusters">, Omit<LimitingPart, "drive">>> = {
  supplyCurrent: {
    part: "pack",
    limit: "supply current",
    text: "The continuous current of the pack limits it: a pack of higher current, or less current for the same thrust.",
  },
  fuseCurrent: {
    part: "fuse",
    limit: "fuse current",
    text: "The fuse limits it; a larger one only as far as wires, pack and the maker's data allow.",
  },
  tetherCurrent: {
    part: "tether",
    limit: "tether current",
    text: "The current that the tether may carry limits it: thicker conductors, or a higher voltage on the tether.",
  },
  supplyVoltage: {
    part: "pack",
    limit: "least supply voltage",
    text: "The least voltage of the pack limits it: a pack or leads of lower resistance.",
  },
  holding: {
    part: "pack",
    limit: "voltage for what is held",
    text: "More thrust would take the voltage that holding its net weight or buoyancy and the tether needs: trim it, or a pack, leads or tether of lower resistance.",
  },
  greatestPower: {
    part: "pack",
    limit: "supply voltage",
    text: "The supply gives all the power that it can, at half its voltage: a pack, leads or tether of lower resistance.",
  },
};

type OfDrive = Pick<LimitingPart, "part"> & { readonly text: (drive: string) => string };

const OF_DRIVE: Readonly<Partial<Record<LimitState["name"], OfDrive>>> = {
  "motor current": { part: "motor", text: (drive) => `The continuous current of the motor of ${drive} limits it.` },
  "motor power": { part: "motor", text: (drive) => `The continuous power of the motor of ${drive} limits it.` },
  "winding temperature": { part: "motor", text: (drive) => `The heat of the winding of ${drive} limits it.` },
  "controller current": { part: "controller", text: (drive) => `The current of the controller of ${drive} limits it.` },
  cavitation: {
    part: "propeller",
    text: (drive) => `Cavitation at the propeller of ${drive} limits it: deeper, or more blade area.`,
  },
  ventilation: { part: "propeller", text: (drive) => `Air that the propeller of ${drive} draws in limits it: deeper.` },
};

/** The part that would have to grow for the vehicle to push harder. */
export function limitingPart(model: PropulsionModel, solved: BusSolution): LimitingPart {
  const { bound, outcome } = solved;
  if (outcome === "notHeld") return notHeld(model, solved);
  if (bound === "asked") return { part: "nothing", drive: null, limit: "none", text: "No limit is reached." };
  if (bound !== "thrusters") return { ...OF_BUS[bound], drive: null };
  const governing = governingThruster(solved);
  if (governing === null) {
    return {
      part: "layout",
      drive: null,
      limit: "layout",
      text: "No thruster can push that way with the other motions at zero.",
    };
  }
  const { drive } = model.thrusters[governing.thruster]!;
  return ofDrive(model.drives[drive]!.name, governing.way);
}

/** Where air that is drawn in takes the thrust, depth is what to mend before the trim. */
function notHeld(model: PropulsionModel, { flow }: BusSolution): LimitingPart {
  for (const [i, { ahead, astern }] of flow.thrusters.entries()) {
    const limit = "ventilation";
    if (![ahead, astern].some((way) => way && LIMIT_NAMES[way.full.limit] === limit)) continue;
    const drive = model.drives[model.thrusters[i]!.drive]!.name;
    const text = `Air that the propeller of ${drive} draws in leaves too little thrust to hold its net weight or buoyancy and the tether: go deeper.`;
    return { part: "propeller", drive, limit, text };
  }
  return {
    part: "layout",
    drive: null,
    limit: "layout",
    text: "The thrusters can not hold what pulls across the way, its net weight or buoyancy and the tether: trim it first.",
  };
}

function governingThruster({ gains, flow }: BusSolution): { thruster: number; way: WayAtSpeed } | null {
  let thruster = -1;
  gains.forEach((gain, i) => {
    if (Math.abs(gain) > Math.abs(gains[thruster] ?? 0)) thruster = i;
  });
  if (thruster < 0) return null;
  const { ahead, astern } = flow.thrusters[thruster]!;
  const way = gains[thruster]! < 0 ? astern : ahead;
  return way === null ? null : { thruster, way };
}

function ofDrive(drive: string, { full }: WayAtSpeed): LimitingPart {
  const limit = LIMIT_NAMES[full.limit];
  const known = limit === undefined ? undefined : OF_DRIVE[limit];
  if (limit !== undefined && known !== undefined) {
    return { part: known.part, drive, limit, text: known.text(drive) };
  }
  if (full.status === "windmilling") {
    const text = `The water is so fast that the propeller of ${drive} pushes no more: more pitch, or more voltage.`;
    return { part: "propeller", drive, limit: "end of the curve", text };
  }
  const text = `Full throttle of ${drive} limits it: more voltage, a higher speed constant, or a larger propeller.`;
  return { part: "voltage", drive, limit: "full throttle", text };
}

import { fieldsOf, type PartField } from "./partFields.ts";
import type { FormKind } from "./partsModel.ts";

/** Fields that are filled in together. */
export interface FieldGroup {
  /** Empty: the usual fields, which are never folded. */
  readonly title: string;
  readonly fields: readonly PartField[];
}

interface Group {
  readonly title: string;
  /** Paths of values, or of whole documents inside the part. */
  readonly keys: readonly string[];
}

const BOUGHT: Group = { title: "For the shortlist: mass, price", keys: ["mass", "price"] };
const SURE: Group = { title: "How sure the numbers are", keys: ["uncertainties"] };

/** What folds away, by kind; all else is usual. Tethers and gears have few fields. */
const FOLDED: Readonly<Record<FormKind, readonly Group[]>> = {
  propellers: [{ title: "Print: material, layers, roughness", keys: ["material", "layerHeight", "roughness"] }, BOUGHT],
  motors: [
    {
      title: "Heat",
      keys: ["resistanceTemperature", "thermalResistance", "uncertainties.thermalResistance", "temperatureLimit"],
    },
    { title: "Water in the motor", keys: ["wetTorque"] },
    SURE,
    BOUGHT,
  ],
  controllers: [
    { title: "Losses at part throttle", keys: ["freewheelVoltage", "switchingLoss", "standbyPower"] },
    { title: "Command pulses", keys: ["command"] },
    BOUGHT,
  ],
  packs: [{ title: "Cells", keys: ["cells"] }, { title: "Leads", keys: ["lead"] }, SURE, BOUGHT],
  tethers: [
    { title: "Power conductors", keys: ["conductor", "currentLimit"] },
    { title: "For the shortlist: price", keys: ["price"] },
  ],
  gears: [BOUGHT],
};

/** The fields of a kind in groups, the usual ones first, each field in one group. */
export function groupsOf(kind: FormKind): FieldGroup[] {
  const left = new Set(fieldsOf(kind));
  const folded = FOLDED[kind].map(({ title, keys }) => {
    const fields = keys.flatMap((wanted) =>
      [...left].filter(({ key }) => key === wanted || key.startsWith(`${wanted}.`)),
    );
    for (const field of fields) left.delete(field);
    return { title, fields };
  });
  return [{ title: "", fields: [...left] }, ...folded];
}

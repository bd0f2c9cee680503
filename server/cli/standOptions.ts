import { Controller } from "../../shared/model/parts/controller.ts";
import { Motor } from "../../shared/model/parts/motor.ts";
import { Propeller } from "../../shared/model/parts/propeller.ts";
import { formatNumber } from "../../shared/quantity/format.ts";
import { type Warning, warning } from "../../shared/quantity/warning.ts";
import { checked } from "./checked.ts";
import type { Words } from "./options.ts";

/** The propeller on the stand, as --diameter and --nozzle state it. */
export function propellerOf(words: Words, name: string): Propeller {
  const diameter = words.required("diameter", "length");
  const document = {
    name,
    diameter: diameter.value,
    diameterUncertainty: diameter.standardUncertainty ?? 0,
    nozzle: words.has("nozzle"),
  };
  return checked(Propeller, document, () => "diameter");
}

/** A diameter without ± is taken as exact: told, because the coefficients go with its fourth and fifth power. */
export function diameterDoubts(words: Words): Warning[] {
  const { value, standardUncertainty } = words.required("diameter", "length");
  if (standardUncertainty !== null) return [];
  const size = `${formatNumber(1000 * value)} mm`;
  return [
    warning({
      code: "cli.diameter-exact",
      where: "--diameter",
      found: `the diameter was taken as exactly ${size}, because no ± was given, so that no interval contains its error; 1 % more diameter makes K_T 4 % and C_P 5 % smaller`,
      needed: "the diameter with its standard uncertainty",
      mend: `For example --diameter "${size} ± 0.2 mm"`,
    }),
  ];
}

/** Options that become the motor on the stand, with the field each fills. */
const MOTOR_OPTIONS = { kv: "speedConstant", resistance: "resistance", "no-load-current": "noLoadCurrent" } as const;

/** The motor on the stand, where the words state its constants. */
export function motorOf(words: Words): Motor | undefined {
  if (!Object.keys(MOTOR_OPTIONS).some((name) => words.has(name))) return undefined;
  const document = {
    name: "motor on the stand",
    speedConstant: words.required("kv", "speedConstant").value,
    resistance: words.required("resistance", "resistance").value,
    noLoadCurrent: words.required("no-load-current", "current").value,
  };
  return checked(Motor, document, (field) => Object.entries(MOTOR_OPTIONS).find(([, key]) => key === field)?.[0]);
}

/** The controller on the stand; without a stated resistance it has none. */
export function controllerOf(words: Words): Controller {
  const resistance = words.quantity("controller-resistance", "resistance")?.value ?? 0;
  return checked(Controller, { name: "controller on the stand", resistance }, () => "controller-resistance");
}

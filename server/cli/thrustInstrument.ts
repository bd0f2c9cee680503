import { basename } from "node:path";
import { calibrationTable } from "../../shared/calibration/calibrationTable.ts";
import { type Arm, Instrument, type UsedInstruments } from "../../shared/model/instrument.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import { sha256OfFile } from "../intake/fileHash.ts";
import { readLogFile } from "../intake/readLogFile.ts";
import type { Option, Words } from "./options.ts";

/** Options that calibrate the thrust from dead weights. */
export const CALIBRATION_OPTIONS = {
  calibration: {
    value: "TABLE",
    text: 'dead weights of the thrust channel: two columns, weight and reading, units in the header, e.g. "mass (g),reading (gf)"; in the order taken, up and down. Takes the place of --factor thrust and --calibration-uncertainty',
  },
  "weights-tolerance": { value: "FRACTION", text: "half-width the weights of --calibration lie within, e.g. 0.5%" },
  "scale-arm": {
    value: "QUANTITY",
    text: "pivot to scale, where the weights lay on the scale; ± the half-width it lies within",
  },
  "propeller-arm": { value: "QUANTITY", text: "pivot to propeller, with --scale-arm; ± the half-width it lies within" },
} as const satisfies Record<string, Option>;

/** The instrument behind the thrust that --calibration names; none without it. */
export async function thrustInstrumentOf(words: Words): Promise<UsedInstruments> {
  const path = words.text("calibration");
  if (path === undefined) {
    const alone = ["weights-tolerance", "scale-arm", "propeller-arm"].find((name) => words.has(name));
    if (alone) throw incomplete(alone, "calibration");
    return {};
  }
  const factored = words.pairs("factor").some(([role]) => role === "thrust");
  if (factored || words.has("calibration-uncertainty")) {
    throw twoCalibrations(factored ? "--factor thrust" : "--calibration-uncertainty");
  }
  const [scaleArm, propellerArm] = [armOf(words, "scale-arm"), armOf(words, "propeller-arm")];
  if (scaleArm && !propellerArm) throw incomplete("scale-arm", "propeller-arm");
  if (propellerArm && !scaleArm) throw incomplete("propeller-arm", "scale-arm");
  const fileName = basename(path);
  const { points, appliedUnit, readingUnit } = calibrationTable(await readLogFile(path, fileName));
  const calibration = {
    ...{ kind: "deadWeights", points, appliedUnit, readingUnit },
    appliedTolerance: words.quantity("weights-tolerance", "fraction")?.value ?? 0,
    ...(scaleArm && propellerArm && { lever: { scaleArm, propellerArm } }),
  };
  const read = Instrument.safeParse({ name: fileName.slice(0, 120), role: "thrust", calibration });
  if (read.success) return { thrust: { id: await sha256OfFile(path), instrument: read.data } };
  const { path: at, message } = read.error.issues[0]!;
  throw new InputProblem({
    code: "cli.calibration",
    where: `--calibration ${fileName}`,
    found: `${at.slice(1).map(String).join(" ")}: ${message}`,
    needed: "3 to 500 rows of a weight and a reading, tolerances below 50 %",
    mend: "Check the table and the options that go with it",
  });
}

function armOf(words: Words, name: "scale-arm" | "propeller-arm"): Arm | undefined {
  const arm = words.quantity(name, "length");
  return arm && { length: arm.value, tolerance: arm.standardUncertainty ?? 0 };
}

function incomplete(given: string, missing: string): InputProblem {
  return new InputProblem({
    code: "cli.missing-option",
    where: `--${given}`,
    found: `--${given} was given without --${missing}`,
    needed: `both`,
    mend: `Give --${missing}; --help shows how`,
  });
}

function twoCalibrations(other: string): InputProblem {
  return new InputProblem({
    code: "cli.two-calibrations",
    where: "--calibration",
    found: `${other} was given as well`,
    needed: "one calibration of the thrust",
    mend: `Leave out ${other}: factor and uncertainty come from the table`,
  });
}

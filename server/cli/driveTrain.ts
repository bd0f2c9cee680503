import { seriesPropellerCurve, withShapeOf } from "../../shared/drive/propellerCurves.ts";
import { parseFluid } from "../../shared/fluid/parseFluid.ts";
import type { DriveRequest } from "../../shared/model/drive.ts";
import { DriveTrain } from "../../shared/model/driveTrain.ts";
import { SeriesPropeller } from "../../shared/model/seriesPropeller.ts";
import { InputProblem } from "../../shared/quantity/problem.ts";
import type { Warning } from "../../shared/quantity/warning.ts";
import { checked } from "./checked.ts";
import { TRAIN_OPTIONS } from "./driveOptions.ts";
import { jsonOfFile } from "./namedFile.ts";
import type { Words } from "./options.ts";
import { seriesOf } from "./predictSeries.ts";

/** A drive train with what the words say beyond it. */
export interface WordedTrain {
  readonly train: DriveTrain;
  /** Standard uncertainties that a train has no field for. */
  readonly uncertainties: DriveRequest["uncertainties"];
  readonly warnings: readonly Warning[];
}

/** The drive train of a file, or of the words. Throws InputProblem. */
export async function trainOf(words: Words): Promise<WordedTrain> {
  const path = words.text("train");
  if (path === undefined) return trainOfWords(words);
  const given = [...Object.keys(TRAIN_OPTIONS), "thrusters", "water", "series"].find((name) => words.has(name));
  if (given !== undefined) throw fileAndParts(given);
  const meant = { where: `--train ${path}`, needed: "a drive train as JSON, SI units; /api/docs shows its fields" };
  const train = checked(DriveTrain, await jsonOfFile(path, meant), () => undefined);
  return { train, uncertainties: {}, warnings: [] };
}

function trainOfWords(words: Words): WordedTrain {
  const whole = emptyTrain(words);
  const uncertainties: DriveRequest["uncertainties"] = {};
  for (const [name, { path, dimension, needed, doubt, doubtInput }] of Object.entries(TRAIN_OPTIONS)) {
    if (dimension === "count") {
      const count = words.whole(name, 0);
      if (count !== undefined) put(whole, path, count);
      continue;
    }
    const found = needed ? words.required(name, dimension) : words.quantity(name, dimension);
    if (found === undefined) continue;
    put(whole, path, found.value);
    if (found.standardUncertainty === null) continue;
    if (doubt !== undefined) put(whole, doubt, found.standardUncertainty);
    else if (doubtInput !== undefined) uncertainties[doubtInput] = found.standardUncertainty;
    else throw doubtNotUsed(name);
  }
  completeTether(whole);
  const train = checked(DriveTrain, whole, optionOf);
  return { ...withSeriesShape(train, words), uncertainties };
}

/** What the schema asks for and no option states: names, and a resistance of 0 where none is given. */
function emptyTrain(words: Words): Record<string, unknown> {
  return {
    supply: { pack: { name: "supply", resistance: 0 } },
    controller: { name: "controller", resistance: 0 },
    motor: { name: "motor" },
    ...(words.has("gear-ratio") || words.has("gear-efficiency")
      ? { gear: { name: "gear", ratio: 1, efficiency: 1 } }
      : {}),
    propeller: { name: "propeller", diameter: {}, ahead: {} },
    thrusters: words.whole("thrusters", 1) ?? 1,
    water: parseFluid(words.text("water") ?? "fresh 18C", "--water"),
  };
}

type Branch = Record<string, unknown>;

function put(tree: Branch, path: string, value: number): void {
  const keys = path.split("/");
  const last = keys.pop()!;
  let branch = tree;
  for (const key of keys) {
    branch[key] ??= {};
    branch = branch[key] as Branch;
  }
  branch[last] = value;
}

/** A tether of the words has a name, says how its copper is given, and a diameter, which no number here rests on. */
function completeTether({ supply }: Branch): void {
  const tether = (supply as Branch)["tether"] as Branch | undefined;
  if (tether === undefined) return;
  tether["name"] = "tether";
  tether["diameter"] = 0.01;
  const conductor = tether["conductor"] as Branch | undefined;
  if (conductor === undefined) return;
  const size = conductor["size"] as Branch | undefined;
  if (size === undefined || ("area" in size && "gauge" in size)) throw copperOfTether(size !== undefined);
  size["given"] = "area" in size ? "area" : "gauge";
}

/** Change of the coefficients with speed as in a published series, through the stated ones. */
function withSeriesShape(train: DriveTrain, words: Words): Pick<WordedTrain, "train" | "warnings"> {
  const name = words.text("series");
  if (name === undefined) return { train, warnings: [] };
  const pitchRatio = words.required("pitch-ratio", "number").value;
  const series = checked(SeriesPropeller, { ...seriesOf(name), pitchRatio }, () => "series");
  const { curve, warnings } = seriesPropellerCurve({ series });
  const ahead = withShapeOf(train.propeller.ahead, curve);
  return { train: { ...train, propeller: { ...train.propeller, ahead } }, warnings };
}

/** The option that a field of the drive train came from. */
function optionOf(field: string): string | undefined {
  if (field === "thrusters") return field;
  return Object.entries(TRAIN_OPTIONS).find(([, { path }]) => field === path.replaceAll("/", "."))?.[0];
}

function fileAndParts(option: string): InputProblem {
  return new InputProblem({
    code: "cli.train-and-parts",
    where: `--${option}`,
    found: `--${option} was given beside --train`,
    needed: "the drive train from the file, or all of it from options",
    mend: "Change the number in the file, or leave --train away",
  });
}

function copperOfTether(isTwice: boolean): InputProblem {
  return new InputProblem({
    code: "cli.tether-copper",
    where: "--tether-area, --tether-gauge",
    found: `The copper of the tether is ${isTwice ? "given twice" : "not given"}`,
    needed: "its section or its gauge, one of the two",
    mend: isTwice ? "Leave one away" : "Add for example --tether-gauge 16",
  });
}

function doubtNotUsed(option: string): InputProblem {
  return new InputProblem({
    code: "cli.doubt-not-used",
    where: `--${option}`,
    found: "the uncertainty of this quantity is not followed",
    needed: "the number alone",
    mend: "Leave ± and what follows away; run again with other values to see what they change",
  });
}

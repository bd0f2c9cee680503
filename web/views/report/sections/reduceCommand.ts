import { describeFluid } from "../../../../shared/fluid/parseFluid.ts";
import { ROLE_NAMES } from "../../../../shared/log/roleUnits.ts";
import type { ColumnRole, Recipe } from "../../../../shared/model/recipe.ts";
import type { Run } from "../../../../shared/model/run.ts";
import { RPM_PER_VOLT } from "../../../../shared/motor/identifySentence.ts";
import type { StoredParts } from "../../../api/client.ts";

/** The command that reduces the log of a run by itself. */
export interface ReduceCommand {
  readonly words: string;
  /** What the run rests on and no option states, so that numbers may differ: named, in words. */
  readonly unstated: readonly string[];
}

/** An option with its words, or a thing that none states. */
type Piece = { readonly option: string } | { readonly unstated: string };

const option = (text: string): Piece => ({ option: text });
const unstated = (text: string): Piece => ({ unstated: text });
/** A piece where a thing holds. */
const given = (holds: boolean, piece: Piece): Piece[] => (holds ? [piece] : []);

/** Every decision behind a run as an option, and those that have none by name. */
export function reduceCommand(parts: StoredParts, run: Run): ReduceCommand {
  const { recipe, file } = run;
  const pieces = [
    ...propellerPieces(parts, run),
    // What nobody stated is not stated here either: the command takes the same and says so.
    ...given(!recipe.fluidAssumed, option(`--water "${describeFluid(recipe.fluid).replaceAll("\u202f", " ")}"`)),
    ...recipe.columns.flatMap(columnPieces),
    ...readingPieces(recipe),
    ...(recipe.polePairs === undefined ? [] : [option(`--pole-pairs ${recipe.polePairs}`)]),
    ...correctionPieces(parts, recipe),
    ...tarePieces(recipe),
    ...plateauPieces(recipe),
    ...advancePieces(recipe),
    ...standPieces(recipe),
    ...motorPieces(parts, recipe),
    ...companionPieces(run),
  ];
  const options = pieces.flatMap((piece) => ("option" in piece ? piece.option : []));
  return {
    words: [`reduce "${file.name}"`, ...options].join(" "),
    unstated: pieces.flatMap((piece) => ("unstated" in piece ? piece.unstated : [])),
  };
}

function propellerPieces({ propellers }: StoredParts, { propellerId }: Run): Piece[] {
  const propeller = propellers.find(({ id }) => id === propellerId)?.document;
  if (propeller === undefined) return [option("--diameter DIAMETER")];
  const { diameter, diameterUncertainty, nozzle } = propeller;
  return [
    option(`--diameter "${plain(1000 * diameter)} mm ± ${plain(1000 * diameterUncertainty)} mm"`),
    ...given(nozzle, option("--nozzle")),
  ];
}

function columnPieces({ column, role, unit }: Recipe["columns"][number]): Piece[] {
  const stated = option(`--column ${role}="#${column + 1}"`);
  return role === "ignore" || unit === "" ? [stated] : [stated, option(`--unit "${role}=${unit}"`)];
}

const DELIMITER_WORDS: Readonly<Record<string, string>> = {
  "\t": "tab",
  ",": "comma",
  ";": "semicolon",
  "|": "bar",
  " ": "blank",
};

function readingPieces({ reading = {} }: Recipe): Piece[] {
  const { decimalMark, delimiter, headerLine, firstDataLine, thousands, encoding, refusedRepairs = [] } = reading;
  const read = [
    ["decimal-mark", decimalMark && (decimalMark === "," ? "comma" : "point")],
    ["between", delimiter && DELIMITER_WORDS[delimiter]],
    ["header", headerLine === null ? "none" : headerLine],
    ["first-row", firstDataLine],
    ["thousands", thousands],
    ["encoding", encoding],
    ...refusedRepairs.map((code) => ["without", code] as const),
  ] as const;
  return read.flatMap(([how, what]) => (what === undefined ? [] : [option(`--read ${how}=${what}`)]));
}

function correctionPieces({ instruments }: StoredParts, { corrections, instrumentIds = {} }: Recipe): Piece[] {
  const behind = Object.values(instrumentIds).flatMap((id) => {
    const name = instruments.find((one) => one.id === id)?.document.name;
    return name === undefined
      ? []
      : [unstated(`the calibration “${name}” (its weights, written as a table, go with --calibration)`)];
  });
  const calibrated = new Set(Object.keys(instrumentIds));
  const stated = Object.entries(corrections)
    .filter(([role]) => !calibrated.has(role))
    .flatMap(([role, correction]) => correctionOf(role as ColumnRole, correction));
  return [...behind, ...stated];
}

function correctionOf(
  role: ColumnRole,
  { factor, offset, relativeUncertainty, resolution }: NonNullable<Recipe["corrections"][ColumnRole]>,
): Piece[] {
  const name = ROLE_NAMES[role];
  return [
    ...given(factor !== 1, option(`--factor ${role}=${factor}`)),
    ...given(offset !== 0, unstated(`the offset of ${name}`)),
    ...given(
      relativeUncertainty > 0,
      role === "thrust"
        ? option(`--calibration-uncertainty ${plain(100 * relativeUncertainty)}%`)
        : unstated(`the uncertainty of the factor of ${name}`),
    ),
    ...given(resolution !== undefined, unstated(`the smallest step of ${name}`)),
  ];
}

function tarePieces({ tare }: Recipe): Piece[] {
  if (tare.mode === "none") return [option("--no-tare")];
  return [
    ...given(tare.mode === "windows", unstated("the spans of the tare")),
    ...given(tare.shape === "line", unstated("the tare as one line")),
  ];
}

function plateauPieces({ plateaus, leftOut }: Recipe): Piece[] {
  return [
    ...given(plateaus.mode === "sweep", option("--sweep")),
    ...given(plateaus.mode === "spans", unstated("the plateaus set by hand")),
    ...given(plateaus.mode === "automatic" && plateaus.minimumDuration !== undefined, unstated("the shortest plateau")),
    ...given(leftOut.length > 0, unstated("the plateaus left out")),
  ];
}

function advancePieces({ advanceSpeeds: speeds, advanceOrder }: Recipe): Piece[] {
  const order = advanceOrder === undefined ? [] : [option(`--order ${advanceOrder}`)];
  if (speeds === undefined) return order;
  if (speeds.mode === "spans") return [unstated("the advance speeds by span"), ...order];
  const doubt = Math.abs(speeds.speed) * speeds.relativeUncertainty;
  return [option(`--advance-speed "${plain(speeds.speed)} m/s ± ${plain(doubt)} m/s"`), ...order];
}

function standPieces({ stand = {} }: Recipe): Piece[] {
  const { shaftImmersion, ...others } = stand;
  return [
    ...(shaftImmersion === undefined ? [] : [option(`--immersion "${plain(shaftImmersion)} m"`)]),
    ...given(
      Object.keys(others).length > 0,
      unstated("size of the tank and limits of the instruments, for the checks"),
    ),
  ];
}

/** Motor and controller on the stand: without them a log without torque gives no power coefficient. */
function motorPieces({ motors, controllers }: StoredParts, { motorId, controllerId }: Recipe): Piece[] {
  const motor = motors.find(({ id }) => id === motorId)?.document;
  const controller = controllers.find(({ id }) => id === controllerId)?.document;
  if (motor === undefined) return [];
  return [
    option(
      `--kv ${plain(motor.speedConstant / RPM_PER_VOLT.factor)}rpm/V --resistance ${plain(motor.resistance)}ohm --no-load-current ${plain(motor.noLoadCurrent)}A`,
    ),
    ...(controller === undefined ? [] : [option(`--controller-resistance ${plain(controller.resistance)}ohm`)]),
    ...given(motor.uncertainties !== undefined, unstated("the uncertainties of the motor's constants")),
    ...given(motor.noLoadCurrentSlope !== 0, unstated("the rise of the no-load current with speed")),
    ...given(motor.wetTorque !== undefined, unstated("the water in the motor")),
    ...given(
      [controller?.freewheelVoltage, controller?.switchingLoss, controller?.standbyPower].some((loss) => loss),
      unstated("the losses of the controller besides its resistance"),
    ),
  ];
}

function companionPieces({ companion }: Run): Piece[] {
  if (companion === undefined) return [];
  const { file, lag } = companion;
  return [
    option(`--electrical-log "${file.name}"`),
    ...(lag.mode === "stated" ? [option(`--lag=${plain(lag.seconds)}s`)] : []),
    unstated(`the columns of ${file.name}`),
  ];
}

const plain = (value: number) => Number(value.toPrecision(6));

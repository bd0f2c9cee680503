import type { MotorConstants } from "../../../shared/motor/motorConstants.ts";
import { motorProblems } from "../../../shared/motor/motorProblems.ts";
import { speedConstantReadings } from "../../../shared/motor/speedConstantReadings.ts";
import type { WarningItem } from "../../app/Warnings.tsx";
import { capitalised } from "../../app/words.ts";

type Plain = Readonly<Record<string, unknown>>;

/** What is asked before a motor with implausible constants is stored. */
export interface MotorQuestionModel {
  readonly doubts: readonly WarningItem[];
  /** Other readings of the speed constant, each with the motor that it makes. */
  readonly readings: readonly { readonly label: string; readonly says: string; readonly document: Plain }[];
  /** The motor as it was typed. */
  readonly document: Plain;
}

const CONSTANTS = ["speedConstant", "resistance", "noLoadCurrent", "noLoadCurrentSlope"] as const;

/** The question about a motor; null where nothing looks wrong or its constants were stored so before. */
export function motorQuestion(
  document: Plain,
  before: Plain | null,
  voltage: number | undefined,
): MotorQuestionModel | null {
  const known = before !== null && CONSTANTS.every((name) => (before[name] ?? 0) === (document[name] ?? 0));
  if (known) return null;
  const motor = { noLoadCurrentSlope: 0, ...document } as unknown as MotorConstants;
  const doubts = motorProblems(motor, voltage);
  if (doubts.length === 0) return null;
  const readings = speedConstantReadings(motor).map(({ speedConstant, says }) => {
    const [value = "", why = ""] = says.split(": ");
    return { label: capitalised(value), says: why, document: { ...document, speedConstant } };
  });
  return { doubts, readings, document };
}

import { useEffect, useRef } from "preact/hooks";
import { Warnings } from "../../app/Warnings.tsx";
import type { MotorQuestionModel } from "./motorQuestion.ts";

interface MotorQuestionProps {
  readonly question: MotorQuestionModel;
  readonly onAnswer: (document: Readonly<Record<string, unknown>>) => void;
  readonly onBack: () => void;
}

/** Asked before a motor whose constants look wrong is stored: the other readings, as typed, or back to the form. */
export function MotorQuestion({ question: { doubts, readings, document }, onAnswer, onBack }: MotorQuestionProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <div class="part-question">
      <h3 ref={heading} tabIndex={-1}>
        Are these constants right?
      </h3>
      <Warnings items={doubts} />
      {readings.map(({ label, says, document: meant }) => (
        <div key={label} class="row">
          <button type="button" onClick={() => onAnswer(meant)}>
            {label}
          </button>
          <span class="muted">{says}</span>
        </div>
      ))}
      <div class="row">
        <button type="button" onClick={() => onAnswer(document)}>
          Keep as typed
        </button>
        <button type="button" class="quiet" onClick={onBack}>
          Back to the form
        </button>
      </div>
    </div>
  );
}

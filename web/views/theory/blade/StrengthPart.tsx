import { type WarningItem, Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { Findings } from "../Findings.tsx";
import { strengthRows, stressPicture } from "./bladeModel.ts";
import { strength, told } from "./bladeState.ts";
import { MaterialFields } from "./MaterialFields.tsx";

/** Whether the printed blade bears its load, with the cautions that belong to it. */
export function StrengthPart() {
  const now = strength.value;
  if (now === null) return null;
  return (
    <section aria-labelledby="theory-strength">
      <h3 id="theory-strength">Does the print bear it?</h3>
      <MaterialFields />
      {"problem" in now && <p class="warning">{now.problem}</p>}
      {"answer" in now && now.answer.state === "failed" && <p class="warning">{now.answer.reason}</p>}
      {"answer" in now && now.answer.state === "solved" && (
        <>
          <p role="status">{now.answer.sentence}</p>
          <Chart spec={stressPicture(now.answer)} height={280} />
          <Findings caption="Strength of the blade" rows={strengthRows(now.answer)} />
          <Warnings items={untold(now.answer.warnings)} />
          <div class="caution">
            <ul>
              {now.answer.cautions.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </div>
        </>
      )}
    </section>
  );
}

/** What the card says of the blade elements above is not said again. */
function untold(warnings: readonly WarningItem[]): readonly WarningItem[] {
  const above = told.value !== null && "solved" in told.value ? told.value.solved.warnings : [];
  return warnings.filter(({ message }) => !above.some((one) => one.message === message));
}

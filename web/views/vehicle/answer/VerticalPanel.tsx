import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { Findings } from "../../theory/Findings.tsx";
import { lossesNote, verticalRows } from "./answerText.ts";

/** Trim, lift, climb and descent, power to hold the depth, and what a dead thruster leaves. */
export function VerticalPanel({ answer: { vertical, motions } }: { readonly answer: VehicleAnswer }) {
  return (
    <>
      <p>{vertical.sentence}</p>
      <Findings caption="Up and down" rows={verticalRows(vertical, motions).map((row) => ({ ...row, how: "" }))} />
      <p>{vertical.withoutPower.text}</p>
      {vertical.losses.length > 0 && (
        <>
          <h3>With one thruster lost</h3>
          <p class="hint">{lossesNote(motions)}</p>
          <ul>
            {vertical.losses.map(({ thruster, sentence: told, holdsDepth }) => (
              <li key={thruster} class={holdsDepth ? "" : "vehicle-missed"}>
                {told}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

import type { ResolvedDrag } from "../../../../shared/model/vehicle/drag.ts";
import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { formatUncertain } from "../../../../shared/quantity/format.ts";

/** Drag and where it is from, what limits rest on, and what is taken for granted. */
export function RestsOnPanel({ answer }: { readonly answer: VehicleAnswer }) {
  const { surge, sway, heave, warnings: _told } = answer.drag;
  const drags: readonly (readonly [string, ResolvedDrag | null])[] = [
    ["Ahead", surge?.forward ?? null],
    ["Astern", surge?.astern ?? null],
    ["Sideways", sway],
    ["Down", heave?.down ?? null],
    ["Up", heave?.up ?? null],
  ];
  return (
    <>
      <h3>Drag</h3>
      <ul>
        {drags.flatMap(([way, drag]) =>
          drag === null
            ? []
            : [
                <li key={way}>
                  {way}: C<sub>D</sub>A {formatUncertain(drag.dragArea, { symbol: "m²", factor: 1 })}, {drag.from}.
                </li>,
              ],
        )}
      </ul>
      <h3>Drives and supply</h3>
      <ul>
        {/* What holds ahead and astern alike is said once. */}
        {[...new Set(answer.grounds.map(({ drive, text }) => `${drive}: ${text}`))].map((ground) => (
          <li key={ground}>{ground}</li>
        ))}
      </ul>
      <h3>What it takes for granted</h3>
      <ul>
        {answer.assumptions.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      {!answer.converged && <p class="warning">A search did not come to its end; treat the last digits with care.</p>}
    </>
  );
}

import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { formatTold, type Told } from "../../../../shared/quantity/told.ts";
import { METRE_PER_SECOND, shown } from "./units.ts";

/** A millimetre a second is nothing that a builder could tell. */
const SLIGHT = 1e-3;

const changeText = (change: Told): string =>
  Math.abs(change.value) < SLIGHT
    ? `Next to nothing, less than ${shown(SLIGHT, METRE_PER_SECOND, 1)},`
    : `${change.value > 0 ? "+" : ""}${formatTold(change, METRE_PER_SECOND)}`;

/** What a change of the design does to the speed ahead, the greatest gain first. */
export function ChangesPanel({ answer: { changes } }: { readonly answer: VehicleAnswer }) {
  if (changes.length === 0) return <p class="hint">The vehicle does not go ahead, so nothing can be compared.</p>;
  const most = Math.max(...changes.map(({ change }) => Math.abs(change.value)), Number.MIN_VALUE);
  return (
    <ol class="vehicle-changes">
      {changes.map(({ key, name, speed, change, text }) => (
        <li key={key}>
          <b>{name}</b>
          <span class="vehicle-bar" aria-hidden="true">
            <span
              class={change.value < 0 ? "vehicle-bar-less" : ""}
              style={{ width: `${(100 * Math.abs(change.value)) / most}%` }}
            />
          </span>
          <span>
            {changeText(change)} to {shown(speed, METRE_PER_SECOND)}. {text}
          </span>
        </li>
      ))}
    </ol>
  );
}

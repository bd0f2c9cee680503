import { signal } from "@preact/signals";
import type { DoubtShare, MotionWay, SteadyMotion } from "../../../../shared/model/vehicle/motionAnswer.ts";
import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { formatQuantity, type ShownUnit } from "../../../../shared/quantity/format.ts";
import { NORMAL_975 } from "../../../../shared/quantity/uncertain.ts";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { AMPERE, METRE, NEWTON, PERCENT, SECOND, WATT } from "../../bench/shownUnits.ts";
import { forcePicture, WAY_WORDS } from "./speedModel.ts";
import { METRE_PER_SECOND, shown, shownUncertain } from "./units.ts";

const chosenWay = signal<MotionWay>("ahead");

/** How fast it goes each way, why not faster, and what would make it faster. */
export function SpeedPanel({ answer }: { readonly answer: VehicleAnswer }) {
  const motion = answer.motions.find(({ way }) => way === chosenWay.value) ?? answer.motions[0]!;
  return (
    <>
      <WaysTable motions={answer.motions} />
      <p class="hint">
        Force at rest is what is left on the hull: less than the thrusters make by themselves, as the hull takes back a
        share (thrust deduction) and holding the depth comes first. Current and power are those at the steady speed, or
        at rest where there is none. Useful share: of the power of the thrusters, what moves the vehicle.
      </p>
      <div class="form-grid">
        <SelectField
          label="Look closer at"
          value={motion.way}
          options={answer.motions.map(({ way }) => ({ value: way, label: WAY_WORDS[way] }))}
          onChange={(way) => {
            chosenWay.value = way;
          }}
        />
      </div>
      <p>{motion.sentence}</p>
      <Warnings items={motion.warnings} />
      {motion.curve.length > 0 && <Chart spec={forcePicture(motion)} height={320} />}
      <Interaction motion={motion} />
      <GettingThere motion={motion} />
      <Shares shares={motion.shares} of="speed" unit={METRE_PER_SECOND} />
    </>
  );
}

function WaysTable({ motions }: { readonly motions: readonly SteadyMotion[] }) {
  return (
    <TableBox label="Speed each way" class="vehicle-wordy vehicle-stacked">
      <table>
        <thead>
          <tr>
            <th scope="col">Way</th>
            <th scope="col" class="number">
              Force at rest, on the hull
            </th>
            <th scope="col" class="number">
              Steady speed
            </th>
            <th scope="col" class="number">
              Current
            </th>
            <th scope="col" class="number">
              Power from the bus
            </th>
            <th scope="col" class="number">
              Useful share
            </th>
            <th scope="col">Bounded by</th>
          </tr>
        </thead>
        <tbody>
          {motions.map(({ way, state, force, speed, atSpeed, atRest, propulsiveEfficiency }) => (
            <tr key={way}>
              <th scope="row">{WAY_WORDS[way]}</th>
              <td class="number" data-label="Force at rest, on the hull">
                {shownUncertain(force, NEWTON)}
              </td>
              <td class="number" data-label="Steady speed">
                {state === "notCommanded" ? "not commanded" : shownUncertain(speed, METRE_PER_SECOND)}
              </td>
              <td class="number" data-label="Current">
                {shownUncertain((atSpeed ?? atRest)?.current ?? null, AMPERE)}
              </td>
              <td class="number" data-label="Power from the bus">
                {shownUncertain((atSpeed ?? atRest)?.power ?? null, WATT)}
              </td>
              <td class="number" data-label="Useful share">
                {shown(propulsiveEfficiency, PERCENT, 2)}
              </td>
              <td data-label="Bounded by">{(atSpeed ?? atRest)?.limitedBy.text ?? "–"}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function Interaction({ motion: { interaction } }: { readonly motion: SteadyMotion }) {
  if (interaction === null) return null;
  const { speedWithout, byWake, byDeduction } = interaction;
  const change = (by: number) => `${by >= 0 ? "+" : "−"}${formatQuantity(Math.abs(by), METRE_PER_SECOND, 2)}`;
  return (
    <p class="hint">
      Clear of the hull it would go {formatQuantity(speedWithout, METRE_PER_SECOND)}; the wake makes {change(byWake)} of
      it, the thrust deduction {change(byDeduction)}.
    </p>
  );
}

/** Time to speed, and stopping. */
function GettingThere({ motion: { upToSpeed, stopping } }: { readonly motion: SteadyMotion }) {
  if (upToSpeed.length === 0 && stopping === null) return null;
  return (
    <>
      {upToSpeed.length > 0 && (
        <p>
          From rest at full thrust:{" "}
          {upToSpeed
            .map(
              ({ share, time, distance }) =>
                `${Math.round(100 * share)}\u202f% of it in ${formatQuantity(time, SECOND, 2)} and ${formatQuantity(distance, METRE, 2)}`,
            )
            .join("; ")}
          . The thrusters are taken to be at full thrust at once: the time that they need to spin up comes on top.
        </p>
      )}
      {stopping !== null && (
        <p>
          Stopping: {shownUncertain(stopping.coastDistance, METRE)} with the thrusters off until a tenth of the speed is
          left
          {stopping.brakedDistance &&
            `, ${shownUncertain(stopping.brakedDistance, METRE)} with full thrust the other way`}
          . {stopping.text}
        </p>
      )}
    </>
  );
}

/** What makes a result doubtful, and so what to measure next. */
export function Shares({
  shares,
  of,
  unit,
}: {
  readonly shares: readonly DoubtShare[];
  readonly of: string;
  readonly unit: ShownUnit;
}) {
  const told = shares.filter(({ share }) => share >= 0.005).slice(0, 8);
  if (told.length === 0) return null;
  return (
    <details>
      <summary>{`What makes the ${of} doubtful: ${told[0]!.name}, ${Math.round(100 * told[0]!.share)}\u202f%`}</summary>
      <TableBox label={`What makes the ${of} doubtful`} class="vehicle-wordy">
        <table>
          <thead>
            <tr>
              <th scope="col">Input</th>
              <th scope="col" class="number">
                Does
              </th>
              <th scope="col" class="number">
                Share
              </th>
              <th scope="col">To know it better</th>
            </tr>
          </thead>
          <tbody>
            {told.map(({ input, name, contribution, share, mend }) => (
              <tr key={input}>
                <th scope="row">{name}</th>
                <td class="number">{`± ${formatQuantity(Math.abs(NORMAL_975 * contribution), unit, 2)}`}</td>
                <td class="number">{`${Math.round(100 * share)}\u202f%`}</td>
                <td>{mend}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </details>
  );
}

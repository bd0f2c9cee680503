import { signal } from "@preact/signals";
import type { DoubtShare, MotionWay, SteadyMotion } from "../../../../shared/model/vehicle/motionAnswer.ts";
import type { VehicleAnswer } from "../../../../shared/model/vehicle/vehicleAnswer.ts";
import { formatQuantity, type ShownUnit } from "../../../../shared/quantity/format.ts";
import { formatBare, type Told } from "../../../../shared/quantity/told.ts";
import { NORMAL_975 } from "../../../../shared/quantity/uncertain.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { Chart } from "../../../charts/Chart.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { AMPERE, METRE, NEWTON, PERCENT, SECOND, WATT } from "../../bench/shownUnits.ts";
import { forcePicture, speedText, WAY_WORDS } from "./speedModel.ts";
import { METRE_PER_SECOND, numberClass, shownUncertain } from "./units.ts";

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

const WAY_NUMBERS = ["Force at rest, on the hull", "Steady speed", "Current", "Power from the bus", "Useful share"];
const WAY_HEADS = ["Way", ...WAY_NUMBERS.map((numbers) => ({ numbers })), "Bounded by"];

function WaysTable({ motions }: { readonly motions: readonly SteadyMotion[] }) {
  return (
    <TableBox label="Speed each way" class="vehicle-wordy vehicle-stacked">
      <table>
        <Heads columns={WAY_HEADS} />
        <tbody>
          {motions.map((motion) => (
            <WayRow key={motion.way} motion={motion} />
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function WayRow({ motion }: { readonly motion: SteadyMotion }) {
  const { way, force, speed, propulsiveEfficiency } = motion;
  const bus = motion.atSpeed ?? motion.atRest;
  const [current, power] = [bus?.current ?? null, bus?.power ?? null];
  return (
    <tr>
      <th scope="row">{WAY_WORDS[way]}</th>
      <td class={numberClass(force)} data-label="Force at rest, on the hull">
        {shownUncertain(force, NEWTON)}
      </td>
      <td class={numberClass(speed)} data-label="Steady speed">
        {speedText(motion)}
      </td>
      <td class={numberClass(current)} data-label="Current">
        {shownUncertain(current, AMPERE)}
      </td>
      <td class={numberClass(power)} data-label="Power from the bus">
        {shownUncertain(power, WATT)}
      </td>
      <td class={numberClass(propulsiveEfficiency)} data-label="Useful share">
        {shownUncertain(propulsiveEfficiency, PERCENT)}
      </td>
      <td data-label="Bounded by">{bus?.limitedBy.text ?? "–"}</td>
    </tr>
  );
}

function Interaction({ motion: { interaction } }: { readonly motion: SteadyMotion }) {
  if (interaction === null) return null;
  const { speedWithout, byWake, byDeduction } = interaction;
  const change = (by: Told) =>
    `${by.value > 0 ? "+" : ""}${by.value === 0 ? "nothing" : formatBare(by, METRE_PER_SECOND)}`;
  return (
    <p class="hint">
      Clear of the hull it would go {shownUncertain(speedWithout, METRE_PER_SECOND)}; the wake makes {change(byWake)} of
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
                `${Math.round(100 * share)}\u202f% of it in ${formatBare(time, SECOND)} and ${formatBare(distance, METRE)}`,
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
      <TableBox label={`What makes the ${of} doubtful`} class="vehicle-wordy vehicle-stacked">
        <table>
          <Heads columns={["Input", { numbers: "Does" }, { numbers: "Share" }, "To know it better"]} />
          <tbody>
            {told.map(({ input, name, contribution, share, mend }) => (
              <tr key={input}>
                <th scope="row">{name}</th>
                <td
                  class="number"
                  data-label="Does"
                >{`± ${formatQuantity(Math.abs(NORMAL_975 * contribution), unit, 2)}`}</td>
                <td class="number" data-label="Share">{`${Math.round(100 * share)}\u202f%`}</td>
                <td data-label="To know it better">{mend}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableBox>
    </details>
  );
}

import { useEffect } from "preact/hooks";
import type { IdentifiedConstants, MotorIdentification } from "../../../shared/model/motorIdentification.ts";
import type { Motor } from "../../../shared/model/parts/motor.ts";
import { Caution } from "../../app/Caution.tsx";
import { Dialog } from "../../app/Dialog.tsx";
import { addPart, editPart } from "../../app/edits.ts";
import { Heads } from "../../app/Heads.tsx";
import { addressOf } from "../../app/route.ts";
import { partOf } from "../../app/session.ts";
import { TableBox } from "../../app/TableBox.tsx";
import { Warnings } from "../../app/Warnings.tsx";
import { Chart } from "../../charts/Chart.tsx";
import { bound } from "../../forms/bound.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import {
  constantRows,
  identifyChart,
  refusalOf,
  runChoices,
  throttleSentence,
  withConstants,
} from "./identifyModel.ts";
import {
  candidates,
  chosen,
  commandUnit,
  electricalOf,
  followCandidates,
  fullCommand,
  hasUncommanded,
  identified,
  identifiedMotorId,
  statedResistance,
  statedResistanceDoubt,
  toggleRun,
  typedFullCommand,
  uncommandedIsFull,
} from "./identifyState.ts";
import { PolePairCount } from "./PolePairCount.tsx";
import { RotorEstimate } from "./RotorEstimate.tsx";

/** Constants of a motor from its runs, beside what is entered. */
export function IdentifyDialog({ motorId }: { readonly motorId: string }) {
  useEffect(followCandidates, []);
  const motor = partOf("motors", motorId)?.document;
  const close = () => {
    identifiedMotorId.value = null;
  };
  if (!motor) return null;
  const { result, problem } = identified.value;
  return (
    <Dialog title={`What are the constants of ${motor.name}?`} onClose={close}>
      <div class="identify">
        <p class={`answer answer-${result ? "known" : "open"}`} role="status">
          {result ? result.sentence : candidates.value.length === 0 ? NO_RUNS : problem}
        </p>
        <p class="hint">± is the half-width of the 95 % interval, calibration of the meters included.</p>
        {result?.constants && (
          <Found result={result} constants={result.constants} motorId={motorId} motor={motor} onUsed={close} />
        )}
        <ChosenRuns />
        <StatedFacts />
        {result && <Warnings items={result.warnings} />}
        {result && <p>{throttleSentence(result, commandUnit.value)}</p>}
        {result && result.residuals.length > 0 && <Chart spec={identifyChart(result)} height={260} />}
        <PolePairCount motorId={motorId} motor={motor} />
        {!result?.wetLoss && <RotorEstimate />}
        <HowTo />
      </div>
    </Dialog>
  );
}

const NO_RUNS =
  "No run says that this motor was on the stand and logs voltage, current and rotation rate. Choose the motor at its runs on the bench.";

interface FoundProps {
  readonly result: MotorIdentification;
  readonly constants: IdentifiedConstants;
  readonly motorId: string;
  readonly motor: Motor;
  readonly onUsed: () => void;
}

function Found({ result, constants, motorId, motor, onUsed }: FoundProps) {
  const refusal = refusalOf(constants);
  const { flooded } = result;
  const done = (stored: boolean) => stored && onUsed();
  return (
    <>
      <FoundTable constants={constants} motor={motor} />
      {refusal !== "" && <p class="hint">{refusal}</p>}
      <div class="row">
        <button
          type="button"
          class="primary"
          disabled={refusal !== ""}
          onClick={() => void editPart("motors", motorId, withConstants(motor, constants)).then(done)}
        >
          Use these constants
        </button>
        {flooded && refusalOf(flooded) === "" && (
          <button
            type="button"
            onClick={() =>
              void addPart("motors", {
                ...withConstants(motor, flooded),
                name: `${motor.name}, flooded`.slice(0, 120),
              }).then(done)
            }
          >
            Add it as a flooded motor
          </button>
        )}
      </div>
      {flooded && (
        <p class="hint">
          A flooded motor has its no-load loss from the wet run: use it on the Drive screen where the motor runs under
          water, and the dry one for runs on a dry stand.
        </p>
      )}
    </>
  );
}

function FoundTable({ constants, motor }: Pick<FoundProps, "constants" | "motor">) {
  return (
    <TableBox label="Constants found and entered">
      <table>
        <Heads columns={["Constant", "Found", "Entered now", "Found against entered"]} />
        <tbody>
          {constantRows(constants, motor).map((row) => (
            <tr key={row.name}>
              <th scope="row">{row.name}</th>
              <td>{row.found}</td>
              <td>{row.entered}</td>
              <td>{row.verdict}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

function ChosenRuns() {
  const choices = runChoices(candidates.value, chosen.value, electricalOf);
  return (
    <>
      <fieldset class="identify-runs">
        <legend>Runs with this motor</legend>
        {choices.map(({ id, name, facts, chosen: on }) => (
          <div key={id} class="identify-run">
            <label>
              <input type="checkbox" checked={on} onChange={() => toggleRun(id)} /> {name}
            </label>{" "}
            <span class="muted">
              {facts} <a href={addressOf("bench", { run: id })}>See it</a>
            </span>
          </div>
        ))}
      </fieldset>
      {hasUncommanded.value && (
        <label>
          <input
            type="checkbox"
            checked={uncommandedIsFull.value}
            onChange={(event) => {
              uncommandedIsFull.value = event.currentTarget.checked;
            }}
          />{" "}
          All readings of the runs without a command column were at full throttle
        </label>
      )}
    </>
  );
}

/** What the runs do not hold. */
function StatedFacts() {
  return (
    <div class="form-grid">
      <QuantityField
        label={`Command of full throttle${commandUnit.value && `, ${commandUnit.value}`}`}
        dimension="number"
        value={fullCommand.value}
        optional
        help="The duty is only known where it is full. Taken from the highest command in these runs: say otherwise if that was not full throttle."
        onChange={() => undefined}
        onCommit={(command) => {
          typedFullCommand.value = command;
        }}
      />
      <QuantityField
        label="Winding resistance, measured by other means"
        dimension="resistance"
        unit="mΩ"
        {...bound(statedResistance)}
        min={0}
        optional
        help="Between two terminals, four wires. Needed where no loaded run at full throttle shows it."
      />
      <QuantityField
        label="Standard uncertainty of that resistance"
        dimension="resistance"
        unit="mΩ"
        {...bound(statedResistanceDoubt)}
        min={0}
        optional
      />
    </div>
  );
}

function HowTo() {
  return (
    <>
      <details>
        <summary>Which runs to make</summary>
        <ul>
          <li>
            Without propeller, in air: rest, then five or six throttles up to full, each held for five seconds, and
            rest. It gives the no-load loss and, with the resistance, the speed constant.
          </li>
          <li>With a propeller, some seconds at full throttle: the drop in speed gives the resistance.</li>
          <li>Without propeller, flooded, at the same throttles: what water in the gaps costs.</li>
        </ul>
        <p>On the bench, say at each run what was on its shaft.</p>
      </details>
      <Caution about="motor" />
    </>
  );
}

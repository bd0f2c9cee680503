import { signal } from "@preact/signals";
import { type WireAndFuse, WireAndFuseRequest, type WireChoice } from "../../../../shared/model/wireAndFuse.ts";
import { formatQuantity } from "../../../../shared/quantity/format.ts";
import { wireAndFuse } from "../../../../shared/supply/wireAndFuse.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { Heads } from "../../../app/Heads.tsx";
import { TableBox } from "../../../app/TableBox.tsx";
import { Warnings } from "../../../app/Warnings.tsx";
import { boundNumber } from "../../../forms/bound.ts";
import { QuantityField } from "../../../forms/QuantityField.tsx";
import { PERCENT, VOLT, WATT } from "../../bench/shownUnits.ts";
import { pack } from "../driveChoices.ts";
import { driven } from "../driveState.ts";

/** Length of the wires one way, m. */
const length = signal(1);
const allowedDrop = signal(0.03);

/** A wire and a fuse for the current at this throttle, as a suggestion to check. */
export function WirePanel() {
  const points = driven.value.flatMap(({ point }) => point ?? []);
  if (points.length === 0) return <p class="hint">Nothing runs yet.</p>;
  const hardest = points.reduce((most, point) => (point.supplyCurrent > most.supplyCurrent ? point : most));
  const told = suggested(hardest.supplyCurrent, hardest.supplyVoltage);
  return (
    <>
      <p>
        For the greatest current from the supply at this throttle among the propellers on show. Set the throttle to the
        hardest that is held for long.
      </p>
      <div class="form-grid">
        <QuantityField
          label="Length of the wires, one way"
          symbol="l"
          dimension="length"
          unit="m"
          {...boundNumber(length)}
          positive
          max={5000}
        />
        <QuantityField
          label="Voltage that may be lost"
          dimension="fraction"
          unit="%"
          {...boundNumber(allowedDrop)}
          positive
          max={0.5}
        />
      </div>
      {"problem" in told ? <p class="warning">{told.problem}</p> : <Suggestion found={told} />}
    </>
  );
}

function suggested(continuousCurrent: number, voltage: number): WireAndFuse | { readonly problem: string } {
  const packCurrent = pack.value?.document.currentLimit;
  try {
    return wireAndFuse({
      ...{ continuousCurrent, voltage, length: length.value, allowedDrop: allowedDrop.value },
      ...{ currentDensity: USUAL.currentDensity.parse(undefined), temperature: USUAL.temperature.parse(undefined) },
      ...(packCurrent !== undefined && { packCurrent }),
    });
  } catch (thrown) {
    return { problem: sentenceOf(thrown) };
  }
}

/** Fields whose defaults are taken as they stand in the document. */
const USUAL = WireAndFuseRequest.shape;

function Suggestion({ found }: { readonly found: WireAndFuse }) {
  const chosen = found.wires.flatMap(({ list, chosen: wire }) => (wire === null ? [] : [{ list, wire }]));
  return (
    <>
      {found.sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Warnings items={found.warnings} />
      {chosen.length > 0 && <Wires wires={chosen.map(({ wire }) => wire)} />}
    </>
  );
}

function Wires({ wires }: { readonly wires: readonly WireChoice[] }) {
  return (
    <TableBox label="Wires suggested">
      <table>
        <Heads columns={["Wire", { numbers: "Voltage lost" }, { numbers: "Of the bus" }, { numbers: "Heat in it" }]} />
        <tbody>
          {wires.map(({ name, drop, dropShare, loss }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td class="number">{formatQuantity(drop, VOLT, 2)}</td>
              <td class="number">{formatQuantity(dropShare, PERCENT, 2)}</td>
              <td class="number">{formatQuantity(loss, WATT, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableBox>
  );
}

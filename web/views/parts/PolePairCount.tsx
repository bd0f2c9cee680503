import { useState } from "preact/hooks";
import type { Motor } from "../../../shared/model/parts/motor.ts";
import { polePairsFrom } from "../../../shared/motor/identifyPolePairs.ts";
import { sentenceOf } from "../../api/apiProblem.ts";
import { editPart } from "../../app/edits.ts";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { polePairText } from "./identifyModel.ts";

/** Pole pairs from one steady speed counted both ways. */
export function PolePairCount({ motorId, motor }: { readonly motorId: string; readonly motor: Motor }) {
  const [electrical, setElectrical] = useState<number | null>(null);
  const [shaft, setShaft] = useState<number | null>(null);
  const found = electrical && shaft ? countOf(electrical, shaft) : null;
  return (
    <details>
      <summary>Count the pole pairs</summary>
      <div class="form-grid">
        <QuantityField
          label="Electrical turns, from the controller"
          dimension="rotationRate"
          unit="rpm"
          value={electrical}
          positive
          optional
          help="Its electrical speed as it stands, for example 31400 rpm."
          onChange={setElectrical}
        />
        <QuantityField
          label="Shaft, by a tachometer"
          dimension="rotationRate"
          unit="rpm"
          value={shaft}
          positive
          optional
          help="At the same steady throttle."
          onChange={setShaft}
        />
      </div>
      {found && <p role="status">{found.text}</p>}
      {found?.polePairs !== undefined && found.polePairs !== motor.polePairs && (
        <button
          type="button"
          onClick={() => void editPart("motors", motorId, { ...motor, polePairs: found.polePairs! })}
        >
          Use {found.polePairs} pole pairs
        </button>
      )}
    </details>
  );
}

function countOf(electrical: number, shaft: number): { readonly text: string; readonly polePairs?: number } {
  try {
    const found = polePairsFrom([{ electrical, shaft }]);
    return { text: polePairText(found), polePairs: found.polePairs };
  } catch (thrown) {
    return { text: sentenceOf(thrown) };
  }
}

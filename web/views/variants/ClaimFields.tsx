import { useEffect } from "preact/hooks";
import { QuantityField } from "../../forms/QuantityField.tsx";
import { NoteField } from "../bench/NoteField.tsx";
import { changeClaim, claim, claimIsReadable } from "./variantsState.ts";

/** A gain that somebody claims, as the project states it; nothing is judged until there is one. */
export function ClaimFields() {
  const stated = claim.value;
  // What could not be read is gone with the field.
  useEffect(
    () => () => {
      claimIsReadable.value = true;
    },
    [],
  );
  return (
    <>
      <QuantityField
        label="Claimed: more than … times the thrust"
        dimension="number"
        value={stated?.factor ?? null}
        min={0.1}
        max={100}
        example="2"
        optional
        help={
          stated === null
            ? "Does somebody claim a gain? State it to have it judged: “more than doubles” is 2."
            : "At equal rotation rate. “More than doubles” is 2; empty: nobody claims anything."
        }
        onChange={() => undefined}
        onProblem={(message) => {
          claimIsReadable.value = message === null;
        }}
        onCommit={(factor) => void changeClaim({ factor })}
      />
      {stated !== null && (
        <NoteField
          label="Claimed by"
          value={stated.source}
          longest={200}
          help="Who says so, and where."
          onCommit={(source) => void changeClaim({ source })}
        />
      )}
    </>
  );
}

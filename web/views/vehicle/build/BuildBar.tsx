import { useState } from "preact/hooks";
import { Dialog } from "../../../app/Dialog.tsx";
import { SelectField } from "../../../forms/SelectField.tsx";
import { AddBuildForm } from "./AddBuildForm.tsx";
import { MOST_BUILDS, nameGap } from "./buildModel.ts";
import "./build.css";
import { builds, chooseBuild, chosenBuild, chosenPlace, copyBuild, editBuild, removeBuild } from "./buildState.ts";
import { KeptText } from "./KeptText.tsx";

/** Which vehicle is on show; more of them are added, copied, renamed and deleted here. */
export function BuildBar() {
  const [adding, setAdding] = useState(false);
  const build = chosenBuild.value;
  const isFull = builds.value.length >= MOST_BUILDS;
  const others = builds.value.filter((one) => one !== build).map(({ name }) => name);
  return (
    <div class="build-picker">
      {build && (
        <>
          <SelectField
            label="Vehicle"
            value={String(chosenPlace.value)}
            options={builds.value.map(({ name }, at) => ({ value: String(at), label: name }))}
            onChange={(at) => chooseBuild(Number(at))}
          />
          <KeptText
            label="Its name"
            value={build.name}
            maxLength={120}
            gap={(name) => nameGap(name, others)}
            onKeep={(name) => editBuild((now) => ({ ...now, name }), "name")}
          />
        </>
      )}
      <div class="row">
        <button type="button" class={build ? "" : "primary"} disabled={isFull} onClick={() => setAdding(true)}>
          Add a vehicle
        </button>
        {build && (
          <>
            <button type="button" disabled={isFull} onClick={() => void copyBuild()}>
              Copy it
            </button>
            <button type="button" onClick={() => void removeBuild()}>
              Delete it
            </button>
          </>
        )}
      </div>
      {isFull && <p class="hint">A project keeps {MOST_BUILDS} vehicles. Delete one to add another.</p>}
      {adding && (
        <Dialog title="Add a vehicle" onClose={() => setAdding(false)}>
          <AddBuildForm onDone={() => setAdding(false)} />
        </Dialog>
      )}
    </div>
  );
}

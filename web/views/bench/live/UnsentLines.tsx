import { useState } from "preact/hooks";
import { saveFile } from "../../../charts/saveFile.ts";
import type { LineOwner } from "./keptLines.ts";
import { unlinkPort } from "./portLink.ts";
import { forgetUnsent, unsentLines } from "./sending.ts";

/** Saves what no recording takes; only what was saved can be let go. */
export function UnsentLines({ recording, name }: Pick<LineOwner, "recording" | "name">) {
  const [saved, setSaved] = useState(false);
  const save = async () => {
    const pieces = (await unsentLines(recording)) as Uint8Array<ArrayBuffer>[];
    saveFile(new Blob(pieces, { type: "text/plain" }), `${name}, not sent.csv`);
    setSaved(true);
  };
  const letGo = () => {
    unlinkPort(recording);
    void forgetUnsent(recording);
  };
  return (
    <div class="row">
      <button type="button" onClick={() => void save()}>
        Save the unsent lines
      </button>
      {saved && (
        <button type="button" class="quiet danger" onClick={letGo}>
          Remove them from this browser
        </button>
      )}
    </div>
  );
}

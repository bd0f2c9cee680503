import { useState } from "preact/hooks";
import { Dialog } from "../../app/Dialog.tsx";
import { FileDrop } from "../../forms/FileDrop.tsx";
import { stopUpload, takeFiles, uploading } from "./benchState.ts";
import { LiveStart } from "./live/LiveStart.tsx";
import { TypedTableForm } from "./TypedTableForm.tsx";

/** The two ways in: a file as the logger wrote it, or readings from a notebook or spreadsheet. */
export function Intake() {
  const [typing, setTyping] = useState(false);
  return (
    <div class="bench-intake" id="bench-intake">
      <FileDrop
        label={uploading.value === null ? "Drop thrust stand logs here" : `Reading ${uploading.value} …`}
        help="Any delimited text, many at once. The file is kept as it came."
        accept=".csv,.tsv,.txt,.log,.dat,text/*"
        busy={uploading.value !== null}
        onFiles={(files) => void takeFiles(files)}
      />
      {uploading.value !== null && (
        <div class="row">
          <progress aria-label={`Reading ${uploading.value}`} />
          <button type="button" class="quiet" onClick={stopUpload}>
            Cancel
          </button>
        </div>
      )}
      <button type="button" onClick={() => setTyping(true)}>
        Type or paste a table
      </button>
      <LiveStart />
      {typing && (
        <Dialog title="Type or paste a table" onClose={() => setTyping(false)}>
          <TypedTableForm onKept={() => setTyping(false)} />
        </Dialog>
      )}
    </div>
  );
}

import { useState } from "preact/hooks";
import { FileDrop } from "../../../../forms/FileDrop.tsx";
import { TextField } from "../../../../forms/TextField.tsx";
import type { FitMethod } from "./fitDraft.ts";
import { METHOD_WORDS } from "./fitWords.ts";

interface TableInputProps {
  readonly method: FitMethod;
  readonly hasKept: boolean;
  /** Called with the table as it came, or null for none. */
  readonly onTable: (bytes: Uint8Array | null) => void;
}

/** A log that is dropped, or a table that is pasted or typed. */
export function TableInput({ method, hasKept, onTable }: TableInputProps) {
  const [text, setText] = useState("");
  const [file, setFile] = useState("");
  const type = (next: string) => {
    setText(next);
    setFile("");
    onTable(next.trim() === "" ? null : new TextEncoder().encode(next));
  };
  const drop = async (files: readonly File[]) => {
    const [first] = files;
    if (first === undefined) return;
    setText("");
    setFile(first.name);
    onTable(new Uint8Array(await first.arrayBuffer()));
  };
  const { how, example } = METHOD_WORDS[method];
  return (
    <>
      <p class="hint">{how}</p>
      <FileDrop
        label={file === "" ? "Drop the log here" : `Read: ${file}`}
        help="Any delimited text with a head row. It is not kept whole: the columns that the fit uses are."
        accept=".csv,.txt,.tsv,.log,text/*"
        onFiles={(files) => void drop(files)}
      />
      <TextField
        label={hasKept ? "Or paste or type a new table" : "Or paste or type a table"}
        lines={6}
        optional
        value={text}
        help="Heads with units in the first row, one reading a row, commas, semicolons or tabs between."
        onChange={type}
      />
      {text === "" && file === "" && (
        <div class="row">
          <button type="button" class="quiet" onClick={() => type(example)}>
            Begin with an example, which nobody measured
          </button>
        </div>
      )}
    </>
  );
}

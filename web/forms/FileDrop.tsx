import { useRef, useState } from "preact/hooks";

export interface FileDropProps {
  /** What to drop, e.g. "Drop thrust stand logs here". */
  readonly label: string;
  readonly help?: string;
  /** For the file chooser, e.g. ".csv,.txt,.tsv,text/*". */
  readonly accept?: string;
  readonly busy?: boolean;
  readonly onFiles: (files: readonly File[]) => void;
}

/** A place to drop files, which is also a button that opens the file chooser. */
export function FileDrop({ label, help, accept, busy = false, onFiles }: FileDropProps) {
  const chooser = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const take = (list: FileList | null | undefined) => {
    setOver(false);
    if (list?.length) onFiles([...list]);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the button inside does the same from the keyboard
    <div
      class={over ? "drop drop-over" : "drop"}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        take(event.dataTransfer?.files);
      }}
    >
      <p class="drop-label">{label}</p>
      <button type="button" disabled={busy} onClick={() => chooser.current?.click()}>
        {busy ? "Reading …" : "Choose files"}
      </button>
      {help && <p class="field-help">{help}</p>}
      <input
        ref={chooser}
        class="visually-hidden"
        type="file"
        multiple
        tabIndex={-1}
        aria-label={label}
        accept={accept}
        onChange={(event) => {
          take(event.currentTarget.files);
          event.currentTarget.value = "";
        }}
      />
    </div>
  );
}

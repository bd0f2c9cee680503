import { useState } from "preact/hooks";
import { Caution } from "../../../app/Caution.tsx";
import { Dialog } from "../../../app/Dialog.tsx";
import { openProjectId } from "../../../app/session.ts";
import { TextField } from "../../../forms/TextField.tsx";
import { BaudRateField } from "./BaudRateField.tsx";
import { linkPort, USUAL_BAUD_RATE } from "./portLink.ts";
import { begin } from "./recordingActs.ts";
import { type SerialPort, serialOf } from "./serialPort.ts";

/** The third way in: a stand that writes its lines while it runs. */
export function LiveStart() {
  const [starting, setStarting] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setStarting(true)}>
        Record live
      </button>
      {starting && (
        <Dialog title="Record a run while the stand runs" onClose={() => setStarting(false)}>
          <StartForm onBegun={() => setStarting(false)} />
        </Dialog>
      )}
    </>
  );
}

function StartForm({ onBegun }: { readonly onBegun: () => void }) {
  const serial = serialOf(navigator);
  const [name, setName] = useState(() => `Recorded ${new Date().toLocaleString("en-GB", MOMENT)}`);
  const [head, setHead] = useState("");
  const [baudRate, setBaudRate] = useState<number>(USUAL_BAUD_RATE);
  const start = async (port: SerialPort | null) => {
    const recording = await begin(name.trim(), head);
    if (recording === null) return;
    if (port !== null) void linkPort(openProjectId(), recording, { port, baudRate });
    onBegun();
  };
  // First the port: a browser lets a page ask for one only straight from a press of a button.
  const startWithPort = async () => {
    const port = await serial?.requestPort().catch(() => null);
    if (port) await start(port);
  };
  return (
    <div class="live-start">
      <Caution about="bench" open />
      <TextField label="Name of the run" value={name} maxLength={120} onChange={setName} />
      <TextField
        label="Head of the columns, if the stand writes none"
        value={head}
        optional
        maxLength={4000}
        help="With units, e.g. time (s),thrust (gf),speed (rpm),supply (V),supply (A)"
        onChange={setHead}
      />
      {serial === undefined ? (
        <p class="hint">
          This browser offers no serial ports to pages (Web Serial). Any program can post the lines instead; how is
          shown next.
        </p>
      ) : (
        <BaudRateField value={baudRate} onChange={setBaudRate} />
      )}
      <StartButtons
        hasPorts={serial !== undefined}
        disabled={name.trim() === ""}
        onPort={() => void startWithPort()}
        onProgram={() => void start(null)}
      />
    </div>
  );
}

interface StartButtonsProps {
  /** The browser offers serial ports to pages. */
  readonly hasPorts: boolean;
  readonly disabled: boolean;
  readonly onPort: () => void;
  readonly onProgram: () => void;
}

function StartButtons({ hasPorts, disabled, onPort, onProgram }: StartButtonsProps) {
  return (
    <div class="row">
      {hasPorts && (
        <button type="button" class="primary" disabled={disabled} onClick={onPort}>
          Connect a serial port
        </button>
      )}
      <button type="button" class={hasPorts ? "" : "primary"} disabled={disabled} onClick={onProgram}>
        Wait for lines of a program
      </button>
    </div>
  );
}

const MOMENT = { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit" } as const;

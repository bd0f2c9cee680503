import { useEffect, useState } from "preact/hooks";
import type { LiveResult, StoredRecording } from "../../../../shared/model/recording.ts";
import { linesAddress, recordingFileAddress } from "../../../api/recordings.ts";
import { openProjectId } from "../../../app/session.ts";
import { tell } from "../../../app/toast.ts";
import { BaudRateField } from "./BaudRateField.tsx";
import { portWords, postCommands, silenceWords, wayOfLines } from "./lineWords.ts";
import { answering, finishing, trouble } from "./liveState.ts";
import { linkPort, portLinks, USUAL_BAUD_RATE, unlinkPort } from "./portLink.ts";
import { discard, keepAsRun } from "./recordingActs.ts";
import { sendings } from "./sending.ts";
import { serialOf } from "./serialPort.ts";
import { UnsentLines } from "./UnsentLines.tsx";

interface LiveSourceProps {
  readonly recording: StoredRecording;
  readonly result: LiveResult | null;
}

/** Where the lines come from, how far they have come, and the end of the recording. */
export function LiveSource({ recording, result }: LiveSourceProps) {
  const { id, held } = recording;
  const sending = sendings.value.get(id);
  const way = wayOfLines({ held, result, sending, answers: answering.value });
  const isFinishing = finishing.value === id;
  const isRefused = sending !== undefined && sending.refused !== "";
  return (
    <section class="card live-source" aria-labelledby="live-source-title">
      <h2 id="live-source-title">Lines</h2>
      <p class={way.tone === "problem" ? "live-trouble" : ""}>{way.text}</p>
      <Silence receivedAt={held.receivedAt} />
      {isRefused && <UnsentLines recording={id} name={recording.document.name} />}
      {trouble.value !== "" && <p class="live-trouble">No newer result: {trouble.value}</p>}
      {sending !== undefined && sending.lastLine !== "" && (
        <p class="live-last">
          <span class="muted">Last line</span> <code>{sending.lastLine}</code>
        </p>
      )}
      <PortControls recording={recording} refused={isRefused} />
      <div class="row">
        <button
          type="button"
          class="primary"
          disabled={held.bytes === 0 || isFinishing || !answering.value}
          onClick={() => void keepAsRun(id)}
        >
          {isFinishing ? "Keeping it …" : "End and keep as a run"}
        </button>
        <button type="button" class="quiet danger" disabled={isFinishing} onClick={() => void discard(id)}>
          Discard
        </button>
        {held.bytes > 0 && (
          <a href={recordingFileAddress(openProjectId(), id)} download={recording.document.fileName}>
            The lines as they came
          </a>
        )}
      </div>
      <ProgramHelp id={id} />
    </section>
  );
}

/** A stand that has gone quiet is seen here first. */
function Silence({ receivedAt }: { readonly receivedAt: string | null }) {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const ticking = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(ticking);
  }, []);
  const words = silenceWords(receivedAt, now);
  return words === "" ? null : <p class="hint">{words}</p>;
}

interface PortControlsProps {
  readonly recording: StoredRecording;
  readonly refused: boolean;
}

function PortControls({ recording, refused }: PortControlsProps) {
  const serial = serialOf(navigator);
  const link = portLinks.value.get(recording.id);
  const [baudRate, setBaudRate] = useState<number>(link?.baudRate ?? USUAL_BAUD_RATE);
  if (serial === undefined)
    return (
      <p class="hint">This browser offers no serial ports to pages (Web Serial); a program has to post the lines.</p>
    );
  const connect = async () => {
    const port = await serial.requestPort().catch(() => null);
    if (port) void linkPort(openProjectId(), recording, { port, baudRate });
  };
  const isOn = link !== undefined && link.state !== "lost";
  return (
    <div class="live-port">
      <p class={link?.state === "lost" ? "live-trouble" : ""} role="status">
        {portWords(link)}
      </p>
      {!isOn && <BaudRateField value={baudRate} onChange={setBaudRate} />}
      {isOn ? (
        <button type="button" onClick={() => unlinkPort(recording.id)}>
          Disconnect the port
        </button>
      ) : (
        <button type="button" disabled={refused} onClick={() => void connect()}>
          {link === undefined ? "Connect a serial port" : "Connect again"}
        </button>
      )}
    </div>
  );
}

/** How a program brings its lines here. */
function ProgramHelp({ id }: { readonly id: string }) {
  const projectId = openProjectId();
  const place = { workbench: location.origin, lines: linesAddress(projectId, id), projectId, id };
  const copy = async (command: string) => {
    await navigator.clipboard.writeText(command);
    tell({ tone: "done", text: "Copied the command" });
  };
  return (
    <details class="live-program">
      <summary>Lines from a program</summary>
      <p class="hint">
        Any program on this computer can post lines as plain text; they are kept byte for byte, in the order they come.
        With <code>?offset=</code> and the number of bytes already held, a post that is sent twice is taken once.{" "}
        <a href="/api/docs#recordings">All addresses</a>
      </p>
      {postCommands(place).map(({ what, command }) => (
        <div key={what} class="live-command">
          <p>{what}</p>
          <pre>
            <code>{command}</code>
          </pre>
          <button type="button" class="quiet" onClick={() => void copy(command)}>
            Copy
          </button>
        </div>
      ))}
    </details>
  );
}

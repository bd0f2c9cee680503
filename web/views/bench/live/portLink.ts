import { signal } from "@preact/signals";
import type { StoredRecording } from "../../../../shared/model/recording.ts";
import { sentenceOf } from "../../../api/apiProblem.ts";
import { lineTo } from "./sending.ts";
import { readPort, type SerialPort } from "./serialPort.ts";

/** How a recording hangs on a serial port of this computer. */
export interface PortLink {
  readonly state: "opening" | "reading" | "lost";
  readonly baudRate: number;
  /** Why it was lost. */
  readonly why: string;
}

/** By recording; absent for one that this page reads no port for. */
export const portLinks = signal<ReadonlyMap<string, PortLink>>(new Map());
const stops = new Map<string, AbortController>();

export const BAUD_RATES = [9600, 19_200, 38_400, 57_600, 115_200, 230_400, 460_800, 921_600] as const;
export const USUAL_BAUD_RATE = 115_200;

/** Reads a port into a recording until it is let go or lost. Never throws: what went wrong is in the link. */
export async function linkPort(
  projectId: string,
  recording: StoredRecording,
  { port, baudRate }: { readonly port: SerialPort; readonly baudRate: number },
): Promise<void> {
  const { id } = recording;
  const stop = new AbortController();
  stops.get(id)?.abort();
  stops.set(id, stop);
  note(id, { state: "opening", baudRate, why: "" });
  try {
    const { take } = await lineTo(projectId, recording);
    const onOpen = () => note(id, { state: "reading", baudRate, why: "" });
    await readPort(port, baudRate, take, { onOpen, stop: stop.signal });
  } catch (thrown) {
    // One that was let go, or that another took the place of, says nothing any more.
    if (!stop.signal.aborted) note(id, { state: "lost", baudRate, why: sentenceOf(thrown) });
  }
}

/** Lets the port go; what it sent is kept. */
export function unlinkPort(id: string): void {
  stops.get(id)?.abort();
  stops.delete(id);
  note(id, null);
}

function note(id: string, link: PortLink | null): void {
  const links = new Map(portLinks.peek());
  if (link === null) links.delete(id);
  else links.set(id, link);
  portLinks.value = links;
  // Leaving the page would end the reading: the browser asks first.
  const isReading = [...links.values()].some(({ state }) => state === "reading");
  if (isReading) addEventListener("beforeunload", ask);
  else removeEventListener("beforeunload", ask);
}

function ask(event: BeforeUnloadEvent): void {
  event.preventDefault();
}

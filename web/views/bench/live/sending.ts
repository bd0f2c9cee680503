import { signal } from "@preact/signals";
import type { Stretch } from "../../../../shared/log/lineOutbox.ts";
import { LineSender, type SendingState } from "../../../../shared/log/lineSender.ts";
import { LineTally } from "../../../../shared/log/lineTally.ts";
import type { StoredRecording } from "../../../../shared/model/recording.ts";
import { postLines } from "../../../api/recordings.ts";
import { forgetStretches, keepStretch, keptStretches } from "./keptLines.ts";

/** What this page has received for a recording and how far it has come. */
export interface PageSending extends SendingState {
  /** Whole lines, those that were held before this page began included. */
  readonly lines: number;
  /** The last whole line, as text, to see by that the port is read rightly; empty before the first. */
  readonly lastLine: string;
}

/** By recording; absent for one that this page brings no lines to. */
export const sendings = signal<ReadonlyMap<string, PageSending>>(new Map());

interface Line {
  readonly sender: LineSender;
  readonly take: (bytes: Uint8Array) => void;
}
const lines = new Map<string, Promise<Line>>();

/** The way of this page to a recording; what an earlier page could not bring there is sent first. */
export function lineTo(projectId: string, recording: StoredRecording): Promise<Line> {
  const known = lines.get(recording.id);
  if (known !== undefined) return known;
  const made = openLine(projectId, recording);
  lines.set(recording.id, made);
  return made;
}

/** Brings on what an earlier page of this browser could not. */
export async function sendLeftover(projectId: string, recording: StoredRecording): Promise<void> {
  const kept = await keptStretches(recording.id);
  if (kept.length > 0) await lineTo(projectId, recording);
}

/** Resolves when all that came is held, or can not be; at once for a recording that this page brings nothing to. */
export async function sent(id: string): Promise<void> {
  const line = await lines.get(id);
  await line?.sender.settled();
}

/** Has nothing more to do with a recording that is over. Lines that it never took stay in the browser's database. */
export async function closeLine(id: string): Promise<void> {
  const state = sendings.peek().get(id);
  lines.delete(id);
  const left = new Map(sendings.peek());
  left.delete(id);
  sendings.value = left;
  if (state !== undefined && state.held === state.received) await forgetStretches(id);
}

async function openLine(projectId: string, { id, held }: StoredRecording): Promise<Line> {
  const kept = await keptStretches(id);
  const text = new SeenText();
  let forgotten = held.bytes;
  const note = (state: SendingState) => {
    const { lines: seen, lastLine } = text;
    sendings.value = new Map(sendings.peek()).set(id, { ...state, lines: held.lines + seen, lastLine });
    if (state.held > forgotten) void forgetStretches(id, state.held);
    forgotten = state.held;
  };
  const sender = new LineSender({
    start: held.bytes,
    post: (stretch) => postLines(projectId, id, stretch),
    pause: (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
    onChange: note,
  });
  const send = (bytes: Uint8Array) => {
    text.push(bytes);
    return sender.send(bytes);
  };
  for (const bytes of beyond(held.bytes, kept)) send(bytes);
  note(sender.state);
  return { sender, take: (bytes) => void keepStretch(id, send(bytes)) };
}

/** Longest text of a line that is shown. */
const SHOWN = 200;

/** The lines that came, as far as they are shown. */
class SeenText {
  lastLine = "";
  private readonly tally = new LineTally();
  private readonly decoder = new TextDecoder();
  /** Text of the line that has not ended. */
  private open = "";

  get lines(): number {
    return this.tally.lines;
  }

  push(bytes: Uint8Array): void {
    this.tally.push(bytes);
    const whole = (this.open + this.decoder.decode(bytes, { stream: true })).split(/\r\n|\r|\n/);
    this.open = (whole.pop() ?? "").slice(-SHOWN);
    this.lastLine = whole.findLast((line) => line !== "")?.slice(0, SHOWN) ?? this.lastLine;
  }
}

/** Of stretches in order, what lies beyond `place`; two may cover the same bytes. */
function beyond(place: number, stretches: readonly Stretch[]): Uint8Array[] {
  let reached = place;
  return stretches.flatMap(({ offset, bytes }) => {
    const fresh = bytes.subarray(Math.max(0, reached - offset));
    reached = Math.max(reached, offset + bytes.length);
    return fresh.length > 0 ? [fresh] : [];
  });
}

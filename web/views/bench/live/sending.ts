import { signal } from "@preact/signals";
import { LineSender, type SendingState } from "../../../../shared/log/lineSender.ts";
import { LineTally } from "../../../../shared/log/lineTally.ts";
import type { StoredRecording } from "../../../../shared/model/recording.ts";
import { postLines } from "../../../api/recordings.ts";
import { forgetStretches, keepStretch, keptStretches } from "./keptLines.ts";
import { beyond } from "./stretches.ts";

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

/** What was received for a recording and can not be brought there, as far as this browser has it. */
export async function unsentLines(id: string): Promise<Uint8Array[]> {
  const line = await lines.get(id);
  return line === undefined ? beyond(0, await keptStretches(id)) : [line.sender.unsent];
}

/** Lets go of what could not be sent. What comes from now on starts anew, behind what the recording holds. */
export async function forgetUnsent(id: string): Promise<void> {
  await forgetStretches(id);
  await closeLine(id);
}

async function openLine(projectId: string, { id, held, document }: StoredRecording): Promise<Line> {
  const kept = await keptStretches(id);
  const owner = { project: projectId, recording: id, name: document.name };
  const text = new SeenText();
  // From the first byte that is kept, also where more is held: what is held there is compared with it, never taken for it.
  const start = Math.min(kept[0]?.offset ?? held.bytes, held.bytes);
  let forgotten = start;
  const note = (state: SendingState) => {
    const { lines: seen, lastLine } = text;
    sendings.value = new Map(sendings.peek()).set(id, { ...state, lines: held.lines + seen, lastLine });
    if (state.held > forgotten) void forgetStretches(id, state.held);
    forgotten = state.held;
  };
  const sender = new LineSender({
    start,
    post: (stretch) => postLines(projectId, id, stretch),
    pause: (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
    onChange: note,
  });
  for (const bytes of beyond(held.bytes, kept)) text.push(bytes);
  for (const bytes of beyond(start, kept)) sender.send(bytes);
  note(sender.state);
  const take = (bytes: Uint8Array) => {
    text.push(bytes);
    void keepStretch(owner, sender.send(bytes));
  };
  return { sender, take };
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

import type { Held, LiveResult } from "../../../../shared/model/recording.ts";
import { counted, spaced } from "./countWords.ts";
import { type PortLink, USUAL_BAUD_RATE } from "./portLink.ts";
import type { PageSending } from "./sending.ts";

/** How far the lines have come, and what is the matter where they do not. */
export function wayOfLines({
  held,
  result,
  sending,
  answers,
}: {
  readonly held: Held;
  readonly result: LiveResult | null;
  readonly sending: PageSending | undefined;
  readonly answers: boolean;
}): { readonly text: string; readonly tone: "known" | "problem" } {
  const kept = `${counted(held.lines, "line")} kept by the workbench`;
  const behind = result !== null && result.lines < held.lines ? `, results by the first ${spaced(result.lines)}` : "";
  if (sending?.refused) {
    const left = sending.received - sending.held;
    return {
      text: `${kept}; ${spaced(left)} bytes could not be sent and wait in this browser. ${sending.refused}`,
      tone: "problem",
    };
  }
  const received = sending === undefined ? "" : `${counted(sending.lines, "line")} received, `;
  if (sending?.delayed || !answers) {
    const waiting = sending === undefined ? 0 : sending.received - sending.held;
    const safe = waiting > 0 ? ` ${spaced(waiting)} bytes wait in this browser and are sent when it does.` : "";
    return { text: `${received}${kept}. The workbench does not answer.${safe}`, tone: "problem" };
  }
  return { text: `${received}${kept}${behind}.`, tone: "known" };
}

/** Less than this after the last line nothing is said: a stand may write one every few seconds. s */
const SILENCE = 5;

/** How long no line has come, by the ISO time of the last and the time now in ms; empty while they come. */
export function silenceWords(receivedAt: string | null, now: number): string {
  if (receivedAt === null) return "";
  const seconds = Math.floor((now - Date.parse(receivedAt)) / 1000);
  if (seconds < SILENCE) return "";
  if (seconds < 120) return `The last line came ${seconds}\u202fs ago.`;
  if (seconds < 7200) return `The last line came ${Math.floor(seconds / 60)}\u202fmin ago.`;
  return `The last line came ${Math.floor(seconds / 3600)}\u202fh ago.`;
}

/** What is said of the port. */
export function portWords(link: PortLink | undefined): string {
  if (link === undefined) return "No port is connected. Lines can go on from here, by a port or from a program.";
  const rate = `${spaced(link.baudRate)} baud`;
  if (link.state === "opening") return `Opening the port at ${rate} …`;
  if (link.state === "reading") return `Reading the port at ${rate}.`;
  return `The port was lost. ${link.why} Every line that came before is kept; connecting again goes on with this recording.`;
}

/** Where a recording takes its lines from programs. */
export interface PostPlace {
  /** Address that the page itself came from. */
  readonly workbench: string;
  readonly lines: string;
  readonly projectId: string;
  readonly id: string;
}

/** Commands that bring lines to a recording, each with what it is for. */
export function postCommands({ workbench, lines, projectId, id }: PostPlace) {
  const address = `${workbench}${lines}`;
  return [
    {
      what: "One line, or some; a program in any language can do the same",
      command: `printf '12.30,1620,412.5,2310\\n' | curl --data-binary @- ${address}`,
    },
    {
      what: "A serial port for as long as it sends (the first command sets its rate)",
      command: `stty -F /dev/ttyUSB0 ${USUAL_BAUD_RATE} raw\ncurl -X POST -T - ${address} < /dev/ttyUSB0`,
    },
    {
      what: "The same through a restart of the workbench: lines wait and none comes twice",
      command: `npm run --silent cli -- record --workbench ${workbench} --project ${projectId} --recording ${id} < /dev/ttyUSB0`,
    },
  ] as const;
}

import { appendFile } from "node:fs/promises";
import { resolve } from "node:path";
import { setTimeout } from "node:timers/promises";
import { deliveryOf, LineSender } from "../../shared/log/lineSender.ts";
import type { StoredRecording } from "../../shared/model/recording.ts";
import type { Run } from "../../shared/model/run.ts";
import type { StoredDocument } from "../../shared/model/stored.ts";
import { chosenProject, PROJECT_OPTION, WORKBENCH_OPTION } from "./chosenProject.ts";
import type { Usage, Words } from "./options.ts";
import { ask, call, reasonOf } from "./workbenchCalls.ts";

export const USAGE: Usage = {
  verb: "record",
  arguments: "",
  about:
    "Reads lines from standard input as they come and brings them to a workbench that runs, where they can be watched on the\nBench screen; at the end of the input the recording becomes a run. Lines wait here while the workbench does not answer.\nPropeller, columns and water are stated on the page. Before you switch a stand on: guard the propeller, fuse the pack,\nkeep mains away from the water.",
  options: {
    ...WORKBENCH_OPTION,
    ...PROJECT_OPTION,
    name: { value: "NAME", text: "what to call the run (Recorded if absent)" },
    header: {
      value: "TEXT",
      text: 'head of the columns, where the stand writes none, e.g. "time (s),thrust (gf),speed (rpm)"',
    },
    recording: { value: "ID", text: "go on with a recording that was left open" },
    "leave-open": { text: "do not make it a run at the end of the input" },
    json: { text: "print the run, or the recording that was left open, as JSON" },
  },
  examples: [
    'record --name "Sanded, mounting 4" < /dev/ttyUSB0',
    'record --project Dabchick --header "time (s),thrust (gf),speed (rpm)" < /dev/ttyUSB0',
  ],
};

export async function run(words: Words): Promise<number> {
  const recordings = await recordingsAddress(words);
  const recording = await begun(recordings, words);
  const { name } = recording.document;
  process.stderr.write(`Recording ${name} (${recording.id}). Ctrl+C ends it.\n`);
  const address = `${recordings}/${recording.id}`;
  const notSent = resolve(`recording-${recording.id}-not-sent.csv`);
  const { refused } = await sendInput(address, recording.held.bytes, notSent);
  if (refused !== "") {
    process.stderr.write(`Lines from there on are in ${notSent}\n`);
    return 2;
  }
  if (words.has("leave-open")) {
    const open = await ask<StoredRecording>("GET", address);
    print(words, open, `${name} is open with ${open.held.lines} lines. Go on with --recording ${open.id}\n`);
    return 0;
  }
  const { run } = await ask<{ run: StoredDocument<Run> }>("POST", `${address}/end`);
  const { file } = run.document;
  print(words, run, `${name} is a run now: ${file.size} bytes, SHA-256 ${file.sha256.slice(0, 12)}.\n`);
  return 0;
}

function print(words: Words, document: object, sentence: string): void {
  process.stdout.write(words.has("json") ? `${JSON.stringify(document, null, 2)}\n` : sentence);
}

/**
 * Brings standard input to the recording, and resolves when all of it is held; what comes once the recording takes no
 * more, and what was on its way then, goes to the file `notSent`.
 */
async function sendInput(address: string, start: number, notSent: string) {
  let delayed = "";
  let isRefused = false;
  let isSaved = false;
  const save = async (chunk: Uint8Array) => {
    if (!isSaved) await appendFile(notSent, sender.unsent);
    isSaved = true;
    await appendFile(notSent, chunk);
  };
  const sender = new LineSender({
    start,
    pause: (milliseconds) => setTimeout(milliseconds),
    post: async ({ offset, bytes }) => {
      const { status, body } = await call("POST", `${address}/lines?offset=${offset}`, bytes);
      const isHeld = status === 200;
      return deliveryOf(status, isHeld ? (body as { bytes: number }) : { why: reasonOf(body) });
    },
    onChange: (state) => {
      if (state.delayed !== "" && delayed === "") process.stderr.write(`Lines wait here. ${state.delayed}\n`);
      if (state.delayed === "" && delayed !== "") process.stderr.write("They are on their way again.\n");
      delayed = state.delayed;
      if (state.refused !== "" && !isRefused) process.stderr.write(`No more lines can be sent. ${state.refused}\n`);
      isRefused = state.refused !== "";
    },
  });
  // The first one ends the input and keeps what came; a second ends the program.
  process.once("SIGINT", () => process.stdin.destroy());
  try {
    for await (const chunk of process.stdin) {
      if (isRefused) await save(chunk as Uint8Array);
      else sender.send(chunk as Uint8Array);
    }
  } catch {
    // Destroyed by the signal; what came before it is being sent.
  }
  const settled = await sender.settled();
  if (isRefused) await save(new Uint8Array());
  return settled;
}

/** Where the recordings of the chosen project are. */
async function recordingsAddress(words: Words): Promise<string> {
  return `${(await chosenProject(words)).address}/recordings`;
}

function begun(recordings: string, words: Words): Promise<StoredRecording> {
  const known = words.text("recording");
  if (known !== undefined) return ask("GET", `${recordings}/${encodeURIComponent(known)}`);
  const header = words.text("header");
  return ask("POST", recordings, { name: words.text("name") ?? "Recorded", ...(header !== undefined && { header }) });
}

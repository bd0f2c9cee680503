import { describe, expect, test } from "vitest";
import type { LiveResult, StoredRecording } from "../../shared/model/recording.ts";
import { portWords, postCommands, silenceWords, wayOfLines } from "../../web/views/bench/live/lineWords.ts";
import { asRecordingEdit, asRun, liveAnswer, needsPerson } from "../../web/views/bench/live/liveModel.ts";
import type { PageSending } from "../../web/views/bench/live/sending.ts";
import { withPropeller } from "../../web/views/bench/recipeEdits.ts";
import { reductionOf, runOf } from "./webBenchReduction.fixture.ts";

const { file: _file, ...document } = runOf("one").document;
const PROPELLER = "0b6c2c5e-54a5-4a3a-8a40-0a3f3a0a7b11";

function recordingOf(
  change: Partial<StoredRecording["document"]> = {},
  held = { bytes: 5000, lines: 120 },
): StoredRecording {
  return {
    id: "7f6a0c66-3c8c-4b8e-9b3a-1f2f6f1f0001",
    version: 1,
    updatedAt: "2026-01-01T00:00:00.000Z",
    document: { ...document, propellerId: PROPELLER, fileName: "live.csv", ...change },
    held: { ...held, receivedAt: null },
  };
}

const columns: LiveResult["columns"] = [
  { column: 0, role: "time", unit: "s" },
  { column: 1, role: "thrust", unit: "N" },
  { column: 2, role: "rotationRate", unit: "rpm" },
];

function resultOf(change: Partial<LiveResult> = {}): LiveResult {
  const inspection = { rows: 1200 } as LiveResult["inspection"];
  return {
    lines: 120,
    sha256: "0".repeat(64),
    columns,
    inspection,
    trace: null,
    reduction: null,
    problem: null,
    ...change,
  };
}
const problem = (code: string, message = "Some words.") => ({ code, message, where: "" });

describe("the answer while it is recorded", () => {
  const answer = (recording: StoredRecording, result: LiveResult | null, isReading = false) =>
    liveAnswer({ recording, result, isReading });

  test("before the first line it says what to do, and with a port open what to look at", () => {
    const empty = recordingOf({}, { bytes: 0, lines: 0 });
    expect(answer(empty, null)).toMatch(/^No line has come yet\. Connect/);
    expect(answer(empty, null, true)).toMatch(/baud rate\?$/);
  });

  test.each([
    { code: "log.no-numbers", rows: null, says: "120 lines so far. No row of numbers among them yet." },
    {
      code: "bench.too-few-plateaus",
      rows: 1200,
      says: "1\u202f200 rows so far. A thrust coefficient needs two steps of throttle, each held for some seconds; not there yet.",
    },
    {
      code: "bench.one-speed",
      rows: 1,
      says: "1 row so far. One step so far; the thrust coefficient needs a second one at another rotation rate.",
    },
    { code: "bench.no-pole-pairs", rows: 50, says: "50 rows so far. No thrust coefficient yet. Some words." },
  ])("$code is told in a sentence", ({ code, rows, says }) => {
    const inspection = rows === null ? null : ({ rows } as LiveResult["inspection"]);
    expect(answer(recordingOf(), resultOf({ inspection, problem: problem(code) }))).toBe(says);
  });

  test("too little data is no trouble; what only a person can say is", () => {
    const asks = (code: string) =>
      needsPerson({ recording: recordingOf(), result: resultOf({ problem: problem(code) }) });
    expect(asks("bench.too-few-plateaus")).toBe(false);
    expect(asks("log.empty")).toBe(false);
    expect(asks("bench.no-pole-pairs")).toBe(true);
  });

  test("a column that is not known, and a propeller that is not stated, are asked for", () => {
    const timeOnly = resultOf({ columns: columns.slice(0, 1) });
    expect(answer(recordingOf(), timeOnly)).toContain("which column is thrust and rotation rate.");
    const { propellerId: _none, ...bare } = recordingOf().document;
    expect(answer({ ...recordingOf(), document: bare }, resultOf())).toContain("which propeller is on the stand");
    expect(answer(recordingOf({ purpose: "noLoadDry" }), resultOf({ columns: [columns[0]!, columns[2]!] }))).toContain(
      "without propeller has no thrust coefficient",
    );
  });

  test.each([
    {
      windows: [
        [0, 5],
        [90, 95],
      ],
      says: "the zero is there before and after them.",
    },
    { windows: [[0, 5]], says: "the zero at the end is still missing: let it rest before you stop." },
    { windows: [[90, 95]], says: "the zero before the first of them is missing." },
    { windows: [], says: "no zero of the scale yet: let it rest for some seconds." },
  ])("the coefficient so far says what the zero lacks: tares $windows", ({ windows, says }) => {
    const made = reductionOf();
    const plateaus = made.plateaus.map((one, index) => ({
      ...one,
      span: { start: 10 + 20 * index, end: 20 + 20 * index },
    }));
    const [pattern] = made.tare.windows;
    const tares = windows.map(([start, end]) => ({ ...pattern!, start: start!, end: end! }));
    const reduction = { ...made, plateaus, tare: { ...made.tare, windows: tares } };
    const text = answer(recordingOf(), resultOf({ reduction }));
    expect(text).toMatch(/^The thrust coefficient so far is \S+ ± \S+, from \d plateaus; /);
    expect(text.endsWith(says)).toBe(true);
  });
});

test.each([
  { seconds: 4.9, says: "" },
  { seconds: -2, says: "" },
  { seconds: 12.4, says: "The last line came 12\u202fs ago." },
  { seconds: 119, says: "The last line came 119\u202fs ago." },
  { seconds: 125, says: "The last line came 2\u202fmin ago." },
  { seconds: 3 * 3600 + 59, says: "The last line came 3\u202fh ago." },
])("$seconds s after the last line is said: $says", ({ seconds, says }) => {
  expect(silenceWords("2026-01-01T00:00:00.000Z", Date.UTC(2026, 0, 1) + 1000 * seconds)).toBe(says);
});

test("of a recording without a line nothing is said of the last one", () => {
  expect(silenceWords(null, Date.UTC(2026, 0, 1))).toBe("");
});

describe("how far the lines have come", () => {
  const held = { bytes: 5000, lines: 120, receivedAt: null };
  const sending: PageSending = { received: 5000, held: 5000, delayed: "", refused: "", lines: 120, lastLine: "" };
  const way = (change: Partial<Parameters<typeof wayOfLines>[0]>) =>
    wayOfLines({ held, result: null, sending: undefined, answers: true, ...change });

  test.each([
    { of: {}, tone: "known", says: "120 lines kept by the workbench." },
    { of: { sending }, tone: "known", says: "120 lines received, 120 lines kept by the workbench." },
    {
      of: { result: resultOf({ lines: 100 }) },
      tone: "known",
      says: "120 lines kept by the workbench, results by the first 100.",
    },
    {
      of: { answers: false },
      tone: "problem",
      says: "120 lines kept by the workbench. The workbench does not answer.",
    },
    {
      of: { sending: { ...sending, received: 6200, lines: 150, delayed: "Gone." } },
      tone: "problem",
      says: "150 lines received, 120 lines kept by the workbench. The workbench does not answer. 1\u202f200 bytes wait in this browser and are sent when it does.",
    },
    {
      of: { sending: { ...sending, received: 5010, refused: "It has ended." } },
      tone: "problem",
      says: "120 lines kept by the workbench; 10 bytes could not be sent and wait in this browser. It has ended.",
    },
  ])("$says", ({ of, tone, says }) => {
    expect(way(of)).toEqual({ text: says, tone });
  });

  test("a lost port is told with its reason and with what to do", () => {
    expect(portWords({ state: "lost", baudRate: 115_200, why: "It was unplugged." })).toBe(
      "The port was lost. It was unplugged. Every line that came before is kept; connecting again goes on with this recording.",
    );
    expect(portWords({ state: "reading", baudRate: 9600, why: "" })).toBe("Reading the port at 9\u202f600 baud.");
  });
});

test("a recording is edited as the run it will be, and goes back as a recording with its file name", () => {
  const recording = recordingOf({ variant: "" });
  const run = asRun(recording, resultOf());
  expect(run).toMatchObject({ file: { name: "live.csv", size: 5000 }, recipe: { columns } });
  const sanded = { id: "p", version: 1, updatedAt: "", document: { name: "P", finish: "sanded" } } as never;
  const edited = asRecordingEdit((now) => withPropeller(now, sanded))(recording.document);
  expect(edited).toMatchObject({ propellerId: "p", variant: "sanded", fileName: "live.csv" });
  expect(edited).not.toHaveProperty("file");
  // The columns that were only guessed are not stored by an edit of something else.
  expect(edited.recipe.columns).toEqual(recording.document.recipe.columns);
});

test("every command names the address of this workbench and of this recording", () => {
  const place = {
    workbench: "http://127.0.0.1:8730",
    lines: "/api/projects/p/recordings/r/lines",
    projectId: "p",
    id: "r",
  };
  const [one, port, verb] = postCommands(place).map(({ command }) => command);
  expect(one).toContain("http://127.0.0.1:8730/api/projects/p/recordings/r/lines");
  expect(port).toContain("-T - http://127.0.0.1:8730/api/projects/p/recordings/r/lines");
  expect(verb).toContain("--workbench http://127.0.0.1:8730 --project p --recording r");
});

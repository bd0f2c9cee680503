import { type BrokenLog, HEADER, lines, MOMENTS, utf8, written } from "./inventedRun.ts";

const windows1252 = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

const utf16 = (text: string) => new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"));

const mixedEnds = () => lines.map((line, i) => line + ["\n", "\r\n", "\r"][i % 3]).join("");

/** How the bytes of a file can be: encodings, line ends, what is no log at all. */
export const FILES: readonly BrokenLog[] = [
  { name: "utf-16", what: "UTF-16 as a spreadsheet saves it", bytes: utf16(written({ between: "\t" })), told: [] },
  {
    name: "windows-1252",
    what: "windows-1252 with µ and ° in the header",
    bytes: windows1252(
      written({ header: ["time (s)", "throttle (µs)", ...HEADER.slice(2)] }).replace("(A)", "(A) 18°"),
    ),
    told: [],
  },
  { name: "line ends", what: "three kinds of line end in one file", bytes: utf8(mixedEnds()), told: [] },
  {
    name: "big-endian",
    what: "UTF-16 with the high byte first and no mark",
    bytes: new Uint8Array(Buffer.from(written({ between: "\t" }), "utf16le").swap16()),
    told: [],
  },
  {
    name: "cut off",
    what: "the logger lost power in the middle of a line",
    bytes: utf8(written().slice(0, -17)),
    told: ["log.cut-line"],
  },
  {
    name: "padding",
    what: "zero bytes of memory that was never written at the end",
    bytes: utf8(`${written()}${"\0".repeat(512)}`),
    told: ["log.padding"],
  },
  {
    name: "cut JSON",
    what: "a list of objects on many lines that stops in the middle",
    bytes: utf8(JSON.stringify(MOMENTS, null, 2).slice(0, 9000)),
    told: [],
    refused: { code: "log.no-numbers", where: "stand.csv" },
  },
  {
    name: "binary",
    what: "a file that is not text",
    bytes: Uint8Array.from({ length: 600 }, (_, i) => (i * 7919) % 256),
    told: [],
    refused: { code: "log.binary", where: "stand.csv" },
  },
  {
    name: "workbook",
    what: "a spreadsheet workbook instead of its text",
    bytes: Uint8Array.from([0x50, 0x4b, 0x03, 0x04, ...Array.from({ length: 60 }, (_, i) => i)]),
    told: [],
    refused: { code: "log.binary", where: "stand.csv" },
  },
  {
    name: "empty",
    what: "blank lines only",
    bytes: utf8("\n \n\n"),
    told: [],
    refused: { code: "log.empty", where: "stand.csv" },
  },
  {
    name: "no numbers",
    what: "the settings of a logger instead of its log",
    bytes: utf8("sensor: load cell\nrate: fast\nname: stand\n"),
    told: [],
    refused: { code: "log.no-numbers", where: "stand.csv" },
  },
  {
    name: "one column",
    what: "one number on each line",
    bytes: utf8("thrust\n1.2\n1.3\n1.4\n"),
    told: [],
    refused: { code: "log.one-column", where: "stand.csv" },
  },
];

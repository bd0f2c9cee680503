import type { LogShape } from "../model/log.ts";
import { InputProblem } from "../quantity/problem.ts";

export type Encoding = LogShape["encoding"];

export interface SettledEncoding {
  readonly encoding: Encoding;
  /** Bytes of the byte order mark, left out of the text. */
  readonly markLength: number;
}

/** First bytes of files that people drop in place of a log, and what to do with each. */
const SIGNATURES: readonly { readonly bytes: readonly number[]; readonly looksLike: string; readonly mend: string }[] =
  [
    {
      bytes: [0x50, 0x4b, 0x03, 0x04],
      looksLike: "a zip archive or a spreadsheet workbook",
      mend: "Save the sheet as CSV, or unpack the archive, and bring the text file",
    },
    { bytes: [0xd0, 0xcf, 0x11, 0xe0], looksLike: "an old spreadsheet workbook", mend: "Save the sheet as CSV" },
    { bytes: [0x25, 0x50, 0x44, 0x46], looksLike: "a PDF document", mend: "Bring the text file that the logger wrote" },
    { bytes: [0x1f, 0x8b], looksLike: "a gzip archive", mend: "Unpack it and bring the text file" },
    { bytes: [0x89, 0x50, 0x4e, 0x47], looksLike: "a PNG picture", mend: "Bring the text file that the logger wrote" },
    { bytes: [0xff, 0xd8, 0xff], looksLike: "a JPEG picture", mend: "Bring the text file that the logger wrote" },
  ];

/** Bytes looked at to tell text from binary data. */
const SAMPLE = 4096;

/** More control bytes than this share of the sample: not text. A damaged log has a few, a binary file a third. */
const CONTROL_SHARE = 0.02;

/**
 * How the bytes of a log stand for letters, from its first bytes.
 * Byte order marks as in The Unicode Standard, section 23.8; without one, text of Latin letters and digits in UTF-16
 * shows a zero in every second byte. What is not UTF-8 either is taken as windows-1252, which reads every byte.
 * What a person `stated` is taken as it is. Throws InputProblem `log.binary`.
 */
export function settleEncoding(head: Uint8Array, fileName: string, stated?: Encoding): SettledEncoding {
  if (stated !== undefined) return { encoding: stated, markLength: markLength(head) };
  if (startsWith(head, [0xef, 0xbb, 0xbf])) return { encoding: "utf-8", markLength: 3 };
  if (startsWith(head, [0xff, 0xfe])) return { encoding: "utf-16le", markLength: 2 };
  if (startsWith(head, [0xfe, 0xff])) return { encoding: "utf-16be", markLength: 2 };
  const sample = head.subarray(0, SAMPLE);
  refuseSignatures(sample, fileName);
  const zeros = zeroShares(sample);
  if (zeros.odd > 0.4 && zeros.even < 0.02) return { encoding: "utf-16le", markLength: 0 };
  if (zeros.even > 0.4 && zeros.odd < 0.02) return { encoding: "utf-16be", markLength: 0 };
  refuseBinary(sample, fileName);
  return { encoding: isUtf8(head) ? "utf-8" : "windows-1252", markLength: 0 };
}

function markLength(head: Uint8Array): number {
  if (startsWith(head, [0xef, 0xbb, 0xbf])) return 3;
  return startsWith(head, [0xff, 0xfe]) || startsWith(head, [0xfe, 0xff]) ? 2 : 0;
}

function startsWith(bytes: Uint8Array, first: readonly number[]): boolean {
  return bytes.length >= first.length && first.every((byte, i) => bytes[i] === byte);
}

function zeroShares(sample: Uint8Array): { even: number; odd: number } {
  const zeros = [0, 0];
  for (let i = 0; i < sample.length; i++) if (sample[i] === 0) zeros[i & 1]!++;
  const half = Math.max(1, sample.length / 2);
  return { even: zeros[0]! / half, odd: zeros[1]! / half };
}

function refuseSignatures(sample: Uint8Array, fileName: string): void {
  const signature = SIGNATURES.find(({ bytes }) => startsWith(sample, bytes));
  if (signature) throw binary(fileName, `this is ${signature.looksLike}, not text`, signature.mend);
}

function refuseBinary(sample: Uint8Array, fileName: string): void {
  const text = textBeforePadding(sample);
  let control = 0;
  for (const byte of text) if (isControl(byte)) control++;
  if (control <= CONTROL_SHARE * text.length) return;
  const first = [...sample.subarray(0, 8)].map((byte) => byte.toString(16).padStart(2, "0")).join(" ");
  const mend = "Export the log as CSV or text from the program that wrote it";
  throw binary(fileName, `this is not text; its first bytes are ${first}`, mend);
}

/** A logger that lost power leaves the rest of a sector zero: lines with digits before the first zero byte are text. */
function textBeforePadding(sample: Uint8Array): Uint8Array {
  const before = sample.subarray(0, Math.max(0, sample.indexOf(0)));
  const hasLine = before.includes(10) || before.includes(13);
  return hasLine && before.some((byte) => byte >= 48 && byte <= 57) ? before : sample;
}

function binary(fileName: string, found: string, mend: string): InputProblem {
  const needed = "a delimited text file: numbers in columns, one row a line";
  return new InputProblem({ code: "log.binary", where: fileName, found, needed, mend });
}

function isControl(byte: number): boolean {
  return (byte < 32 && !(byte >= 9 && byte <= 13) && byte !== 0x1a && byte !== 0x1b) || byte === 127;
}

/** A character cut off at the end of the head is not held against it. */
function isUtf8(head: Uint8Array): boolean {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  try {
    decoder.decode(head, { stream: true });
    return true;
  } catch {
    return false;
  }
}

export const LINE_FEED = 10;
export const CARRIAGE_RETURN = 13;

/** A line feed or a carriage return. */
export function isLineEnd(byte: number): boolean {
  return byte === LINE_FEED || byte === CARRIAGE_RETURN;
}

/** Where the last whole line ends; a carriage return at the very end may be half of a line end. */
export function endOfWholeLines(bytes: Uint8Array, length: number): number {
  const feed = bytes.subarray(0, length).lastIndexOf(LINE_FEED);
  const carriage = bytes.subarray(0, Math.max(0, length - 1)).lastIndexOf(CARRIAGE_RETURN);
  return Math.max(feed, carriage) + 1;
}

/** Start of the line after the one that starts at `from`; lines end in \n, \r\n or \r, as they come. */
export function endOfLine(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  while (at < to && !isLineEnd(bytes[at]!)) at++;
  return bytes[at] === CARRIAGE_RETURN && at + 1 < to && bytes[at + 1] === LINE_FEED ? at + 2 : Math.min(at + 1, to);
}

/** Start of the last line of `bytes` up to `to`, which ends a line. */
export function startOfLastLine(bytes: Uint8Array, to: number): number {
  let at = to - 1;
  while (at > 0 && !isLineEnd(bytes[at - 1]!)) at--;
  return at;
}

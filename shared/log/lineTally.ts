const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;

/**
 * Counts the lines of a text that comes in pieces, however it is cut: a line ends with a line feed, a carriage return, or
 * both. The last line may still lack its end.
 */
export class LineTally {
  /** Bytes that came. */
  bytes = 0;
  /** Lines that came whole. */
  lines = 0;
  /** Bytes of the whole lines; what comes after them is the beginning of the next. */
  wholeBytes = 0;
  private afterReturn = false;

  push(piece: Uint8Array): void {
    // By index: this runs over every byte of a recording.
    for (let index = 0; index < piece.length; index++) {
      const byte = piece[index]!;
      const isEnd = byte === LINE_FEED || byte === CARRIAGE_RETURN;
      // The line feed after a carriage return belongs to the line that has ended already.
      if (isEnd && !(byte === LINE_FEED && this.afterReturn)) this.lines += 1;
      if (isEnd) this.wholeBytes = this.bytes + index + 1;
      this.afterReturn = byte === CARRIAGE_RETURN;
    }
    this.bytes += piece.length;
  }
}

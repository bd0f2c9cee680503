/** A stretch of the text, by its place in the whole. */
export interface Stretch {
  /** Bytes of the text before it. */
  readonly offset: number;
  readonly bytes: Uint8Array;
}

/**
 * Bytes on their way to a recording, each kept until it is acknowledged. Places are counted from the start of the
 * recording, so that a stretch that is sent twice is known for what it is.
 */
export class LineOutbox {
  private readonly pieces: Uint8Array[] = [];
  /** Place of the first byte that is not acknowledged. */
  private start: number;
  private waiting = 0;

  constructor(start = 0) {
    this.start = start;
  }

  /** Place at which the next byte to come belongs. */
  get end(): number {
    return this.start + this.waiting;
  }

  /** Bytes that are not acknowledged. */
  get size(): number {
    return this.waiting;
  }

  /** Takes the next bytes; the stretch that they are. */
  add(bytes: Uint8Array): Stretch {
    const stretch = { offset: this.end, bytes: bytes.slice() };
    if (bytes.length > 0) this.pieces.push(stretch.bytes);
    this.waiting += bytes.length;
    return stretch;
  }

  /** What to send next, of `most` bytes at most; null where nothing waits. */
  next(most: number): Stretch | null {
    if (this.waiting === 0) return null;
    const bytes = new Uint8Array(Math.min(most, this.waiting));
    let filled = 0;
    for (const piece of this.pieces) {
      const part = piece.subarray(0, bytes.length - filled);
      bytes.set(part, filled);
      filled += part.length;
      if (filled === bytes.length) break;
    }
    return { offset: this.start, bytes };
  }

  /** Lets go of everything before `place`, which is safe elsewhere. A place that was passed before changes nothing. */
  acknowledge(place: number): void {
    let left = Math.min(place - this.start, this.waiting);
    if (left <= 0) return;
    this.start += left;
    this.waiting -= left;
    while (left > 0) {
      const [first] = this.pieces as [Uint8Array];
      if (first.length > left) {
        this.pieces[0] = first.subarray(left);
        return;
      }
      left -= first.length;
      this.pieces.shift();
    }
  }
}

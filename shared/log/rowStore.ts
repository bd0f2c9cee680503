/** Rows in one block of memory while their number is not known. */
export interface RowBlock {
  readonly columns: Float64Array[];
  readonly lines: Uint32Array;
}

const FIRST_BLOCK = 1024;
const LARGEST_BLOCK = 65_536;
const NOTHING = new Float64Array(0);

/**
 * Grows column arrays in blocks. Doubling one long array would need the old and the new one side by side; blocks are
 * joined column by column at the end, each let go as soon as it is copied.
 */
export class RowStore {
  readonly width: number;
  /** Filled rows of the block in hand. */
  used = 0;
  private readonly full: RowBlock[] = [];
  private fullRows = 0;
  private inHand: RowBlock;

  constructor(width: number) {
    this.width = width;
    this.inHand = newBlock(width, FIRST_BLOCK);
  }

  get rows(): number {
    return this.fullRows + this.used;
  }

  /**
   * Makes room for `rows` rows in one piece, where their number can be foreseen: nothing needs to be joined then.
   * Memory that is never written costs nothing. More rows than foreseen go on in blocks.
   */
  reserve(rows: number): void {
    if (rows <= LARGEST_BLOCK || rows <= this.rows) return;
    const known = this.finish();
    const { columns, lines } = newBlock(this.width, rows);
    for (let c = 0; c < this.width; c++) columns[c]!.set(known.columns[c]!);
    lines.set(known.lineNumbers);
    this.used = known.lineNumbers.length;
    this.inHand = { columns, lines };
    this.full.length = 0;
    this.fullRows = 0;
  }

  /** The block with room for at least one more row at index `used`. */
  block(): RowBlock {
    const size = this.inHand.lines.length;
    if (this.used === size) {
      this.full.push(this.inHand);
      this.fullRows += size;
      this.inHand = newBlock(this.width, Math.min(2 * size, LARGEST_BLOCK));
      this.used = 0;
    }
    return this.inHand;
  }

  add(values: ArrayLike<number>, line: number): void {
    const { columns, lines } = this.block();
    for (let c = 0; c < this.width; c++) columns[c]![this.used] = values[c]!;
    lines[this.used] = line;
    this.used++;
  }

  /** All rows joined; the store is empty afterwards. */
  finish(): { columns: Float64Array[]; lineNumbers: Uint32Array } {
    if (this.full.length === 0) return this.finishOnePiece();
    const blocks = [...this.full, this.inHand];
    const rows = this.rows;
    const columns = Array.from({ length: this.width }, (_, c) => {
      const column = new Float64Array(rows);
      this.join(blocks, (block, count) => block.columns[c]!.subarray(0, count), column);
      for (const block of blocks) block.columns[c] = NOTHING;
      return column;
    });
    const lineNumbers = new Uint32Array(rows);
    this.join(blocks, (block, count) => block.lines.subarray(0, count), lineNumbers);
    return { columns, lineNumbers };
  }

  /** A copy of exact size for a short table; of a long one, where a copy would double the memory, the filled part. */
  private finishOnePiece(): { columns: Float64Array[]; lineNumbers: Uint32Array } {
    const { columns, lines } = this.inHand;
    const cut = lines.length <= LARGEST_BLOCK ? "slice" : "subarray";
    return { columns: columns.map((column) => column[cut](0, this.used)), lineNumbers: lines[cut](0, this.used) };
  }

  private join<A extends Float64Array | Uint32Array>(
    blocks: readonly RowBlock[],
    part: (block: RowBlock, count: number) => A,
    whole: A,
  ): void {
    let at = 0;
    for (const block of blocks) {
      const count = block === this.inHand ? this.used : block.lines.length;
      whole.set(part(block, count), at);
      at += count;
    }
  }
}

function newBlock(width: number, size: number): RowBlock {
  return { columns: Array.from({ length: width }, () => new Float64Array(size)), lines: new Uint32Array(size) };
}

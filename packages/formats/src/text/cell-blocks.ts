/** Cells kept in one piece of memory at most; 8 MB. */
const MOST_CELLS_OF_A_BLOCK = 2 ** 20;
const ROWS_OF_THE_FIRST_BLOCK = 64;

interface Block {
  /** Cell of a column at `column * rowsOfABlock + place`. */
  cells: Float64Array;
  /** Line of each row. */
  lines: Uint32Array;
  rowsOfABlock: number;
}

/**
 * The numbers of a table while it is read, in blocks of rows, column by column within a block: nothing is moved while it
 * grows, and little more memory is taken than needed. Each block holds twice the rows of the one before, up to a limit.
 */
export class CellBlocks implements Block {
  readonly width: number;
  cells: Float64Array;
  lines: Uint32Array;
  rowsOfABlock = ROWS_OF_THE_FIRST_BLOCK;
  /** Rows in the block being filled. */
  place = 0;
  private readonly full: Block[] = [];
  private rowsInFull = 0;

  constructor(width: number) {
    this.width = width;
    this.cells = new Float64Array(width * this.rowsOfABlock);
    this.lines = new Uint32Array(this.rowsOfABlock);
  }

  get rowCount(): number {
    return this.rowsInFull + this.place;
  }

  /** The row at `place` is whole; it stood in `line`. */
  endRow(line: number): void {
    this.lines[this.place++] = line;
    if (this.place === this.rowsOfABlock) this.startBlock();
  }

  column(column: number): Float64Array {
    const values = new Float64Array(this.rowCount);
    this.eachBlock(({ cells, rowsOfABlock }, rows, at) => {
      const from = column * rowsOfABlock;
      values.set(cells.subarray(from, from + rows), at);
    });
    return values;
  }

  lineOfRow(): Uint32Array {
    const all = new Uint32Array(this.rowCount);
    this.eachBlock(({ lines }, rows, at) => all.set(lines.subarray(0, rows), at));
    return all;
  }

  private startBlock(): void {
    const { cells, lines, rowsOfABlock } = this;
    this.full.push({ cells, lines, rowsOfABlock });
    this.rowsInFull += rowsOfABlock;
    if (2 * rowsOfABlock * this.width <= MOST_CELLS_OF_A_BLOCK) this.rowsOfABlock *= 2;
    this.cells = new Float64Array(this.width * this.rowsOfABlock);
    this.lines = new Uint32Array(this.rowsOfABlock);
    this.place = 0;
  }

  private eachBlock(visit: (block: Block, rows: number, at: number) => void): void {
    let at = 0;
    for (const block of this.full) {
      visit(block, block.rowsOfABlock, at);
      at += block.rowsOfABlock;
    }
    visit(this, this.place, at);
  }
}

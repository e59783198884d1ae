import { extentOf } from '../numeric/extent.ts';
import { median } from '../numeric/median.ts';
import { numberFigure, speedFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { ChannelMeaning, GriddedCurve } from './model.ts';

/** Widths to choose from, r/min, finest first. */
const WIDTHS_RPM = [50, 100, 250];
/** Rows a bin needs for a mean. */
const FEWEST_ROWS = 3;
/** How far a bin's middle may lie beyond the last accepted row, as a share of the width. */
const OVERHANG_SHARE = 0.25;

export interface Rows {
  speedRpm: Float64Array;
  /** NaN where a row is missing or a spike. */
  channels: ReadonlyMap<ChannelMeaning, Float64Array>;
  /** Accepted rows. */
  rows: readonly number[];
}

/**
 * Bin means at whole multiples of the width. A mean belongs to the mean speed of its rows, so it is carried to the middle
 * of the bin along the slope between the neighbouring bins: otherwise an unevenly filled bin would lean a rising curve.
 * A bin with fewer than three rows stays empty (one, where the width set by hand gives no more); so does one whose middle
 * lies more than a quarter of the width beyond the rows. No bin is filled from its neighbours.
 */
export function gridSamples(
  { speedRpm, channels, rows }: Rows,
  asked: number | 'adapted',
): { curve: GriddedCurve; remarks: Remark[] } {
  const known = rows.filter((row) => Number.isFinite(speedRpm[row]!));
  const width = asked === 'adapted' ? adaptedWidth(speedRpm, known) : asked;
  const typical = rowsPerBin(speedRpm, known, width);
  const fewest = typical >= FEWEST_ROWS ? FEWEST_ROWS : 1;
  const remarks =
    typical >= FEWEST_ROWS
      ? []
      : [
          remark(
            'caution',
            'few-rows-a-bin',
            said`Bins of ${speedFigure(width)} hold ${numberFigure(typical, 0)} rows each, ${FEWEST_ROWS} are wanted for a mean. The curve shows single rows with their noise; choose wider bins or log faster.`,
          ),
        ];
  const speeds = known.map((row) => speedRpm[row]!);
  const [low, high] = extentOf(speeds);
  const first = Math.ceil(low / width - OVERHANG_SHARE);
  const last = Math.floor(high / width + OVERHANG_SHARE);
  const nodes = Math.max(0, last - first + 1);
  const count = new Float64Array(nodes);
  for (const speed of speeds) {
    const bin = Math.round(speed / width) - first;
    if (bin >= 0 && bin < nodes) count[bin]! += 1;
  }
  const gridded = new Map<ChannelMeaning, Float64Array>();
  for (const [meaning, values] of channels) {
    if (meaning === 'time' || meaning === 'engineSpeed' || meaning === 'other') continue;
    gridded.set(meaning, binMeans(speedRpm, values, known, width, first, nodes, fewest));
  }
  return {
    curve: {
      kindOfRows: 'samples',
      binWidthRpm: width,
      engineSpeedRpm: Float64Array.from({ length: nodes }, (_, bin) => (first + bin) * width),
      count,
      channels: gridded,
    },
    remarks,
  };
}

/** Smallest width of the list with three rows in the middling bin; the widest where none has. */
function adaptedWidth(speedRpm: Float64Array, rows: readonly number[]): number {
  return WIDTHS_RPM.find((width) => rowsPerBin(speedRpm, rows, width) >= FEWEST_ROWS) ?? WIDTHS_RPM.at(-1)!;
}

function rowsPerBin(speedRpm: Float64Array, rows: readonly number[], width: number): number {
  const counts = new Map<number, number>();
  for (const row of rows) {
    const bin = Math.round(speedRpm[row]! / width);
    counts.set(bin, (counts.get(bin) ?? 0) + 1);
  }
  const bins = [...counts.keys()];
  const [first, last] = extentOf(bins);
  return median(Array.from({ length: last - first + 1 }, (_, step) => counts.get(first + step) ?? 0));
}

function binMeans(
  speedRpm: Float64Array,
  values: Float64Array,
  rows: readonly number[],
  width: number,
  first: number,
  nodes: number,
  fewest: number,
): Float64Array {
  const count = new Float64Array(nodes);
  const speed = new Float64Array(nodes);
  const value = new Float64Array(nodes);
  for (const row of rows) {
    const bin = Math.round(speedRpm[row]! / width) - first;
    if (bin < 0 || bin >= nodes || !Number.isFinite(values[row]!)) continue;
    count[bin]! += 1;
    speed[bin]! += speedRpm[row]!;
    value[bin]! += values[row]!;
  }
  const filled: number[] = [];
  for (let bin = 0; bin < nodes; bin++) {
    speed[bin]! /= count[bin]!;
    value[bin]! /= count[bin]!;
    if (count[bin]! >= fewest) filled.push(bin);
  }
  const centred = new Float64Array(nodes).fill(Number.NaN);
  for (const [place, bin] of filled.entries()) {
    const before = filled[Math.max(0, place - 1)]!;
    const after = filled[Math.min(filled.length - 1, place + 1)]!;
    const run = speed[after]! - speed[before]!;
    const slope = run > 0 ? (value[after]! - value[before]!) / run : 0;
    centred[bin] = value[bin]! + slope * ((first + bin) * width - speed[bin]!);
  }
  return centred;
}

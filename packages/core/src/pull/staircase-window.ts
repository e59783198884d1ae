import { extentOf } from '../numeric/extent.ts';
import { numberFigure, speedFigure, speedRange } from '../quantity/index.ts';
import { remark, type Said, said } from '../remark/index.ts';
import type { FoundWindow } from './acceptance-window.ts';
import type { Cut } from './model.ts';
import type { Hold } from './staircase.ts';
import { cutOf } from './wording.ts';

/**
 * The window of a step test logged throughout: the settled rows of each held speed count, the way between two of them and
 * the time a hold takes to settle are cuts. A hand-set window keeps the holds whose speed lies in it.
 */
export function staircaseWindow(
  found: readonly Hold[],
  rowCount: number,
  windowRpm: [low: number, high: number] | null,
): FoundWindow {
  const holds = found.filter(
    ({ speedRpm }) => windowRpm === null || (speedRpm >= windowRpm[0] && speedRpm <= windowRpm[1]),
  );
  const [first, last] = [holds[0], holds.at(-1)];
  if (!first || !last) {
    const [low, high] = extentOf(found.map(({ speedRpm }) => speedRpm));
    const message = said`None of the ${found.length} held speeds, ${speedRange(low, high, ' to ')}, lies in the window set by hand. Widen it.`;
    return { window: null, remarks: [remark('refusal', 'no-row-counts', message)] };
  }
  const cuts: Cut[] = [];
  const cut = (fromRow: number, toRow: number, why: Said) => {
    if (toRow >= fromRow) cuts.push(cutOf(fromRow, toRow, why));
  };
  let before: Hold | null = null;
  for (const hold of holds) {
    const from = before === null ? 0 : before.toRow + 1;
    const way =
      before === null
        ? said`before ${speedFigure(hold.speedRpm)} was held`
        : said`on the way from ${speedRange(before.speedRpm, hold.speedRpm, ' to ')}`;
    cut(from, hold.fromRow - 1, way);
    cut(hold.fromRow, hold.settledFrom - 1, said`${speedFigure(hold.speedRpm)} not yet settled`);
    before = hold;
  }
  cut(last.toRow + 1, rowCount - 1, said`after ${speedFigure(last.speedRpm)} was held`);
  const [fewest, most] = extentOf(holds.map(rowsOf)).map((rows) => numberFigure(rows, 0));
  const message = said`The log holds ${holds.length} speeds in steps: each point is the mean of the settled rows of one hold, ${fewest!} to ${most!} rows. Rows on the way between them do not count.`;
  return {
    window: {
      fromRow: first.settledFrom,
      toRow: last.toRow,
      direction: last.speedRpm < first.speedRpm ? 'falling' : 'rising',
      windowRpm: extentOf(holds.map(({ speedRpm }) => speedRpm)),
      sweepRateRpmPerS: null,
      cuts,
    },
    holds,
    remarks: [remark('note', 'held-speeds', message)],
  };
}

const rowsOf = ({ settledFrom, toRow }: Hold): number => toRow - settledFrom + 1;

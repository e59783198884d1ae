import { type NearPull, nearPullsOf, type Rung } from '@pullbook/core/reach';
import { thingsChanged } from '@pullbook/core/trial';
import type { ShownNear } from '../reach-model.ts';
import { counted, inSentence, listed } from '../wording.ts';
import type { ReachInView } from './reach-in-view.ts';
import { linksTo } from './sources.ts';

/** More things than these are counted. */
const MOST_NAMED = 3;

/** Pulled combinations nearest the target, above and below, each with what separates it from the chosen rung. */
export function nearRows(view: ReachInView, rung: Rung): ShownNear[] {
  const { bundle, keptNear, show } = view;
  const near = bundle === null ? keptNear : nearPullsOf(bundle.near, [rung]);
  return near
    .toSorted((one, other) => other.power - one.power)
    .map((pulled) => {
      const lines = pulled.separates[rung.id];
      return {
        combinationId: pulled.combinationId,
        name: pulled.name,
        measured: `${show.power(pulled.power)}, ${counted(pulled.pullIds.length, 'pull')}`,
        distance: distanceText(view, pulled),
        side: pulled.side,
        isSameEngine: pulled.isSameEngine,
        separates: separatesText(pulled, lines),
        lines: (lines ?? []).map(({ label, before, after }) => ({
          label,
          pulled: before ?? 'not on the sheet',
          rung: after ?? 'not on the sheet',
        })),
        links: linksTo(view, [pulled.combinationId, ...pulled.pullIds]),
      };
    });
}

function distanceText({ show, target }: ReachInView, { power }: NearPull): string {
  const size = show.power(Math.abs(power - target.power));
  if (!/[1-9]/u.test(size)) return 'at the target';
  return `${size} ${power > target.power ? 'above' : 'below'}`;
}

/** `drive and cam differ`, `another engine: 14 lines differ` */
function separatesText({ isSameEngine }: NearPull, lines: NearPull['separates'][string] | undefined): string {
  if (lines === undefined) return isSameEngine ? '' : 'another engine';
  if (lines.length === 0)
    return isSameEngine ? 'its sheet is the same' : 'another engine with the same sheet';
  const things = thingsChanged(lines).map(inSentence);
  const differ = `${listed(things)} ${things.length === 1 ? 'differs' : 'differ'}`;
  const counting = `${counted(lines.length, 'line')} ${lines.length === 1 ? 'differs' : 'differ'}`;
  const words = things.length > MOST_NAMED ? counting : differ;
  return isSameEngine ? words : `another engine: ${words}`;
}

import { extentOf } from '../numeric/index.ts';
import { averageOver, type ChannelMeaning, type Pull, type PullView } from '../pull/index.ts';
import { figureOf, percentFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding, RuleThresholds } from './model.ts';
import { type Speaker, speakerOf } from './speaker.ts';

/** A pull of a session with its view. */
export interface SessionPull {
  pull: Pick<Pull, 'name' | 'combinationId' | 'orderInSession' | 'recordedAt' | 'outcome'>;
  view: PullView;
}

/**
 * What the rules say of the pulls of one day in one cell, about `session <id>`: drift of what was not changed, oil and crankcase
 * from the first pull to the last, dates against order.
 */
export function findingsOfSession(
  sessionId: string,
  pulls: readonly SessionPull[],
  thresholds: RuleThresholds = {},
): Finding[] {
  const speaker = speakerOf(`session ${sessionId}`, thresholds);
  const inOrder = pulls.toSorted(
    (one, other) => placeOf(one) - placeOf(other) || timeOf(one) - timeOf(other),
  );
  const completed = inOrder.filter(({ pull, view }) => pull.outcome === 'completed' && view.curve !== null);
  return [...driftOfSentinel(completed, speaker), ...creep(completed, speaker), ...order(inOrder, speaker)];
}

/** Pulls without a place come last, by their times. */
const placeOf = ({ pull }: SessionPull): number => pull.orderInSession ?? Number.MAX_SAFE_INTEGER;
/** ms; NaN-free, so that it sorts: a pull without a time comes last. */
function timeOf({ pull }: SessionPull): number {
  const time = Date.parse(pull.recordedAt ?? '');
  return Number.isNaN(time) ? Number.MAX_SAFE_INTEGER : time;
}

/** Averages of two pulls over the speeds that both cover; `null`: there are none. */
function bothAverages(
  first: SessionPull,
  last: SessionPull,
  meaning: ChannelMeaning,
): readonly [number, number] | null {
  const [one, other] = [first.view.curve!, last.view.curve!];
  const reach = [one, other].map((curve) => {
    const values = curve.channels.get(meaning);
    return values === undefined
      ? ([Number.NaN, Number.NaN] as const)
      : extentOf(curve.engineSpeedRpm.filter((_, node) => Number.isFinite(values[node]!)));
  });
  const window = [Math.max(reach[0]![0], reach[1]![0]), Math.min(reach[0]![1], reach[1]![1])] as const;
  if (!(window[1] > window[0])) return null;
  const [a, b] = [averageOver(one, meaning, window), averageOver(other, meaning, window)];
  return a === null || b === null ? null : [a, b];
}

function driftOfSentinel(pulls: readonly SessionPull[], { limit, find }: Speaker): Finding[] {
  const threshold = limit('V28.share');
  const ids = new Set(pulls.flatMap(({ pull }) => pull.combinationId ?? []));
  return [...ids].flatMap((id) => {
    const own = pulls.filter(({ pull, view }) => pull.combinationId === id && view.correction.reached);
    const [first, last] = [own[0], own.at(-1)];
    if (first === undefined || last === undefined || first === last) return [];
    const power = bothAverages(first, last, 'power');
    if (power === null || !(power[0] > 0)) return [];
    const value = power[1] / power[0] - 1;
    if (!(Math.abs(value) > threshold)) return [];
    return [
      find('V28', {
        input: `Power, ${first.pull.name} against ${last.pull.name}`,
        kind: 'ratio',
        value,
        threshold: value < 0 ? -threshold : threshold,
        said: said`One combination made ${percentFigure(Math.abs(value), 1)} ${value < 0 ? 'less' : 'more'} in "${last.pull.name}" than in "${first.pull.name}" on the same day; ${percentFigure(threshold, 1)} is let pass. What lies between them drifted too: compare with pulls close by in time.`,
      }),
    ];
  });
}

function creep(pulls: readonly SessionPull[], { limit, find }: Speaker): Finding[] {
  const [first, last] = [pulls[0], pulls.at(-1)];
  if (first === undefined || last === undefined || first === last) return [];
  const findings: Finding[] = [];
  const input = (what: string) => `${what}, ${first.pull.name} against ${last.pull.name}`;
  const crankcase = bothAverages(first, last, 'crankcasePressure');
  if (crankcase !== null && crankcase[0] > 0) {
    const value = crankcase[1] / crankcase[0] - 1;
    const threshold = limit('V39.crankcase');
    if (value > threshold)
      findings.push(
        find('V39', {
          input: input('Crankcase pressure'),
          kind: 'ratio',
          value,
          threshold,
          said: said`Crankcase pressure went from ${figureOf(crankcase[0], 'gaugePressure', { decimals: 2 })} to ${figureOf(crankcase[1], 'gaugePressure', { decimals: 2 })} through the session, up ${percentFigure(value)}; ${percentFigure(threshold)} is let pass. Rings or a piston: a leak-down test before more pulls.`,
        }),
      );
  }
  const oil = bothAverages(first, last, 'oilPressure');
  const heat = bothAverages(first, last, 'oilTemperature');
  const hotter = heat === null ? Number.POSITIVE_INFINITY : heat[1] - heat[0];
  if (oil !== null && oil[0] > 0 && hotter <= limit('V39.oilHotter')) {
    const value = oil[1] / oil[0] - 1;
    const threshold = limit('V39.oilFall');
    if (value < -threshold)
      findings.push(
        find('V39', {
          input: input('Oil pressure'),
          kind: 'ratio',
          value,
          threshold: -threshold,
          said: said`Oil pressure went from ${figureOf(oil[0], 'gaugePressure')} to ${figureOf(oil[1], 'gaugePressure')} through the session with oil no hotter, down ${percentFigure(-value)}; ${percentFigure(threshold)} is let pass. Fuel in the oil, a filter, a bearing: look at the oil.`,
        }),
      );
  }
  return findings;
}

function order(pulls: readonly SessionPull[], { find }: Speaker): Finding[] {
  const known = pulls.flatMap(({ pull }) => {
    const time = Date.parse(pull.recordedAt ?? '');
    const number = pull.orderInSession ?? numberIn(pull.name);
    return Number.isNaN(time) || number === null ? [] : [{ pull, time, number }];
  });
  const byNumber = known.toSorted((one, other) => one.number - other.number);
  const back = byNumber.findIndex((one, index) => index > 0 && one.time < byNumber[index - 1]!.time);
  if (back === -1) return [];
  const [before, after] = [byNumber[back - 1]!.pull, byNumber[back]!.pull];
  return [
    find('V40', {
      input: 'Times and order of the pulls',
      said: said`"${after.name}" comes after "${before.name}" by number but ${minutes(byNumber[back - 1]!.time - byNumber[back]!.time)} before it by the clock. Drift is judged by the times: mend the clock of the logger or the order.`,
    }),
  ];
}

const minutes = (milliseconds: number): string => {
  const count = Math.max(1, Math.round(milliseconds / 60_000));
  return `${count} ${count === 1 ? 'minute' : 'minutes'}`;
};

/** `Pull 7` is the seventh; a name that ends otherwise has no number. */
function numberIn(name: string): number | null {
  const digits = /(?:^|\D)(\d{1,3})$/.exec(name.trim());
  return digits === null ? null : Number(digits[1]);
}

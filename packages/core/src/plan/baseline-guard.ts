import { figureOf, percentFigure } from '../quantity/index.ts';
import { type Remark, remark, type Said, said } from '../remark/index.ts';
import type { ScatterHistory } from '../scatter/index.ts';
import { countsByKey, type DesignedPull } from './designed-pull.ts';
import { judgeDesign } from './judge-design.ts';
import { laidOut, type OnTheBrake, type Pace } from './laid-out.ts';

export interface GuardQuestion {
  history: ScatterHistory;
  /** The baseline first; `name`: its few words. */
  combinations: readonly { key: string; name: string; takenApart: boolean }[];
  made: readonly DesignedPull[];
  onTheBrake: OnTheBrake;
  /** Counted pulls planned by key; `null`: nothing was planned. */
  planned: ReadonlyMap<string, number> | null;
  gainRatio: number;
  odds: number;
  pace: Pace;
  /** Mean power of the baseline's pulls, W; `null` unknown. */
  baselinePower: number | null;
}

/** What would be lost with the baseline's set-up, and what one more pull would give. */
export interface BaselineAtRisk {
  key: string;
  counted: number;
  planned: number | null;
  /** Smallest difference that the trial could show, share of the baseline: as it stands, and with one more pull. */
  smallestNow: number;
  smallestWithOneMore: number;
  gainRatio: number;
  odds: number;
  remark: Remark;
}

/** Counted pulls that a combination is taken to get where nobody planned any. */
const USUAL_PULLS = 2;

/**
 * Before the baseline leaves the brake: whether it has the pulls that were planned, and whether the gain asked for could still
 * be seen. `null`: nothing is lost, because another combination is fitted, all others are pulled, or the baseline is known
 * well enough.
 */
export function baselineGuard(question: GuardQuestion): BaselineAtRisk | null {
  const { combinations, made, onTheBrake, planned, gainRatio, odds } = question;
  const [baseline, ...others] = combinations;
  if (baseline === undefined || onTheBrake.key !== baseline.key) return null;
  const counts = countsByKey(made);
  const counted = counts.get(baseline.key) ?? 0;
  const open = others.filter(({ key }) => !counts.has(key));
  if (counted === 0 || open.length === 0) return null;
  const smallestNow = smallestAfter(0, open, question);
  const smallestWithOneMore = smallestAfter(1, open, question);
  const wanted = planned?.get(baseline.key) ?? null;
  const isEnough = (wanted === null || counted >= wanted) && smallestNow <= gainRatio;
  if (isEnough) return null;
  const risk = { counted, planned: wanted, smallestNow, smallestWithOneMore, gainRatio, odds };
  return { key: baseline.key, ...risk, remark: remarkOf(risk, baseline, question.baselinePower) };
}

function smallestAfter(
  more: number,
  open: GuardQuestion['combinations'],
  { combinations, made, onTheBrake, planned, gainRatio, odds, history, pace }: GuardQuestion,
): number {
  const baseline = combinations[0]!.key;
  const counted = countsByKey(made).get(baseline)!;
  const stays = open.map(({ key }) => ({
    key,
    count: planned?.get(key) ?? Math.max(USUAL_PULLS, counted),
  }));
  const takenApart = new Set(open.flatMap((one) => (one.takenApart ? [one.key] : [])));
  // A quarter of an hour later for the others is left out: it is small against the change itself.
  const now = Array.from({ length: more }, () => ({ ...onTheBrake, key: baseline }));
  const all = [...made, ...now, ...laidOut(stays, onTheBrake, takenApart, pace).pulls];
  return judgeDesign(all, [all.length], { baseline, history, gainRatio, odds })!.smallest();
}

function remarkOf(
  risk: Omit<BaselineAtRisk, 'key' | 'remark'>,
  { key, name }: GuardQuestion['combinations'][number],
  power: number | null,
): Remark {
  const pulls = `${risk.counted} counted ${risk.counted === 1 ? 'pull' : 'pulls'}`;
  const has = risk.planned === null ? pulls : `${pulls} of ${risk.planned} planned`;
  return remark(
    'caution',
    'losing-the-baseline',
    said`You are about to lose the baseline: one more pull? ${key} (${name}) has ${has}. Once it leaves the brake, the smallest difference that can be seen with ${numberOf(risk.odds)} odds is ${difference(risk.smallestNow, power)}; with one more pull now it is ${difference(risk.smallestWithOneMore, power)}. Asked for: ${percentFigure(risk.gainRatio, 1)}.`,
  );
}

const numberOf = (odds: number): Said => said`${percentFigure(odds)}`;

const difference = (ratio: number, power: number | null): Said =>
  !Number.isFinite(ratio)
    ? said`not to be told`
    : power === null
      ? said`${percentFigure(ratio, 1)}`
      : said`${percentFigure(ratio, 1)} (${figureOf(ratio * power, 'power', { decimals: 0 })})`;

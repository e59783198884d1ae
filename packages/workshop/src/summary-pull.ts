import { randomUUID } from 'node:crypto';
import { type Pull, type PullSummary, viewPull } from '@pullbook/core/pull';
import type { Origin } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { asCarried } from './as-carried.ts';
import type { PullDetails } from './edge/pull-details.ts';
import { type PullFigures, pullFigures } from './edge/pull-figures.ts';
import { optionalQuantityFromText } from './edge/quantity-text.ts';
import { withLike } from './like-pull.ts';
import { nextPullName } from './pull-moment.ts';
import { sessionFor } from './session.ts';
import { withSetUp } from './set-up.ts';
import { treatmentOfSummary } from './treatment.ts';
import { withCombination } from './with-combination.ts';
import { withShopCell } from './with-shop-cell.ts';
import { writtenPull } from './written-pull.ts';

/** Peaks that were printed or remembered, as text with units; missing: unknown. */
export interface SummaryText {
  peakPower?: string | null | undefined;
  peakPowerRpm?: string | null | undefined;
  peakTorque?: string | null | undefined;
  peakTorqueRpm?: string | null | undefined;
}

const ORIGINS: Origin[] = [
  'measured',
  'data sheet',
  'read off a picture',
  'remembered',
  'assumed',
  'not stated',
];

/** Enters a pull of which only its peaks are known. It is kept with its origin and has no curve. */
export async function addSummaryPull(
  book: Book,
  entry: { summary: SummaryText; origin: string; details: PullDetails; like?: string | undefined },
): Promise<Result<PullFigures & { id: string }>> {
  const summary = summaryFromText(entry.summary);
  if (!summary.ok) return summary;
  const origin = ORIGINS.find((one) => one === entry.origin);
  if (!origin) {
    return refused(
      remark(
        'refusal',
        'unknown-origin',
        `"${entry.origin}" is not an origin. Accepted: ${ORIGINS.join(', ')}.`,
      ),
    );
  }
  const now = new Date().toISOString();
  const placed = await withCombination(book, entry.details);
  if (!placed.ok) return placed;
  const like = await withLike(book, placed.value, entry.like, now);
  if (!like.ok) return like;
  const told = await withShopCell(book, like.value);
  if (!told.ok) return told;
  const { recordedAt, cell, treatment } = told.value;
  const name =
    told.value.name ??
    (entry.like === undefined ? 'Peaks only' : await nextPullName(book, recordedAt ?? now, cell ?? null));
  if (treatment) return refused(treatmentOfSummary(name));
  const details = await withSetUp(book, told.value, now);
  if (!details.ok) return details;
  const sessionId = await sessionFor(book, details.value);
  const pull: Pull = {
    ...writtenPull(details.value, { standard: 'unknown', factor: null }),
    id: randomUUID(),
    name,
    sessionId,
    form: 'summary',
    channels: [],
    summary: summary.value,
    origin,
    fileHash: null,
  };
  await book.addPulls([pull]);
  const view = viewPull(pull, asCarried(pull));
  return accepted({ id: pull.id, ...pullFigures(pull, view) }, [
    ...like.remarks,
    ...told.remarks,
    ...summary.remarks,
    ...view.remarks,
  ]);
}

/** Wider than any engine of the trade, narrower than a slip of the unit (common practice, no source). SI and r/min. */
const ALLOWED = {
  peakPower: { kind: 'power', label: 'Peak power', high: 10e6, allowed: 'up to 10,000 kW' },
  peakPowerRpm: {
    kind: 'engineSpeed',
    label: 'Engine speed of peak power',
    high: 30_000,
    allowed: 'up to 30,000 r/min',
  },
  peakTorque: { kind: 'torque', label: 'Peak torque', high: 20_000, allowed: 'up to 20,000 N·m' },
  peakTorqueRpm: {
    kind: 'engineSpeed',
    label: 'Engine speed of peak torque',
    high: 30_000,
    allowed: 'up to 30,000 r/min',
  },
} as const;

function summaryFromText(text: SummaryText): Result<PullSummary> {
  const remarks: Remark[] = [];
  const read = (field: keyof typeof ALLOWED): number | null => {
    const { kind, label, high, allowed } = ALLOWED[field];
    const parsed = optionalQuantityFromText(text[field], kind, label);
    remarks.push(...parsed.remarks);
    if (!parsed.ok || parsed.value === null) return null;
    if (parsed.value > 0 && parsed.value <= high) return parsed.value;
    const message = `${label}: ${text[field]} cannot be. Accepted: more than 0, ${allowed}. Check the figure and its unit.`;
    remarks.push(remark('refusal', 'absurd-value', message));
    return null;
  };
  const summary: PullSummary = {
    peakPower: read('peakPower'),
    peakPowerRpm: read('peakPowerRpm'),
    peakTorque: read('peakTorque'),
    peakTorqueRpm: read('peakTorqueRpm'),
  };
  if (
    remarks.every((one) => one.level !== 'refusal') &&
    summary.peakPower === null &&
    summary.peakTorque === null
  ) {
    remarks.push(
      remark(
        'refusal',
        'no-peak',
        'A summary needs a peak: give the power ("328 hp"), the torque ("330 lb-ft") or both.',
      ),
    );
  }
  const refusals = remarks.filter((one) => one.level === 'refusal');
  return refusals.length > 0 ? refused(...(refusals as [Remark, ...Remark[]])) : accepted(summary, remarks);
}

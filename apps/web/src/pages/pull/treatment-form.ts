import type { DecimalMark } from '@pullbook/core/quantity';
import type { PullPage, ShownRemark } from '@pullbook/views';
import { secondsFrom } from '../../typed/seconds-from.ts';
import { speedFrom } from '../../typed/speed-from.ts';

type Treatment = PullPage['treatment'];
type Meaning = PullPage['channelMeanings'][number];

/** A treatment as it is typed. */
export interface TreatmentForm {
  windowByHand: boolean;
  from: string;
  to: string;
  /** '' adapted to the sampling */
  binWidth: string;
  /** By meaning; '' or missing: not late. */
  lags: Record<string, string>;
  addInertia: boolean;
}

/** A number to be typed over: no thousands, the person's own decimal mark. */
export function typedNumber(value: number, decimalMark: DecimalMark): string {
  return String(value).replace('.', decimalMark);
}

export function formOf(
  { windowRpm, binWidthRpm, lagsS, addInertia }: Treatment,
  decimalMark: DecimalMark,
): TreatmentForm {
  const typed = (value: number | null | undefined) =>
    value === null || value === undefined ? '' : typedNumber(value, decimalMark);
  return {
    windowByHand: windowRpm !== null,
    from: typed(windowRpm?.[0]),
    to: typed(windowRpm?.[1]),
    binWidth: typed(binWidthRpm),
    lags: Object.fromEntries(Object.entries(lagsS).map(([meaning, lag]) => [meaning, typed(lag)])),
    addInertia,
  };
}

type Typed = { treatment: Treatment; faults: [] } | { treatment: null; faults: ShownRemark[] };

/**
 * What was typed as a treatment, or one remark for each field that is no number; whether the numbers can be is the server's
 * to say. A lag that was set and is now blank goes as 0.
 */
export function treatmentFrom(form: TreatmentForm, meanings: readonly Meaning[]): Typed {
  const faults: ShownRemark[] = [];
  const number = (label: string, text: string, read: (text: string) => number, example: string) => {
    const value = read(text);
    if (Number.isNaN(value)) {
      faults.push({
        level: 'refusal',
        text: `${label} "${text}" is not a number. Write it as ${example}.`,
      });
    }
    return value;
  };
  const treatment: Treatment = {
    windowRpm: form.windowByHand
      ? [
          number('Counted from', form.from, speedFrom, '3000'),
          number('Counted to', form.to, speedFrom, '6500'),
        ]
      : null,
    binWidthRpm:
      form.binWidth.trim() === '' ? null : number('Means over', form.binWidth, speedFrom, '100 rpm'),
    lagsS: Object.fromEntries(
      meanings.flatMap(({ id, label }) => {
        const text = form.lags[id];
        if (text === undefined) return [];
        return [[id, text.trim() === '' ? 0 : number(`Lag of ${label}`, text, secondsFrom, '0.3 s')]];
      }),
    ),
    addInertia: form.addInertia,
  };
  return faults.length === 0 ? { treatment, faults: [] } : { treatment: null, faults };
}

import { parseQuantity, type QuantityKind } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import type { Prediction } from '@pullbook/core/shop';

/** A prediction as a person writes it, with units. Either a gain or a highest power. */
export interface PredictionText {
  key: string;
  /** `3 %`: of average power over the window, against the baseline. */
  gain?: string | null | undefined;
  /** `520 hp` */
  peakPower?: string | null | undefined;
  /** Ends of the band in which it is to come out, in the same unit. */
  low: string;
  high: string;
  /** What it rests on. */
  basis: string;
}

type Said = Pick<Prediction, 'what' | 'value' | 'low' | 'high' | 'basis'>;

/** Gains beyond this are a slip of the pen, shares. */
const MOST_GAIN = [-0.9, 5] as const;

/** The figures of a prediction; every one that cannot stand is named. */
export function predictionFromText({ gain, peakPower, low, high, basis }: PredictionText): Result<Said> {
  if (!gain === !peakPower) {
    return refused(
      remark(
        'refusal',
        'prediction-of-what',
        'A prediction is of one thing: a gain such as "3 %", or a peak power such as "520 hp".',
      ),
    );
  }
  const what: Said['what'] = gain ? 'meanGain' : 'peakPower';
  const figures = [
    figureFrom('prediction', gain || peakPower || '', what),
    figureFrom('low end', low, what),
    figureFrom('high end', high, what),
  ];
  const remarks: Remark[] = figures.flatMap((one) => (one.ok ? [] : one.remarks));
  if (basis.trim() === '') {
    remarks.push(
      remark(
        'refusal',
        'prediction-without-basis',
        'Say what the prediction rests on: "a guess", "flow bench, 4 % more", "as the last engine did".',
      ),
    );
  }
  const [first, ...others] = remarks;
  if (first) return refused(first, ...others);
  const [value, lowest, highest] = figures.map((one) => (one.ok ? one.value : Number.NaN)) as [
    number,
    number,
    number,
  ];
  if (!(lowest <= value && value <= highest && lowest < highest)) {
    return refused(
      remark(
        'refusal',
        'prediction-outside-band',
        `The prediction must lie in its band: ${low.trim()} to ${high.trim()} does not hold ${(gain || peakPower || '').trim()}, or is no band at all.`,
      ),
    );
  }
  return accepted({ what, value, low: lowest, high: highest, basis: basis.trim() });
}

function figureFrom(name: string, text: string, what: Said['what']): Result<number> {
  const kind: QuantityKind = what === 'meanGain' ? 'ratio' : 'power';
  const read = parseQuantity(text, kind);
  const isGain = what === 'meanGain';
  const fits = isGain
    ? (value: number) => text.includes('%') && value >= MOST_GAIN[0] && value <= MOST_GAIN[1]
    : (value: number) => value > 0;
  if (read.ok && fits(read.value)) return read;
  const allowed = isGain
    ? 'a share from -90 % to 500 % with its sign, such as "3 %"'
    : 'a power with its unit, such as "520 hp"';
  return refused(
    remark(
      'refusal',
      'prediction-figure',
      `The ${name}: "${text}" cannot stand there. Accepted: ${allowed}.`,
    ),
  );
}

import { canBeLate, type Treatment } from '@pullbook/core/pull';
import { accepted, type Remark, type Result, refused, remark } from '@pullbook/core/remark';
import { meaningByName, meaningsLike } from '../meaning-by-name.ts';

/** How a pull is to be read, as a person says it. What is missing stays as it is. */
export interface TreatmentText {
  /** Seconds by which a channel is late, by its meaning (`lambda`) or label; negative: early; 0: no lag any more. */
  lagsS?: Record<string, number> | undefined;
  /** Accepted engine speeds, r/min; `null`: found. */
  windowRpm?: [low: number, high: number] | null | undefined;
  /** r/min; `null`: adapted to the sampling. */
  binWidthRpm?: number | null | undefined;
  addInertia?: boolean | undefined;
}

/** Longer than any pipe and probe need (common practice, no source), s. */
const LONGEST_LAG_S = 5;
/** Faster than any engine of the trade turns (common practice, no source), r/min. */
const HIGHEST_SPEED_RPM = 30_000;
/** Narrower holds single rows, wider hides the curve (common practice, no source), r/min. */
export const BIN_WIDTH_RPM = [10, 1000] as const;

/** What was said of the reading, checked; every field that cannot be has its own remark. */
export function treatmentFromText(text: TreatmentText): Result<Partial<Treatment>> {
  const { windowRpm, binWidthRpm, addInertia } = text;
  const said: Partial<Treatment> = {};
  const remarks: Remark[] = [];
  for (const [name, lagS] of Object.entries(text.lagsS ?? {})) {
    const meaning = meaningByName(name);
    const trouble = meaning && canBeLate(meaning) ? lagTrouble(name, lagS) : noSuchChannel(name);
    if (trouble) remarks.push(trouble);
    else said.lags = { ...said.lags, [meaning!]: lagS };
  }
  if (windowRpm !== undefined) {
    said.windowRpm = windowRpm;
    if (windowRpm !== null && !isWindow(windowRpm)) remarks.push(windowTrouble(windowRpm));
  }
  if (binWidthRpm !== undefined) {
    said.binWidthRpm = binWidthRpm;
    if (binWidthRpm !== null && !(binWidthRpm >= BIN_WIDTH_RPM[0] && binWidthRpm <= BIN_WIDTH_RPM[1]))
      remarks.push(binWidthTrouble(binWidthRpm));
  }
  if (addInertia !== undefined) said.addInertia = addInertia;
  return remarks.length > 0 ? refused(...(remarks as [Remark, ...Remark[]])) : accepted(said);
}

const isWindow = ([low, high]: [number, number]): boolean =>
  low >= 0 && low < high && high <= HIGHEST_SPEED_RPM;

const lagTrouble = (name: string, lagS: number): Remark | null =>
  Math.abs(lagS) <= LONGEST_LAG_S
    ? null
    : remark(
        'refusal',
        'absurd-lag',
        `A lag of ${lagS} s for ${name} cannot be. Accepted: -${LONGEST_LAG_S} to ${LONGEST_LAG_S} s; more than 0 where the channel comes late, 0 to take the lag away.`,
      );

const noSuchChannel = (name: string): Remark =>
  remark(
    'refusal',
    'lag-of-no-channel',
    `"${name}" is not a channel that a lag can be set for. Accepted: ${meaningsLike(name).filter(canBeLate).join(', ')}.`,
  );

const windowTrouble = ([low, high]: [number, number]): Remark =>
  remark(
    'refusal',
    'absurd-window',
    `A window from ${low} to ${high} rpm cannot be. Accepted: two engine speeds from 0 to ${HIGHEST_SPEED_RPM} rpm, the lower one first.`,
  );

const binWidthTrouble = (width: number): Remark =>
  remark(
    'refusal',
    'absurd-bin-width',
    `Bins of ${width} rpm cannot be. Accepted: ${BIN_WIDTH_RPM[0]} to ${BIN_WIDTH_RPM[1]} rpm, or adapted to the sampling.`,
  );

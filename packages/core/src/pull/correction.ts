import { type AirReading, airState, CORRECTIONS, type CorrectionId } from '../air/index.ts';
import { numberFigure, percentFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { CarriedCorrection, CorrectionApplied } from './model.ts';

/** How far a carried factor may stand from the one the pull's own weather gives (common practice, no source). */
const FACTOR_SHARE = 0.005;
/** Further from 1 than this, correcting a supercharged engine is in doubt (common practice, no source). */
const SUPERCHARGED_FACTOR_BAND = 0.03;

export interface CorrectionInput {
  asked: CorrectionId;
  carried: CarriedCorrection;
  weather: AirReading | null;
  /** The engine is supercharged, as far as the pull shows. */
  boosted: boolean;
}

/**
 * Brings carried figures to the standard asked for: undoes the factor they carry, then applies the one of the pull's
 * weather. `multiplier` is what torque and power as carried are multiplied by. What cannot be reached stays as carried.
 */
export function correctionOf(input: CorrectionInput): {
  applied: CorrectionApplied;
  multiplier: number;
  remarks: Remark[];
} {
  const { asked, carried } = input;
  const remarks: Remark[] = [];
  const name = CORRECTIONS[asked].name;
  const asCarried = (why: Remark) => ({
    applied: { asked, standard: carried.standard, factor: carriedFactor(carried), reached: false },
    multiplier: 1,
    remarks: [...remarks, why],
  });

  if (carried.standard === asked) {
    const own = weatherFactor(input, remarks);
    const factor = carriedFactor(carried);
    if (own !== null && factor !== null && Math.abs(own / factor - 1) > FACTOR_SHARE)
      remarks.push(factorsDisagree(name, factor, own));
    remarks.push(...superchargedRemarks(input, factor));
    return { applied: { asked, standard: asked, factor, reached: true }, multiplier: 1, remarks };
  }

  const undone = carried.standard === 'not stated' ? 1 : carriedFactor(carried);
  if (undone === null) return asCarried(factorUnknown(name, carried));
  if (carried.standard === 'not stated') remarks.push(NOT_STATED);
  const factor = asked === 'observed' ? 1 : weatherFactor(input, remarks);
  if (factor === null) return asCarried(noWeather(name, carried));
  remarks.push(...superchargedRemarks(input, factor));
  return { applied: { asked, standard: asked, factor, reached: true }, multiplier: factor / undone, remarks };
}

/** Factor inside the carried figures, `null` unknown. Observed figures carry 1 whatever was noted. */
export function carriedFactor(carried: CarriedCorrection): number | null {
  return carried.standard === 'observed' ? 1 : carried.factor;
}

function weatherFactor({ asked, weather }: CorrectionInput, remarks: Remark[]): number | null {
  if (weather === null) return null;
  const air = airState(weather);
  for (const one of air.remarks) remarks.push(one.level === 'refusal' ? { ...one, level: 'caution' } : one);
  if (!air.ok) return null;
  const standard = CORRECTIONS[asked];
  const factor = standard.factor(air.value);
  for (const reason of standard.outsideValidity(air.value, factor))
    remarks.push(remark('caution', 'outside-validity', said`Outside ${standard.name}: ${reason}.`));
  return factor;
}

function superchargedRemarks({ asked, boosted }: CorrectionInput, factor: number | null): Remark[] {
  if (!boosted || asked === 'observed') return [];
  const remarks = [remark('note', 'supercharged', CORRECTIONS[asked].supercharged)];
  if (factor !== null && Math.abs(factor - 1) > SUPERCHARGED_FACTOR_BAND)
    remarks.push(
      remark(
        'caution',
        'over-correction-possible',
        said`Over-correction possible: the factor ${numberFigure(factor, 4)} is more than ${percentFigure(SUPERCHARGED_FACTOR_BAND)} from 1 on a supercharged engine. Read the observed figures beside it.`,
      ),
    );
  return remarks;
}

const NOT_STATED = remark(
  'caution',
  'correction-not-stated',
  'Nothing says whether torque and power were already corrected for weather. They are taken as observed. Say so on the pull if they were not.',
);

const factorUnknown = (name: string, carried: CarriedCorrection) =>
  remark(
    'caution',
    'factor-unknown',
    `${carried.standard === 'unknown' ? 'The figures were corrected by a standard that is not known' : `The figures carry ${CORRECTIONS[carried.standard as CorrectionId].name} with a factor that is not known`}, ` +
      `so they cannot be brought to ${name} and stay as they are. Enter the factor if the sheet shows it.`,
  );

const noWeather = (name: string, carried: CarriedCorrection) =>
  remark(
    'caution',
    'no-weather',
    `No usable barometer and inlet temperature go with this pull, so it cannot be brought to ${name}; the figures stay ` +
      `${carried.standard === 'observed' || carried.standard === 'not stated' ? 'observed' : 'as the file carries them'}. Enter the weather of the pull.`,
  );

const factorsDisagree = (name: string, carried: number, own: number) =>
  remark(
    'caution',
    'factor-is-not-the-weathers',
    said`The figures carry a ${name} factor of ${numberFigure(carried, 4)}, the pull's own weather gives ${numberFigure(own, 4)}; ${percentFigure(FACTOR_SHARE, 1)} apart is allowed. Check the standard, and the barometer and temperature entered.`,
  );

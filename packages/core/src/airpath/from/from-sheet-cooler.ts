import { type CombinationSheet, sheetNumber } from '../../combination/index.ts';
import type { Tune } from '../../pull/index.ts';
import { figureOf, parseQuantity, percentFigure } from '../../quantity/index.ts';
import { accepted, type Result, refused, remark, said } from '../../remark/index.ts';
import type { Baseline, Cooler, StatedModel } from '../model.ts';
import { airFlowFigure } from '../way/air-flow-figure.ts';
import { lossOnSheet } from './from-sheet-losses.ts';
import { wordsOf } from './sheet-words.ts';
import type { Taken } from './taken.ts';

/** What a cooler does where nobody measured it, and one standard deviation (common practice, no source). */
export const USUAL_COOLER: Record<Cooler['by'], { effectiveness: number; spread: number; range: string }> = {
  air: { effectiveness: 0.65, spread: 0.08, range: 'air to air with fans 50 to 75 %' },
  water: { effectiveness: 0.8, spread: 0.05, range: 'air to water with cell water 75 to 90 %' },
  'ice water': { effectiveness: 0.8, spread: 0.05, range: 'air to water with ice 75 to 90 %' },
};

/** K; cell water and an ice tank where nobody read them (common practice, no source). */
const USUAL_COOLANT = { water: 291.15, 'ice water': 277.65 };
/** Pa, at the air a supercharged engine takes (common practice, no source). */
const USUAL_LOSS = 4000;
const USUAL_RISE_OF_FLOW = 1.4;
/** kg/m³ of the air in a core. */
const DENSITY_IN_CORE = 1.6;

/** The cooler on the sheet, with the coolant of the pull; `null`: none is fitted. */
export function coolerOfSheet(
  sheet: CombinationSheet,
  { baseline, stated, tune }: { baseline: Baseline; stated: StatedModel; tune: Tune },
  taken: Taken,
): Result<Cooler | null> {
  if (stated.cooler !== undefined) return accepted(stated.cooler);
  const section = sheet.sections.cooler;
  const type = wordsOf(sheet, 'cooler', 'type');
  if (section === undefined || Object.keys(section).length === 0) return accepted(null);
  if (/^(none|no|not fitted)\b/.test(type)) return accepted(null);

  const words = [type, wordsOf(sheet, 'cooler', 'coolant'), tune.coolerWater?.toLowerCase() ?? ''].join(' ');
  const by = coolantKind(words);
  const onSheet = sheetNumber(sheet, 'cooler', 'effectiveness');
  if (onSheet === 0 && by === 'ice water') return refused(ICE_WITHOUT_EFFECT);
  if (onSheet !== null && !(onSheet >= 0 && onSheet <= 1)) return refused(notAShare(onSheet));
  const usual = USUAL_COOLER[by];
  const flow = USUAL_RISE_OF_FLOW * Math.max(...baseline.airFlow.filter(Number.isFinite));
  return accepted({
    by,
    effectiveness: taken.first([onSheet], () => ({
      value: usual.effectiveness,
      because: remark(
        'note',
        'cooler-effectiveness-assumed',
        said`The cooler's effectiveness is not on the sheet: ${percentFigure(usual.effectiveness)} is taken (usual of ${usual.range}, common practice, no source), ±${percentFigure(2 * usual.spread)} in the band.`,
      ),
    })),
    loss: taken.first(
      [lossOnSheet(sheet, ['cooler', 'pressureLoss', 'pressureLossFlow'], flow, DENSITY_IN_CORE)],
      () => ({
        value: { pressureDifference: USUAL_LOSS, atFlow: flow, atDensity: DENSITY_IN_CORE },
        because: remark(
          'note',
          'cooler-loss-assumed',
          said`The cooler's pressure loss is not on the sheet: ${figureOf(USUAL_LOSS, 'pressureDifference')} at ${airFlowFigure(flow)} is taken (common practice, no source).`,
        ),
      }),
    ),
    coolantTemperature: by === 'air' ? null : coolantOf(sheet, by, tune, taken),
  });
}

function coolantKind(words: string): Cooler['by'] {
  if (/\bice\b|iced/.test(words)) return 'ice water';
  return /water|liquid|coolant/.test(words) ? 'water' : 'air';
}

/** What was noted with the pull goes before the sheet: the coolant is the pull's, the core is the sheet's. */
function coolantOf(sheet: CombinationSheet, by: 'water' | 'ice water', tune: Tune, taken: Taken): number {
  return taken.first(
    [temperatureIn(tune.coolerWater ?? ''), sheetNumber(sheet, 'cooler', 'coolantTemperature')],
    () => ({
      value: USUAL_COOLANT[by],
      because: remark(
        'note',
        'coolant-temperature-assumed',
        said`The temperature of the cooler's ${by} was not noted: ${figureOf(USUAL_COOLANT[by], 'temperature')} is taken (common practice, no source). Note it with the pull.`,
      ),
    }),
  );
}

/** K out of a note such as `ice water, 3 °C`; `null`: it names none. */
export function temperatureIn(note: string): number | null {
  const found = /[-−]?\d+(?:[.,]\d+)?\s*°?\s*[CFK]\b/iu.exec(note)?.[0];
  if (found === undefined) return null;
  const read = parseQuantity(found, 'temperature');
  return read.ok ? read.value : null;
}

const ICE_WITHOUT_EFFECT = remark(
  'refusal',
  'cooler-contradiction',
  'The sheet says the cooler is filled with ice and its effectiveness is 0 %: one of them is wrong. Enter the effectiveness as measured, leave it unknown, or take the cooler off the sheet.',
);

const notAShare = (value: number) =>
  remark(
    'refusal',
    'cooler-effectiveness-absurd',
    said`The cooler's effectiveness is ${percentFigure(value)}; allowed are 0 to 100 %, for air cannot come out colder than its coolant. Check the temperatures it was worked out from.`,
  );

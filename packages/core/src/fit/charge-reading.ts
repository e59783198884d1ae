import { mean } from '../numeric/index.ts';
import { figureOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { FitReading, FitTarget, MatchFit } from './model.ts';

/** K at all speeds alike by which a probe's place is thought of rather than its error (common practice, no source). */
const ANOTHER_PLACE = 8;

/**
 * A charge that was logged far warmer or colder than the fitted match at all speeds: then the probe most likely sits where another
 * temperature is. Where fuel goes in before the manifold its evaporation is named, which a probe before the fuel does not see.
 */
export function chargeReading({ residuals }: MatchFit, targets: readonly FitTarget[]): FitReading | null {
  const off = residuals
    .filter(({ figure }) => figure === 'manifoldTemperature')
    .flatMap(({ measured, matched }) => measured.map((value, node) => value - matched[node]!))
    .filter(Number.isFinite);
  if (off.length === 0) return null;
  const usual = mean(off);
  const isAlike = off.every((one) => one * usual > 0);
  if (!(Math.abs(usual) > ANOTHER_PLACE) || !isAlike) return null;
  const cooled = Math.max(...targets.map(({ input }) => input.charge.evaporationCooling));
  const isBeforeFuel = usual > 0 && cooled > 0;
  return {
    id: 'probe',
    strength: 'possible',
    text: said`The charge was logged ${figureOf(Math.abs(usual), 'temperatureDifference')} ${usual > 0 ? 'warmer' : 'colder'} than the match has it, at all speeds alike.${
      isBeforeFuel
        ? said` The match takes ${figureOf(cooled, 'temperatureDifference')} off for the fuel that evaporates, which a probe before the fuel does not see.`
        : said` A probe in another place, or another cooler than the sheet’s, looks like that.`
    }`,
    wouldSettle: isBeforeFuel
      ? said`The place of the probe, noted with the pull, and a pull with the probe behind the carburettor.`
      : said`The place of the probe, noted with the pull, and a second probe behind the cooler.`,
  };
}

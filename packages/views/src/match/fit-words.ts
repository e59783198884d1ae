import type { FitParameter, FitParameterId, FitResidual, MatchFit } from '@pullbook/core/fit';
import { writeSaid } from '@pullbook/core/quantity';
import type { MatchPage, ShownParameter } from '../match-model.ts';
import type { Showing } from '../showing.ts';
import { counted, listed } from '../wording.ts';
import type { MatchInView } from './match-in-view.ts';
import { matchedName } from './match-words.ts';

const PARAMETERS: Record<FitParameterId, string> = {
  headScale: 'Head of the compressor, against its map',
  flowScale: 'Flow of the map',
  swallowingScale: 'Air swallowed, against the baseline',
  chargeHeat: 'Heat left in the charge, against the reckoned',
  workFactor: 'Work of each kilogram of air, against the baseline',
  slip: 'Creep and slip of the belt',
};
/** One standard deviation each way is shown twice: about 95 of 100. */
const BAND_SIGMAS = 1.96;

/** Each fitted combination's parameters, how well the fit meets the pulls, and what its residuals look like. */
export function fitWords({ matched, show, options }: MatchInView): MatchPage['fit'] {
  return matched.flatMap((one) => {
    const { fit } = one.combination;
    if (fit === null) return [];
    return [
      {
        name: matchedName(one),
        parameters: fit.parameters.map((parameter) => shownParameter(show, parameter)),
        residuals: residualLines(show, fit),
        readings: fit.readings.map(({ strength, text, wouldSettle }) => ({
          text: `${strength === 'seen' ? 'Seen' : 'Possible'}: ${writeSaid(text.text, text.parts, options)}`,
          wouldSettle:
            wouldSettle === null
              ? ''
              : `What would settle it: ${uncapitalised(writeSaid(wouldSettle.text, wouldSettle.parts, options))}`,
        })),
      },
    ];
  });
}

const uncapitalised = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

function shownParameter(show: Showing, { id, prior, value, spread, from }: FitParameter): ShownParameter {
  const text = (middle: number, sigma: number) => {
    const [low, high] = [middle - BAND_SIGMAS * sigma, middle + BAND_SIGMAS * sigma];
    if (id === 'slip')
      return `${show.perCent(middle)} (${show.number(100 * Math.max(0, low), 'ratio', { decimals: 1 })} to ${show.number(100 * high, 'ratio', { decimals: 1 })})`;
    const number = (one: number) => show.number(one, 'ratio');
    return `${number(middle)} (${number(low)} to ${number(high)})`;
  };
  return {
    name: PARAMETERS[id],
    prior: text(prior.value, prior.spread),
    value: text(value, spread),
    from: from.length === 0 ? 'no channel speaks of it: it stays as taken beforehand' : listed(from),
  };
}

const FIGURES: Partial<Record<FitResidual['figure'], string>> = {
  boost: 'Boost',
  brakePower: 'Power',
  brakeTorque: 'Torque',
  manifoldTemperature: 'Charge temperature',
  dischargeTemperature: 'Temperature behind the compressor',
  airFlow: 'Air flow',
  impellerSpeedRpm: 'Impeller speed',
};

/** `Boost within 1.2 % (root mean square) of 3 pulls` */
function residualLines(show: Showing, { residuals }: MatchFit): string[] {
  const figures = [...new Set(residuals.map(({ figure }) => figure))];
  return figures.flatMap((figure) => {
    const own = residuals.filter((one) => one.figure === figure && Number.isFinite(one.rms));
    if (own.length === 0) return [];
    const rms = Math.sqrt(own.reduce((sum, one) => sum + one.rms ** 2, 0) / own.length);
    const isTemperature = figure.endsWith('Temperature');
    const size = isTemperature
      ? show.quantity(rms, 'temperatureDifference', { decimals: 1 })
      : show.perCent(rms);
    const name = FIGURES[figure] ?? figure;
    return [`${name} within ${size} (root mean square) of ${counted(own.length, 'pull')}`];
  });
}

import { CORRECTIONS, correctPower } from '@pullbook/core/air';
import { solveMatch } from '@pullbook/core/airpath';
import { type ForetoldFigure, highestOf, predictedCurve } from '@pullbook/core/fit';
import { numberFigure } from '@pullbook/core/quantity';
import { accepted, type Result, refused, remark, said } from '@pullbook/core/remark';
import type { Prediction } from '@pullbook/core/shop';
import type { Book } from '@pullbook/store';
import type { MatchedCombination } from '@pullbook/views/match';
import { findTrial } from '../find-named.ts';
import { programVersion } from '../places.ts';
import { kept, whyNotPredicted } from '../predictions.ts';
import { type BandsAsked, bandsOfMatch, USUAL_SEED } from './bands-of-match.ts';
import { type MatchChoices, matchOfTrial } from './match-bundle.ts';

/** What was kept of a match. */
export interface KeptMatch {
  key: string;
  basis: string;
  predictions: Prediction[];
}

/**
 * Keeps what the match foretells of a combination: its highest power in the trial's standard, its highest boost, and both over
 * engine speed, with the seed and version that make it again. Refused once the combination has a counted pull.
 */
export async function keepMatchPrediction(
  book: Book,
  trialNamed: string,
  keyGiven: string,
  { air, fitOn, draws, seed = USUAL_SEED }: MatchChoices & BandsAsked = {},
  now = new Date(),
): Promise<Result<KeptMatch>> {
  const found = await findTrial(book, trialNamed);
  if (!found.ok) return found;
  const trial = found.value;
  const key = keyGiven.trim().toUpperCase();
  const why = whyNotPredicted(trial, key, {});
  if (why) return refused(why);
  const bundle = await matchOfTrial(book, trial.id, { air, fitOn });
  if (!bundle.ok) return bundle;
  const matched = bundle.value.combinations.find((one) => one.key === key);
  if (!matched) {
    const reason = bundle.value.left.find((one) => one.key === key)?.reason;
    return refused(reason ?? remark('refusal', 'no-match', `There is no match of ${key} to keep.`));
  }
  const bands = await bandsOfMatch([matched], { draws, seed });
  const curve = predictedCurve(solveMatch(matched.input), bands.cases[0]!, matched.input.air);
  const standard = CORRECTIONS[trial.correction];
  const factor = trial.correction === 'observed' ? 1 : standard.factor(matched.input.air);
  const about = {
    key,
    basis: basisOf(matched, standard.name, factor),
    curve,
    madeBy: { version: programVersion(), seed },
  };
  const power = highestOf(curve, curve.power);
  const boost = curve.boost && highestOf(curve, curve.boost);
  if (power === null) return refused(NO_CURVE);
  const ofBoost =
    boost === null
      ? []
      : [{ ...about, what: 'highestBoost' as const, ...foretold(boost, (pascal) => pascal) }];
  const ofPower = {
    ...about,
    what: 'peakPower' as const,
    ...foretold(power, (watt) => correctPower(watt, factor)),
  };
  if (await isKept(book, trial.id, ofPower)) return refused(KEPT_ALREADY);
  const predictions = await kept(book, trial, [ofPower, ...ofBoost], now);
  return accepted({ key, basis: about.basis, predictions });
}

/** Whether the same was foretold before: kept once more it would count twice in the ledger. */
async function isKept(
  book: Book,
  trialId: string,
  { key, what, value, low, high }: Pick<Prediction, 'key' | 'what' | 'value' | 'low' | 'high'>,
): Promise<boolean> {
  return (await book.predictions([trialId])).some(
    (one) =>
      one.key === key && one.what === what && one.value === value && one.low === low && one.high === high,
  );
}

const foretold = ({ value, low, high }: ForetoldFigure, as: (value: number) => number) => ({
  value: as(value),
  low: as(low),
  high: as(high),
});

function basisOf({ fit, input, assumptions }: MatchedCombination, standard: string, factor: number): string {
  const { origin, pullIds } = input.baseline;
  const alone = origin === 'scaled' ? 'a scaled' : `${pullIds.length} naturally aspirated`;
  const fitted =
    fit === null
      ? (assumptions.find(({ code }) => code === 'fit-taken' || code === 'not-fitted')?.message ??
        'not fitted to a boosted pull')
      : `fitted to ${fit.pullIds.length} boosted ${fit.pullIds.length === 1 ? 'pull' : 'pulls'}`;
  const carried =
    factor === 1
      ? ''
      : said` Peak power carried to ${standard} by the factor ${numberFigure(factor, 4)}.`.text;
  return `Match of supercharger and engine on ${alone} ${origin === 'scaled' ? 'baseline' : pullIds.length === 1 ? 'pull' : 'pulls'}, map "${input.compressor.map.name}"; ${fitted}${/[.!]$/.test(fitted) ? '' : '.'}${carried}`;
}

const KEPT_ALREADY = remark(
  'refusal',
  'kept-already',
  'This very prediction is kept already: it stands with the trial. It changes when the match does.',
);

const NO_CURVE = remark(
  'refusal',
  'no-curve-to-keep',
  'The match has no solution at any engine speed, so it foretells nothing. See what the findings and assumptions say.',
);

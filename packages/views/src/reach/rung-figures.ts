import type { Rung } from '@pullbook/core/reach';
import type { ReachPage, ShownReachFigure, ShownSource } from '../reach-model.ts';
import { capitalised } from '../wording.ts';
import type { ReachInView } from './reach-in-view.ts';
import { boostBand, boostText, chanceText, powerBand, sentenceOf, whereText } from './reach-words.ts';
import { computedFrom, linksTo, pullsText } from './sources.ts';

/** What a way makes, each figure with its band and what it rests on; what was measured of the engine as it is stands first. */
export function rungFigures(view: ReachInView, rung: Rung): ShownReachFigure[] {
  const { show, target } = view;
  const from = computedFrom(view, rung);
  const { ground, peakPower, highestBoost, reached } = rung;
  const unit = `\u00a0${show.unit('power')}`;
  const line = (label: string, value: string, band: string): ShownReachFigure => ({
    label,
    value,
    band,
    ground,
    from,
  });
  const withUnit = (band: string) => (band === '' ? '' : `${band}${unit}`);
  const chance = chanceText(rung);
  const impeller = highestOf(rung, rung.curve.impellerSpeedRpm);
  const air = highestOf(rung, rung.curve.airFlow);
  return [
    ...measuredNow(view),
    ...(target.what === 'peak power'
      ? []
      : [
          line(
            `Power${whereText(show, target)}`,
            show.power(reached.value),
            withUnit(powerBand(show, reached)),
          ),
        ]),
    line(
      'Highest power',
      `${show.power(peakPower.value)} at ${show.speed(peakPower.atRpm)}`,
      withUnit(powerBand(show, peakPower)),
    ),
    ...(highestBoost === null
      ? []
      : [
          line(
            'Highest boost',
            `${boostText(show, highestBoost.value)} at ${show.speed(highestBoost.atRpm)}`,
            boostBandText(view, highestBoost),
          ),
        ]),
    ...(impeller === null
      ? []
      : [line('Impeller, with slip', `${show.speed(impeller.value)} at ${show.speed(impeller.atRpm)}`, '')]),
    ...(air === null
      ? []
      : [
          line(
            'Air',
            `${show.quantity(air.value, 'massFlow', { decimals: 0 })} at ${show.speed(air.atRpm)}`,
            '',
          ),
        ]),
    ...(chance === ''
      ? []
      : [{ ...line('Chance to reach the target', capitalised(chance), ''), from: chanceFrom(view, from) }]),
  ];
}

function boostBandText({ show }: ReachInView, of: NonNullable<Rung['highestBoost']>): string {
  const band = boostBand(show, of);
  return band === '' ? '' : `${band}\u00a0${show.unit('gaugePressure')}`;
}

function measuredNow(view: ReachInView): ShownReachFigure[] {
  const { show, target } = view;
  const measured = view.bundle?.input.measuredNow ?? null;
  if (measured === null) return [];
  const { power, pullIds } = measured;
  return [
    {
      label: `${target.what === 'peak power' ? 'Highest power' : `Power${whereText(show, target)}`} now, measured`,
      value: show.power(power),
      band: '',
      ground: 'measured by you',
      from: { text: `Mean of ${pullsText(view, pullIds)}.`, links: linksTo(view, pullIds) },
    },
  ];
}

const chanceFrom = ({ bundle }: ReachInView, { text, links }: ShownSource): ShownSource => ({
  text: `Share of the ${bundle === null ? '' : `${bundle.input.draws} `}draws that reach it. ${text}`,
  links,
});

/** The highest value over engine speed; `null`: there is none. */
export function highestOf(
  { curve }: Rung,
  values: readonly number[] | null,
): { value: number; atRpm: number } | null {
  if (values === null) return null;
  let best = -1;
  for (const [node, value] of values.entries())
    if (Number.isFinite(value) && (best < 0 || value > values[best]!)) best = node;
  return best < 0 ? null : { value: values[best]!, atRpm: curve.engineSpeedRpm[best]! };
}

/** What another fuel does, in a sentence each; empty: the fuel stays. */
export function fuelEffectLines({ options, show }: ReachInView, { fuelEffect }: Rung): string[] {
  if (fuelEffect === null) return [];
  const { work, workSpread, because } = fuelEffect;
  const share = show.perCent(work - 1, { sign: true });
  const spread = show.perCent(2 * workSpread);
  return [
    `The other fuel: ${share} work of the same air, give or take ${spread} (planning grade).`,
    ...because.map(({ message, parts }) => sentenceOf({ text: message, ...(parts && { parts }) }, options)),
  ];
}

/** The trial that a rung became. */
export function becameOf({ kept }: ReachInView, { id }: Rung): NonNullable<ReachPage['chosen']>['became'] {
  const became = kept?.enquiry.became.find(({ rungId }) => rungId === id);
  return became === undefined
    ? null
    : { trialId: became.trialId, combinationId: became.combinationId, at: became.at };
}

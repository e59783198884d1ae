import type { PartChange } from '../combination/index.ts';
import { type Comparison, startTemperature } from '../compare/index.ts';
import { channelOf, dayOfPull, type Pull, type PullView } from '../pull/index.ts';
import { likeForLikeBadge } from './badge-of-likeness.ts';
import { oneChangeBadge } from './badge-of-one-change.ts';
import { repeatsBadge } from './badge-of-repeats.ts';
import { listed } from './listed.ts';
import type { Badge } from './model.ts';

export interface BadgeInput {
  comparison: Comparison | null;
  changes: Readonly<Record<string, readonly PartChange[]>>;
  /** The counted pulls of all combinations. */
  counted: readonly { key: string; pull: Pull; view: PullView }[];
}

/** What an honest comparison can show for itself, each earned from the data alone. None where no gain is claimed. */
export function badgesOf(input: BadgeInput): Badge[] {
  const { comparison } = input;
  if (comparison === null || comparison.gains.length === 0) return [];
  return [
    likeForLikeBadge(comparison),
    repeatsBadge(comparison),
    sameDay(input),
    sameStandard(comparison),
    conditionsShown(input),
    oneChangeBadge(comparison, input.changes),
  ];
}

function sameDay({ counted }: BadgeInput): Badge {
  const days = counted.map(({ pull }) => dayOfPull(pull));
  const known = [...new Set(days.filter((day) => day !== null))].sort();
  const missing = days.includes(null);
  const earned = !missing && known.length === 1;
  return {
    id: 'same-day',
    label: 'Same day',
    earned,
    why: earned
      ? `All counted pulls were made on ${known[0]}.`
      : missing
        ? `The day of ${listed(counted.filter(({ pull }) => dayOfPull(pull) === null).map(({ pull }) => pull.name))} is not noted.`
        : `The counted pulls are of ${known.length} days: ${listed(known)}.`,
  };
}

function sameStandard({ conditions, correction }: Comparison): Badge {
  const row = conditions.find(({ id }) => id === 'standard');
  const isKnown = correction.standard !== 'unknown' && correction.standard !== 'not stated';
  const earned = row?.state === 'alike' && isKnown;
  const values = Object.entries(row?.values ?? {}).map(([key, value]) => `${key} ${value}`);
  return {
    id: 'same-standard',
    label: 'Same standard',
    earned,
    why: earned
      ? `All counted pulls stand in ${Object.values(row.values)[0]}.`
      : row?.state === 'differs'
        ? `The pulls stand in different standards: ${values.join(', ')}.`
        : 'The standard of the figures is not known for every pull.',
  };
}

/** Weather, mixture or fuel, and starting temperatures of every counted pull. */
function conditionsShown({ comparison, counted }: BadgeInput): Badge {
  const fuel = comparison!.conditions.find(({ id }) => id === 'fuel');
  const fuelKnown = fuel !== undefined && fuel.state !== 'unknown';
  const lacking = (what: string, isThere: (one: BadgeInput['counted'][number]) => boolean) => {
    const without = counted.filter((one) => !isThere(one));
    if (without.length === 0) return [];
    const all = without.length === counted.length;
    return [`${what} of ${all ? 'every pull' : listed(without.map(({ pull }) => pull.name))}`];
  };
  const missing = [
    ...lacking('the weather', ({ pull }) => pull.weather !== null),
    ...lacking(
      'mixture or fuel',
      ({ pull }) => fuelKnown || channelOf(pull, 'lambda') !== null || Boolean(pull.tune.targetLambda),
    ),
    ...lacking('oil at the start', (one) => startTemperature(one, 'oilTemperature') !== null),
    ...lacking('coolant at the start', (one) => startTemperature(one, 'coolantTemperature') !== null),
  ];
  return {
    id: 'conditions-shown',
    label: 'Conditions shown',
    earned: missing.length === 0,
    why:
      missing.length === 0
        ? 'Weather, mixture or fuel, and oil and coolant at the start are known for every counted pull.'
        : `Not known: ${missing.join('; ')}.`,
  };
}

import type { ScatterComparison, VarianceParts } from '@pullbook/core/scatter';
import type { SaidGain } from './said-gain.ts';
import { spreadSource } from './spread-words.ts';
import { listed } from './wording.ts';

/** Share of a gain's variance from which a source is named. */
const NAMED_FROM = 0.05;

/** Remarks of the comparison that these lines say where they stand. */
export const SAID_OF_THE_BAND: readonly string[] = [
  'drift-in-band',
  'set-up-in-band',
  'cells-in-band',
  'history-set-aside',
  'single-pull',
];

/**
 * What may not be said because of what the band is made of: repeats that were not made, drift and soak, taking apart and days,
 * scatter beyond what was known. `saysWhatWouldHelp`: with what would narrow it.
 */
export function notFromTheBand(
  said: SaidGain,
  { saysWhatWouldHelp }: { saysWhatWouldHelp: boolean },
): string[] {
  const { scatter } = said.gain.band!;
  return [
    ...notRepeated(said, scatter),
    ...notWithoutDrift(said, scatter, saysWhatWouldHelp),
    ...notWithoutSoak(said, scatter),
    ...notItsOwnAlone(said, scatter, saysWhatWouldHelp),
    ...notAsUsual(said, scatter),
  ];
}

function notRepeated({ baseline, changed }: SaidGain, { counts }: ScatterComparison): string[] {
  const single = [baseline.key, changed.key].filter((key) => counts.get(key)?.pulls === 1);
  if (single.length === 0) return [];
  return [
    `That ${listed(single)} ${single.length === 1 ? 'repeats' : 'repeat'}: only one pull of ${single.length === 1 ? 'it' : 'each'} counts, and a second would show.`,
  ];
}

function notWithoutDrift(said: SaidGain, scatter: ScatterComparison, saysWhatWouldHelp: boolean): string[] {
  const share = shareOf(said, scatter, ['drift']);
  if (share < NAMED_FROM) return [];
  const [before, after] = [said.baseline.key, said.changed.key];
  return [
    `That drift has no part in it: ${before} and ${after} were pulled one after the other, so it cannot be told from the gain. The band allows for it: it is ${said.show.perCent(share, { decimals: 0 })} of what the band is made of.${
      saysWhatWouldHelp ? ` A pull of ${before} after ${after} would take it out.` : ''
    }`,
  ];
}

function notWithoutSoak({ baseline, changed }: SaidGain, { trends }: ScatterComparison): string[] {
  const untold = [baseline.key, changed.key].filter((key) =>
    trends.some(({ group, state }) => group === key && state === 'cannot-tell'),
  );
  if (untold.length === 0) return [];
  return [
    `That heat soak has no part in it: too few pulls of ${listed(untold)} in one set-up to tell it from scatter.`,
  ];
}

const BETWEEN = {
  setUp: 'taking apart and putting together',
  day: 'another day',
  cell: 'another cell',
} as const;
const PLACES = ['setUp', 'day', 'cell'] as const;

/** Set-ups, days and cells lie between the combinations as the change does. */
function notItsOwnAlone(said: SaidGain, scatter: ScatterComparison, saysWhatWouldHelp: boolean): string[] {
  const { spreads } = scatter;
  const { show } = said;
  const named = PLACES.filter((part) => shareOf(said, scatter, [part]) >= NAMED_FROM);
  if (named.length === 0) return [];
  const isOne = named.length === 1;
  const from = named.map(
    (part) =>
      `${BETWEEN[part]} (${show.perCent(spreads[part].sigma, { decimals: 2 })}${part === 'setUp' ? ' each time' : ''})`,
  );
  const sources = [...new Set(named.map((part) => spreadSource(spreads[part])))];
  const share = show.perCent(shareOf(said, scatter, PLACES), { decimals: 0 });
  const help = named.includes('cell')
    ? 'More pulls do not narrow that; pulls in one cell do.'
    : 'More pulls do not narrow that; another set-up of each would.';
  return [
    [
      `How much of it is the change’s own: ${listed(from)} ${isOne ? 'is' : 'are'} ${share} of what the band is made of.`,
      saysWhatWouldHelp ? help : '',
      `The ${isOne ? 'figure is' : 'figures are'} ${listed(sources)}.`,
    ]
      .filter(Boolean)
      .join(' '),
  ];
}

const SPREADS = [
  ['pull', 'pulls of one set-up'],
  ['setUp', 'set-ups'],
  ['day', 'days'],
  ['within', 'single engine speeds within a pull'],
] as const;

/** Repeats that scatter more than what was known lets expect stand alone. */
function notAsUsual({ show }: SaidGain, { spreads }: ScatterComparison): string[] {
  return SPREADS.flatMap(([part, what]) => {
    const { historySetAside, fromRepeats, sigma } = spreads[part];
    if (!historySetAside) return [];
    const scatters = show.perCent(fromRepeats?.sigma ?? sigma, { decimals: 2 });
    return [
      `That these pulls repeat as usual: ${what} scatter by ${scatters}, more than what was known lets expect, so the band rests on them alone. Look for the cause: temperatures, fuel, belt, load cell.`,
    ];
  });
}

function shareOf(
  { gain }: SaidGain,
  { gains }: ScatterComparison,
  wanted: readonly (keyof VarianceParts)[],
): number {
  const parts = gains.find(({ group }) => group === gain.changedKey)?.parts;
  if (!parts) return 0;
  const whole = Object.values(parts).reduce((sum, value) => sum + value, 0);
  return whole > 0 ? wanted.reduce((sum, part) => sum + parts[part], 0) / whole : 0;
}

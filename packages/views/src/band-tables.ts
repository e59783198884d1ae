import type { GainBand } from '@pullbook/core/compare';
import type { SpreadUsed, Trend, VarianceParts } from '@pullbook/core/scatter';
import { bandPerCent } from './band-text.ts';
import { differenceName } from './gain-panel.ts';
import type { ShownTable } from './model.ts';
import type { Showing } from './showing.ts';
import { wholeTens } from './showing.ts';
import { spreadSource } from './spread-words.ts';
import type { TrialInView } from './trial-in-view.ts';

/** From here on a spread is as good as known; the figure itself would say nothing more. */
const WELL_KNOWN_DEGREES = 200;

type Banded = { name: string; band: GainBand; changedKey: string };

/** What the bands of a trial are made of, where gains change sign, and trends; none where there is no band. */
export function bandTables(view: TrialInView): ShownTable[] {
  const banded = view.gains.flatMap(({ gain, changed }): Banded[] =>
    gain.band === null
      ? []
      : [
          {
            name: differenceName(changed.key, view.baseline.key),
            band: gain.band,
            changedKey: changed.key,
          },
        ],
  );
  return [
    ...crossoverTable(view.show, banded),
    ...madeOf(view.show, banded),
    ...trendTable(view.show, view.comparison?.trends ?? []),
  ];
}

const SOURCES: readonly { part: keyof VarianceParts; name: string }[] = [
  { part: 'pull', name: 'Pull to pull' },
  { part: 'setUp', name: 'Set-up to set-up' },
  { part: 'day', name: 'Day to day' },
  { part: 'cell', name: 'Cell to cell' },
  { part: 'drift', name: 'Drift within a session' },
];

/** Each spread as it was used, what it rests on, and its share of the variance of each gain. */
function madeOf(show: Showing, banded: readonly Banded[]): ShownTable[] {
  const [first] = banded;
  if (!first) return [];
  const { scatter } = first.band;
  const spreadOf = (part: keyof VarianceParts): SpreadUsed | null =>
    part === 'drift' ? null : scatter.spreads[part];
  const partsOf = ({ band, changedKey }: Banded) =>
    band.scatter.gains.find(({ group }) => group === changedKey)?.parts;
  const rows = SOURCES.map(({ part, name }) => {
    const spread = spreadOf(part);
    const source = spread === null ? DRIFT[scatter.drift.handling] : spreadSource(spread);
    return {
      name,
      unit: '',
      cells: [
        spread === null ? '' : show.perCent(spread.sigma, { decimals: 2 }),
        spread === null ? '' : degrees(spread.degreesOfFreedom),
        ...banded.map((one) => shareOf(show, partsOf(one), part)),
        source,
      ],
    };
  });
  return [
    {
      id: 'band-made-of',
      title: 'What the band is made of, one standard deviation each',
      columns: [
        { text: 'Scatter', combination: null },
        { text: 'Degrees of freedom', combination: null },
        ...banded.map(({ name }) => ({
          text: banded.length > 1 ? `Share of ${name}` : 'Share of the variance',
          combination: null,
        })),
        { text: 'Rests on', combination: null },
      ],
      rows,
    },
  ];
}

const DRIFT = {
  'taken-out': 'taken out by the order of the pulls',
  carried: 'not taken out by the order of the pulls, so it widens the band',
  none: 'no times to tell it by',
};

function shareOf(show: Showing, parts: VarianceParts | undefined, part: keyof VarianceParts): string {
  if (!parts) return '';
  const whole = Object.values(parts).reduce((sum, value) => sum + value, 0);
  return whole > 0 ? show.perCent(parts[part] / whole, { decimals: 0 }) : '';
}

const degrees = (value: number): string =>
  value > WELL_KNOWN_DEGREES ? `over ${WELL_KNOWN_DEGREES}` : String(Math.round(value));

function crossoverTable(show: Showing, banded: readonly Banded[]): ShownTable[] {
  const rows = banded.flatMap(({ name, band }) =>
    band.crossovers.map(({ atRpm, lowRpm, highRpm }, index) => ({
      name: band.crossovers.length > 1 ? `${name}, ${index + 1}` : name,
      unit: show.unit('engineSpeed'),
      cells: [
        show.number(wholeTens(atRpm), 'engineSpeed'),
        `${show.number(wholeTens(lowRpm), 'engineSpeed')} to ${show.number(wholeTens(highRpm), 'engineSpeed')}`,
      ],
    })),
  );
  if (rows.length === 0) return [];
  return [
    {
      id: 'crossovers',
      title: 'Where the gain changes sign',
      columns: [
        { text: 'At', combination: null },
        { text: 'Cannot be told', combination: null },
      ],
      rows,
    },
  ];
}

const TREND: Record<Trend['state'], string> = {
  seen: 'seen',
  'not-seen': 'not seen',
  'cannot-tell': 'cannot be told from scatter',
};

/** Falls and rises through the pulls of one combination: heat soak, drift, running in. */
function trendTable(show: Showing, trends: readonly Trend[]): ShownTable[] {
  if (trends.length === 0) return [];
  return [
    {
      id: 'trends',
      title: 'Rise or fall through the pulls',
      columns: [
        { text: 'Pulls', combination: null },
        { text: 'Each pull', combination: null },
        { text: '95 % band', combination: null },
        { text: 'Trend', combination: null },
      ],
      rows: trends.map(({ group, pulls, perPull, low, high, state }, index) => ({
        name: `${group}${trends.filter((one) => one.group === group).length > 1 ? `, set-up ${1 + trends.slice(0, index).filter((one) => one.group === group).length}` : ''}`,
        unit: '',
        cells: [
          String(pulls),
          Number.isFinite(perPull) ? show.perCent(perPull, { sign: true, decimals: 2 }) : '',
          Number.isFinite(low) && Number.isFinite(high) ? bandPerCent(show, [low, high], 2) : '',
          TREND[state],
        ],
      })),
    },
  ];
}

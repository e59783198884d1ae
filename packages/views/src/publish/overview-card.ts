import type { CardCell } from '@pullbook/charts';
import { surveyFigures } from '@pullbook/core/trial';
import { bandText, gainDecimals } from '../band-text.ts';
import { styleOf } from '../curve-panels.ts';
import { saidGains } from '../said-gain.ts';
import { standardName } from '../standard-name.ts';
import { fullName, type TrialInView } from '../trial-in-view.ts';
import { verdictWords } from '../verdict-line.ts';
import { inSentence } from '../wording.ts';
import { claimInTwo } from './claim-words.ts';
import type { NamedPicture } from './picture.ts';
import { type CardTable, cell, tablePicture } from './table-picture.ts';

/** Several changes against one baseline: a row each, its gain never without its band and verdict. */
export function gainsOverview(view: TrialInView): NamedPicture[] {
  const said = saidGains(view);
  const [first] = said;
  if (said.length < 2 || !first) return [];
  const { show } = view;
  const unit = show.unit('power');
  const isJudged = said.some(({ gain }) => gain.verdict !== null);
  const table: CardTable = {
    columns: [
      { text: 'Changed', unit: '', style: 'ink' },
      { text: 'Average', unit, style: 'ink' },
      { text: `Against ${first.baseline.key}`, unit, style: 'ink' },
      ...(isJudged
        ? [
            { text: '95\u00a0% band', unit, style: 'ink' as const },
            { text: 'Verdict', unit: '', style: 'ink' as const },
          ]
        : []),
    ],
    rows: said.map(({ gain, changed }): CardCell[] => {
      const item = view.combinations.find(({ key }) => key === changed.key)!;
      const { band, verdict } = gain;
      const isClear = verdict?.word === 'clear';
      const decimals =
        band === null
          ? 0
          : gainDecimals(show, gain.meanPower, band.meanPower, verdict?.word !== 'within-noise');
      return [
        cell(`${changed.key} ${changed.shortName}`.trim(), styleOf(item)),
        cell(show.number(item.figures?.averages.get('power') ?? Number.NaN, 'power', { decimals: 0 })),
        {
          ...cell(show.number(gain.meanPower, 'power', { decimals, sign: true })),
          ...(isClear ? { strong: true } : {}),
        },
        ...(isJudged
          ? [
              cell(band === null ? '' : bandText(show, band.meanPower, { decimals })),
              cell(verdict === null ? 'not judged' : inSentence(verdictWords(show, verdict))),
            ]
          : []),
      ];
    }),
  };
  const average = first.baseline;
  const own = view.baseline.figures?.averages.get('power');
  const over = own === undefined ? '' : `, whose average is ${show.power(own)}`;
  return [
    {
      name: 'table',
      key: null,
      title: 'Table of all changes',
      ...tablePicture(table, {
        headline: `${said.length} changes against ${fullName(average)}`,
        subline: `Power on average from ${show.speedRange(first.window)}, ${standardName(first.comparison.correction)}, against ${average.key}${over}.${isJudged ? ' Bold: clear of the noise.' : ' How sure they are, is not known.'}`,
      }),
    },
  ];
}

const LITRE = 1e-3;

/** Engines of a survey, a row each; no gain is claimed of any. */
export function surveyCard(view: TrialInView): NamedPicture[] {
  const engines = view.combinations.flatMap((item) =>
    item.figures === null || item.combination === null
      ? []
      : [{ item, figures: item.figures, survey: surveyFigures(item.combination.sheet, item.figures) }],
  );
  if (view.state !== 'survey' || engines.length === 0) return [];
  const { show, comparison } = view;
  const window = comparison?.averagesWindowRpm ?? null;
  const power = (value: number | null | undefined, decimals: number) =>
    cell(show.number(value ?? Number.NaN, 'power', { decimals }));
  const table: CardTable = {
    columns: [
      { text: 'Engine', unit: '', style: 'ink' },
      { text: 'Displacement', unit: show.unit('volume'), style: 'ink' },
      { text: 'Highest power', unit: show.unit('power'), style: 'ink' },
      { text: 'A litre', unit: `${show.unit('power')}/L`, style: 'ink' },
      ...(window ? [{ text: 'Average', unit: show.unit('power'), style: 'ink' as const }] : []),
    ],
    rows: engines.map(({ item, figures, survey }) => [
      cell(`${item.key} ${item.shortName}`.trim(), styleOf(item)),
      cell(show.number(survey.displacement ?? Number.NaN, 'volume', { decimals: 0 })),
      power(figures.peakPower?.value, 0),
      power(survey.peakPowerPerDisplacement === null ? null : survey.peakPowerPerDisplacement * LITRE, 1),
      ...(window ? [power(figures.averages.get('power'), 0)] : []),
    ]),
  };
  const over = window ? ` Average from ${show.speedRange(window)}.` : '';
  return [
    {
      name: 'table',
      key: null,
      title: 'Table of the engines',
      ...tablePicture(table, {
        headline: `${engines.length} ${engines.length === 1 ? 'engine' : 'engines side by side'}`,
        subline:
          `A survey: different engines, so no gain is claimed.${over} ${claimInTwo(view).subline}`.trim(),
      }),
    },
  ];
}

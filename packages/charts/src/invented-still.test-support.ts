import { inventedChart } from './invented-chart.test-support.ts';
import type { ChartDescription, LineStyle, PictureBody, StillDescription } from './model.ts';

/** Invented pictures for tests of drawing: no engine made their figures. */

/** The sizes that pictures leave in, with the least text of each, px. */
export const PICTURE_SIZES = {
  '1080p': { width: 1920, height: 1080, least: 32 },
  '4k': { width: 3840, height: 2160, least: 64 },
  square: { width: 1080, height: 1080, least: 40 },
  tall: { width: 1080, height: 1920, least: 48 },
  thumbnail: { width: 1280, height: 720, least: 12 * (1280 / 360) },
} as const;

const SPACELESS = 'x'.repeat(200);
const WORDY = 'a name that somebody typed in all its length with every part and its maker in it '
  .repeat(3)
  .slice(0, 200);
const HAN = '\u6392\u6c17\u30de\u30cb\u30db\u30fc\u30eb\u30c9'.repeat(25);

const panels = (chart: ChartDescription, ids: string[]): ChartDescription => ({
  ...chart,
  panels: chart.panels.filter(({ id }) => ids.includes(id)),
});

/** Every curve is the first one. */
function coinciding(chart: ChartDescription): ChartDescription {
  return {
    ...chart,
    panels: chart.panels.map((panel) => ({
      ...panel,
      lines: panel.lines.map((line) => ({ ...line, y: panel.lines[0]!.y })),
      marks: [],
    })),
  };
}

function withoutGain(chart: ChartDescription): ChartDescription {
  return {
    ...chart,
    panels: chart.panels.map((panel) => ({
      ...panel,
      lines: panel.lines.map((line) => ({ ...line, y: line.y.map(() => 0) })),
      bands: [],
      marks: [],
      rules: [],
    })),
  };
}

const ink = 'ink' as const;

/** Speeds, baseline, changed, gain and per cent for so many changed combinations. */
export function inventedTable(rows: number, changed = 1, name = 'longer cam'): PictureBody {
  const every = Array.from({ length: changed }, (_, index) => index + 1);
  const styleOf = (combination: number): LineStyle => ({ combination });
  return {
    kind: 'table',
    columns: [
      { text: 'Engine speed', unit: 'rpm', style: ink },
      { text: 'A base cam', unit: 'hp', style: styleOf(0) },
      ...every.flatMap((one) => [
        { text: `${String.fromCharCode(65 + one)} ${name}`, unit: 'hp', style: styleOf(one) },
        { text: 'Gain', unit: 'hp', style: ink },
        { text: 'Gain', unit: '%', style: ink },
      ]),
    ],
    rows: Array.from({ length: rows }, (_, row) => [
      { text: (3000 + 250 * row).toLocaleString('en-US'), style: ink },
      { text: String(200 + 18 * row), style: styleOf(0) },
      ...every.flatMap((one) => [
        { text: String(199 + 19 * row + one), style: styleOf(one) },
        { text: `+${row + one}`, style: ink, strong: true as const },
        { text: `+${(0.4 * row).toFixed(1)}`, style: ink },
      ]),
    ]),
  };
}

const facts = (count: number, text: string, label = 'Valve springs'): PictureBody => ({
  kind: 'facts',
  rows: Array.from({ length: count }, (_, index) => ({
    label: index % 2 === 0 ? label : 'Cam',
    text,
    before: index % 4 === 0 ? `another ${text}` : null,
    isChanged: index % 4 === 0,
  })),
});

const badges = (count: number, why: string): PictureBody => ({
  kind: 'badges',
  badges: Array.from({ length: count }, (_, index) => ({
    label: `Like for like ${index}`,
    earned: index % 3 !== 2,
    why,
  })),
});

const ten = { combinations: 10, pullsEach: 1 };
const bigNumber = (number: string, chart: ChartDescription | null): PictureBody => ({
  kind: 'number',
  number,
  unit: 'hp',
  band: '\u00b14\u00a0hp (95\u00a0%)',
  what: 'on average from 4,000 to 6,500\u00a0rpm',
  chart,
});

/** Bodies of every kind: as they usually are, and as large, small, long and empty as they may come. */
export const INVENTED_BODIES: Record<string, PictureBody> = {
  stack: { kind: 'stack', chart: panels(inventedChart(), ['power', 'boost']) },
  'one panel': { kind: 'stack', chart: panels(inventedChart({ combinations: 1 }), ['power']) },
  'four panels': { kind: 'stack', chart: inventedChart({ combinations: 4, pullsEach: 2 }) },
  'ten combinations': { kind: 'stack', chart: inventedChart(ten) },
  'ten long names': { kind: 'stack', chart: inventedChart({ ...ten, names: Array(10).fill(WORDY) }) },
  'names without a space': { kind: 'stack', chart: inventedChart({ names: [SPACELESS, SPACELESS] }) },
  'names in another script': { kind: 'stack', chart: inventedChart({ names: [HAN, HAN] }) },
  'coinciding curves': { kind: 'stack', chart: coinciding(inventedChart({ combinations: 4, pullsEach: 2 })) },
  'gains of zero': { kind: 'stack', chart: withoutGain(panels(inventedChart(), ['power', 'gain'])) },
  'no curve in range': { kind: 'stack', chart: { ...inventedChart(), xRange: [9000, 9500] } },
  'no panel': { kind: 'stack', chart: { ...inventedChart(), panels: [] } },
  number: bigNumber('+15', panels(inventedChart(), ['power'])),
  'number alone': bigNumber('\u22120.4', null),
  'long number': { ...bigNumber('no difference', inventedChart(ten)), unit: '', band: WORDY } as PictureBody,
  table: inventedTable(15),
  'one row': inventedTable(1),
  'forty rows': inventedTable(40),
  'ten columns of combinations': inventedTable(15, 9),
  'long column names': inventedTable(8, 2, WORDY),
  'no row': inventedTable(0),
  facts: facts(9, '3.6 in pulley, 3.8 mm belt'),
  'many facts': facts(30, 'as it was'),
  'long facts': facts(8, WORDY, WORDY),
  'one fact': facts(1, HAN),
  'no fact': facts(0, ''),
  badges: badges(6, 'All counted pulls were made on 14 March 2026.'),
  'many badges': badges(24, WORDY),
  words: {
    kind: 'words',
    paragraphs: [
      {
        text: 'With the longer cam the engine makes 15\u00a0hp more on average, and boost falls by 1.1\u00a0psi at the end.',
      },
      { text: 'It breathes better, so that the same supercharger delivers more air at less pressure.' },
      { text: 'Not excluded: ignition timing, which was not logged.', quiet: true },
    ],
  },
  'too many words': { kind: 'words', paragraphs: Array(7).fill({ text: WORDY.repeat(2) }) },
  'words in another script': { kind: 'words', paragraphs: [{ text: HAN }, { text: HAN, quiet: true }] },
};

export const SHORT_WORDS: Omit<StillDescription, 'body'> = {
  headline: 'Longer cam, same pulley: +15\u00a0hp on average',
  subline: '\u00b14\u00a0hp (95\u00a0%) \u00b7 3 pulls against 2, same day \u00b7 SAE J1349',
  footer: [
    '3.8\u00a0L straight six, gasoline \u00b7 inlet air 84\u00a0\u00b0F, factor 1.021 \u00b7 \u03bb\u00a00.79',
    '3 pulls against 2 \u00b7 invented data',
  ],
  warning: null,
  signature: null,
  alternative: 'Power and boost of both over engine speed.',
};

export const LONG_WORDS: Omit<StillDescription, 'body'> = {
  headline:
    'The longer cam with the single plane intake adds 28 hp on average from 4,000 to 6,500 rpm, takes 1.1 psi off the boost, and nobody would ever set a headline as long as this one is in two lines',
  subline: Array(6).fill('3 pulls against 2 on 14 and 15 March 2026, SAE J1349').join(' \u00b7 '),
  footer: [
    ...Array(8).fill(
      '3.8 L straight six, gasoline, centrifugal supercharger, intake air 84 \u00b0F, factor 1.021',
    ),
    'ten pulls \u00b7 invented data',
  ],
  warning: 'Not for publication',
  signature: {
    name: 'A workshop with a name that nobody would write on a door, for it is far too long',
    mark: { address: 'data:image/png;base64,', width: 3, height: 2 },
  },
  alternative: 'Power and boost of both over engine speed.',
};

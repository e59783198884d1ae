import type { ChartBand, ChartDescription, ChartLine, ChartPanel } from '@pullbook/charts';
import type { MatchInput } from '@pullbook/core/airpath';
import { plainText } from '../sentence.ts';
import { listed } from '../wording.ts';
import type { MatchedInView, MatchInView } from './match-in-view.ts';
import { matchSentence } from './match-sentence.ts';
import { figurePlotter, figureUnit, matchedName, type SHOWN_FIGURES } from './match-words.ts';

type PanelFigure = 'brakePower' | 'brakeTorque' | 'boost' | 'manifoldTemperature';

const PANELS: readonly {
  figure: PanelFigure;
  measured: 'power' | 'torque' | 'boost' | 'chargeTemperature';
  title: string;
  share: number;
}[] = [
  { figure: 'brakePower', measured: 'power', title: 'Power', share: 1.6 },
  { figure: 'brakeTorque', measured: 'torque', title: 'Torque', share: 1 },
  { figure: 'boost', measured: 'boost', title: 'Boost', share: 1 },
  { figure: 'manifoldTemperature', measured: 'chargeTemperature', title: 'Charge temperature', share: 0.8 },
];

/** Matched curves with their bands, and as thin dotted lines what was measured of the same combinations. */
export function matchChart(view: MatchInView): ChartDescription {
  const { matched, show } = view;
  const speeds = matched.flatMap(({ curve }) => curve.engineSpeedRpm);
  const xRange: [number, number] = speeds.length === 0 ? [0, 1] : [Math.min(...speeds), Math.max(...speeds)];
  const panels = PANELS.map(({ figure, measured, title, share }, index): ChartPanel => {
    const pulled = matched.flatMap((one) => measuredLine(view, one, figure, measured));
    const notes = [
      ...(index === 0 ? ['computed, as observed in its air'] : []),
      ...(figure === 'boost' ? [tapNote(matched)] : []),
      ...(pulled.length > 0 ? ['dots: measured'] : []),
    ];
    return {
      id: measured,
      title,
      unit: figureUnit(show, figure),
      note: notes.filter((note) => note !== '').join('; '),
      decimals: 0,
      share,
      zeroLine: figure === 'boost',
      lines: [...pulled, ...matched.map((one) => matchedLine(view, one, figure, index === 0))],
      bands: matched.flatMap((one) => bandOf(view, one, figure)),
      marks: [],
    };
  }).filter(({ lines }) => lines.some(({ y }) => y.some((value) => value !== null)));
  return {
    xTitle: 'Engine speed',
    xUnit: show.unit('engineSpeed'),
    xRange,
    xWindow: null,
    panels,
    decimalMark: show.options.decimalMark,
    alternative: `Computed ${listed(panels.map(({ title }) => title.toLowerCase()))} over engine speed of ${listed(matched.map(matchedName))}. ${plainText(matchSentence(view))}`,
  };
}

function matchedLine(
  { show }: MatchInView,
  one: MatchedInView,
  figure: PanelFigure,
  isNamed: boolean,
): ChartLine {
  const { combination, curve } = one;
  return {
    id: combination.key,
    style: { combination: combination.combination },
    weight: 'mean',
    x: curve.engineSpeedRpm,
    y: Array.from(curve.figures[figure], figurePlotter(show, figure)),
    label: { key: combination.key, name: isNamed ? combination.name : '', value: null },
  };
}

function measuredLine(
  { show }: MatchInView,
  { combination: { key, combination, measured } }: MatchedInView,
  figure: PanelFigure,
  channel: 'power' | 'torque' | 'boost' | 'chargeTemperature',
): ChartLine[] {
  const values = measured?.[channel] ?? null;
  if (measured === null || !values?.some(Number.isFinite)) return [];
  return [
    {
      id: `${key} measured`,
      style: { combination },
      weight: 'pull',
      x: measured.engineSpeedRpm,
      y: values.map(figurePlotter(show, figure)),
      label: null,
      dotted: true,
    },
  ];
}

function bandOf(
  { show }: MatchInView,
  { combination, curve, bands }: MatchedInView,
  figure: keyof typeof SHOWN_FIGURES,
): ChartBand[] {
  if (bands === null) return [];
  const plotted = figurePlotter(show, figure);
  return [
    {
      style: { combination: combination.combination },
      x: curve.engineSpeedRpm,
      low: bands[figure].low.map(plotted),
      high: bands[figure].high.map(plotted),
    },
  ];
}

const TAPS: Record<MatchInput['tap'], string> = {
  manifold: 'in the manifold',
  'before throttle': 'before the throttle',
  'compressor outlet': 'at the compressor',
};

function tapNote(matched: readonly MatchedInView[]): string {
  const taps = new Set(matched.map(({ combination }) => combination.input.tap));
  const [only] = taps;
  return taps.size === 1 && only ? TAPS[only] : 'taps differ';
}

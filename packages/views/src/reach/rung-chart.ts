import type { ChartBand, ChartDescription, ChartLine, ChartPanel, LineStyle } from '@pullbook/charts';
import { type QuantityKind, torqueFromPower } from '@pullbook/core/quantity';
import type { Rung, RungCurve } from '@pullbook/core/reach';
import type { ReachBundle } from '../reach-model.ts';
import { correctionName } from '../standard-name.ts';
import { inSentence, listed } from '../wording.ts';
import { NOW, type ReachInView } from './reach-in-view.ts';
import { hasBand, phrase, powerBand, targetText } from './reach-words.ts';

interface Drawn {
  key: string;
  name: string;
  style: LineStyle;
  curve: RungCurve;
}

export type Figure = 'power' | 'torque' | 'boost';

const PANELS: readonly { figure: Figure; title: string; kind: QuantityKind; share: number }[] = [
  { figure: 'power', title: 'Power', kind: 'power', share: 1.6 },
  { figure: 'torque', title: 'Torque', kind: 'torque', share: 1 },
  { figure: 'boost', title: 'Boost', kind: 'gaugePressure', share: 1 },
];

/** What is asked for, as a line or a point; its figure is all that a narrow picture has room for. */
const TARGET = 'target';

/** The engine as it is, and the rung beside it where another is chosen, by the key of its line. */
export function drawnOf(view: ReachInView): Drawn[] {
  const { now, chosen, chosenKey, combination, name } = view;
  const asIs: Drawn[] = now === null ? [] : [{ key: 'Now', name, style: { combination }, curve: now.curve }];
  return chosen === null || chosen === now
    ? asIs
    : [
        ...asIs,
        {
          key: chosenKey,
          name: nameOf(view, chosen),
          style: { combination: combination + 1 },
          curve: chosen.curve,
        },
      ];
}

/** What a rung's line is called: its first change without what it is in place of, and how many more. */
function nameOf({ options }: ReachInView, { changes }: Rung): string {
  const [first, ...more] = changes;
  if (first === undefined) return NOW;
  const [words = ''] = inSentence(phrase(first.said, options)).split(' in place of ');
  return more.length === 0 ? words : `${words} and ${more.length} more`;
}

/** Power with the target, torque and boost over engine speed: now, the rung with its band, and as thin dotted lines what was measured. */
export function rungChart(view: ReachInView): ChartDescription {
  const { show, standard } = view;
  const drawn = drawnOf(view);
  const speeds = drawn.flatMap(({ curve }) => curve.engineSpeedRpm);
  const xRange: [number, number] = speeds.length === 0 ? [0, 1] : [Math.min(...speeds), Math.max(...speeds)];
  const panels = PANELS.map(({ figure, title, kind, share }): ChartPanel => {
    const pulled = measuredLine(view, figure, kind);
    const target = targetLine(view, figure, xRange);
    const notes = [
      ...(figure === 'power' ? [`computed, ${correctionName(standard.id)}`] : []),
      ...(pulled.length > 0 && figure === 'torque' ? ['dots: measured'] : []),
      ...(figure === 'boost' && view.target.boostCap !== null ? ['line: at most'] : []),
    ];
    return {
      id: figure,
      title,
      unit: show.unit(kind),
      note: notes.join('; '),
      decimals: 0,
      share,
      zeroLine: figure === 'boost',
      lines: [...pulled, ...target, ...drawn.flatMap((one) => line(view, one, figure, kind))],
      bands: drawn.flatMap((one) => bandOf(view, one, figure, kind)),
      marks: figure === 'power' ? targetMark(view) : [],
    };
  }).filter(({ lines }) => lines.some(({ y }) => y.some((value) => value !== null)));
  return {
    xTitle: 'Engine speed',
    xUnit: show.unit('engineSpeed'),
    xRange,
    xWindow: windowOf(view),
    panels,
    decimalMark: show.options.decimalMark,
    alternative: alternativeOf(view, panels, drawn),
  };
}

/** Values of a figure over the nodes of its curve, inside units; `null`: it has none. */
export function valuesOf(curve: RungCurve, figure: Figure): number[] | null {
  if (figure === 'boost') return curve.boost?.value ?? null;
  if (figure === 'power') return curve.power.value;
  return curve.power.value.map((power, node) => torqueFromPower(power, curve.engineSpeedRpm[node]!));
}

/** The same of what was measured. */
export function measuredValues(
  { engineSpeedRpm, power, boost }: NonNullable<ReachBundle['measured']>,
  figure: Figure,
): number[] | null {
  if (figure === 'boost') return boost;
  if (figure === 'power') return power;
  return power.map((value, node) => torqueFromPower(value, engineSpeedRpm[node]!));
}

/** Ends of its band over the nodes; `null`: not come yet. */
export function bandValues(curve: RungCurve, figure: Figure): { low: number[]; high: number[] } | null {
  const of = figure === 'boost' ? curve.boost : curve.power;
  if (
    of === null ||
    !of.value.some((value, node) => hasBand({ value, low: of.low[node]!, high: of.high[node]! }))
  )
    return null;
  if (figure !== 'torque') return of;
  const turned = (ends: number[]) =>
    ends.map((power, node) => torqueFromPower(power, curve.engineSpeedRpm[node]!));
  return { low: turned(of.low), high: turned(of.high) };
}

function line({ show }: ReachInView, drawn: Drawn, figure: Figure, kind: QuantityKind): ChartLine[] {
  const values = valuesOf(drawn.curve, figure);
  if (values === null) return [];
  return [
    {
      id: drawn.key,
      style: drawn.style,
      weight: 'mean',
      x: drawn.curve.engineSpeedRpm,
      y: values.map((value) => show.plotted(value, kind)),
      label: { key: drawn.key, name: figure === 'power' ? drawn.name : '', value: null },
    },
  ];
}

function bandOf(
  { show }: ReachInView,
  { curve, style }: Drawn,
  figure: Figure,
  kind: QuantityKind,
): ChartBand[] {
  const band = bandValues(curve, figure);
  if (band === null) return [];
  const plotted = (ends: number[]) => ends.map((value) => show.plotted(value, kind));
  return [{ style, x: curve.engineSpeedRpm, low: plotted(band.low), high: plotted(band.high) }];
}

function measuredLine(
  { bundle, combination, show }: ReachInView,
  figure: Figure,
  kind: QuantityKind,
): ChartLine[] {
  const measured = bundle?.measured ?? null;
  if (measured === null) return [];
  const { engineSpeedRpm: x } = measured;
  const values = measuredValues(measured, figure);
  if (!values?.some(Number.isFinite)) return [];
  return [
    {
      id: 'measured',
      style: { combination },
      weight: 'pull',
      x,
      y: values.map((value) => show.plotted(value, kind)),
      label: null,
      dotted: true,
    },
  ];
}

/** The power asked for across the speeds it is asked at; the boost that may not be passed. */
function targetLine({ show, target }: ReachInView, figure: Figure, xRange: [number, number]): ChartLine[] {
  const level = (value: number, kind: QuantityKind, key: string, x: [number, number]): ChartLine => ({
    id: TARGET,
    style: 'ink',
    weight: 'pull',
    x,
    y: [show.plotted(value, kind), show.plotted(value, kind)],
    label: { key, name: '', value: null },
  });
  if (figure === 'boost')
    return target.boostCap === null
      ? []
      : [level(target.boostCap, 'gaugePressure', show.quantity(target.boostCap, 'gaugePressure'), xRange)];
  if (figure !== 'power' || target.what === 'power at a speed') return [];
  const over = target.what === 'average power' ? (target.windowRpm ?? xRange) : xRange;
  return [level(target.power, 'power', show.power(target.power), over)];
}

/** Power at one speed is a point. */
function targetMark({ show, target }: ReachInView): ChartPanel['marks'] {
  const y = show.plotted(target.power, 'power');
  if (target.what !== 'power at a speed' || target.atRpm === null || y === null) return [];
  return [
    { style: 'ink', x: target.atRpm, y, text: `${show.power(target.power)} asked for`, stillClimbing: false },
  ];
}

function windowOf({ show, target }: ReachInView): ChartDescription['xWindow'] {
  if (target.what !== 'average power' || target.windowRpm === null) return null;
  return { range: target.windowRpm, text: `average from ${show.speedRange(target.windowRpm)}` };
}

function alternativeOf(view: ReachInView, panels: readonly ChartPanel[], drawn: readonly Drawn[]): string {
  const { show, target, chosen, now } = view;
  const names = listed(panels.map(({ title }) => title.toLowerCase()));
  const of = listed(drawn.map(({ key, name }) => (key === 'Now' ? `${name} as it is now` : name)));
  const peaks = [now, chosen === now ? null : chosen].flatMap((rung) => {
    if (rung === null) return [];
    const band = powerBand(show, rung.peakPower);
    return [
      `${rung === now ? 'Now' : 'The way'}: at most ${show.power(rung.peakPower.value)}${band === '' ? '' : ` (${band})`} at ${show.speed(rung.peakPower.atRpm)}.`,
    ];
  });
  return [
    `Computed ${names} over engine speed of ${of}.`,
    ...peaks,
    `The target is ${targetText(show, target)}.`,
  ].join(' ');
}

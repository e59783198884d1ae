import type { ChartBand, ChartDescription, ChartLine } from '@pullbook/charts';
import type { MatchInView } from './match-in-view.ts';
import { figureAt, toldSpeed } from './match-in-view.ts';
import { figurePlotter, matchedName } from './match-words.ts';

/** Power at the crankshaft, from the bottom: what the brake gets, what the supercharger takes, what friction takes. */
export function powerGoes(view: MatchInView): ChartDescription {
  const { show, compared, reference } = view;
  const subject = compared ?? reference;
  const x = subject?.curve.engineSpeedRpm ?? [];
  const style = { combination: subject?.combination.combination ?? 0 };
  const figures = subject?.curve.figures;
  const sumOf = (...names: ('brakePower' | 'drivePower' | 'frictionPower')[]) =>
    x.map((_, node) => names.reduce((sum, name) => sum + (figures?.[name][node] ?? Number.NaN), 0));
  const brake = sumOf('brakePower');
  const driven = sumOf('brakePower', 'drivePower');
  const all = sumOf('brakePower', 'drivePower', 'frictionPower');
  const plotted = (values: readonly number[]) => values.map(figurePlotter(show, 'brakePower'));
  const lastOf = (name: 'brakePower' | 'drivePower' | 'frictionPower') => {
    const value = figures?.[name].findLast(Number.isFinite);
    return value === undefined ? null : show.power(value);
  };
  const layer = (
    name: string,
    [low, high]: [readonly number[], readonly number[]],
    look: { style: ChartBand['style']; fill: 'strong' | 'middle' | 'faint'; value: string | null },
  ): ChartBand => ({
    style: look.style,
    x,
    low: plotted(low),
    high: plotted(high),
    layer: { name, value: look.value, fill: look.fill },
  });
  const line = (id: string, values: readonly number[], own: ChartLine['style']): ChartLine => ({
    id,
    style: own,
    weight: own === 'ink' ? 'pull' : 'mean',
    x,
    y: plotted(values),
    label: null,
  });
  return {
    xTitle: 'Engine speed',
    xUnit: show.unit('engineSpeed'),
    xRange: x.length === 0 ? [0, 1] : [x[0]!, x.at(-1)!],
    xWindow: null,
    panels: [
      {
        id: 'powerGoes',
        title: 'Power',
        unit: show.unit('power'),
        note: subject === null ? '' : `${matchedName(subject)}, computed`,
        decimals: 0,
        share: 1,
        zeroLine: true,
        lines: [line('indicated', all, 'ink'), line('driven', driven, 'ink'), line('brake', brake, style)],
        bands: [
          layer('Brake', [brake.map(() => 0), brake], { style, fill: 'strong', value: lastOf('brakePower') }),
          layer('Drive', [brake, driven], { style: 'ink', fill: 'middle', value: lastOf('drivePower') }),
          layer('Friction', [driven, all], { style: 'ink', fill: 'faint', value: lastOf('frictionPower') }),
        ],
        marks: [],
      },
    ],
    decimalMark: show.options.decimalMark,
    alternative: alternativeOf(view),
  };
}

function alternativeOf(view: MatchInView): string {
  const { show, compared, reference } = view;
  const subject = compared ?? reference;
  const at = toldSpeed(view);
  if (subject === null || at === null) return 'No power to divide: nothing is matched.';
  const power = (figure: 'brakePower' | 'drivePower' | 'frictionPower' | 'indicatedPower') =>
    show.power(figureAt(subject, figure, at));
  return `Of ${power('indicatedPower')} at ${show.speed(at)} the brake gets ${power('brakePower')}, the supercharger takes ${power('drivePower')} and friction ${power('frictionPower')}. Computed, ${matchedName(subject)}.`;
}

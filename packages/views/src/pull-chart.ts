import type { ChartDescription, ChartPanel } from '@pullbook/charts';
import { type GriddedCurve, MEANINGS, type Pull, type PullView } from '@pullbook/core/pull';
import { meaningDisplay } from './channel-display.ts';
import { plottedCurve } from './curve-panels.ts';
import type { CursorTable } from './model.ts';
import type { Showing } from './showing.ts';
import { standardName } from './standard-name.ts';
import { inSentence, listed } from './wording.ts';

const PANELS = [
  { meaning: 'power', share: 1.5 },
  { meaning: 'torque', share: 1.1 },
  { meaning: 'boost', share: 0.8 },
  { meaning: 'lambda', share: 0.6 },
] as const;

/** One pull's gridded curves over engine speed; `null` where it has none. */
export function pullChart(pull: Pull, view: PullView, show: Showing): ChartDescription | null {
  const { curve } = view;
  if (!curve) return null;
  const panels = PANELS.flatMap(({ meaning, share }): ChartPanel[] => {
    const values = curve.channels.get(meaning);
    if (!values?.some(Number.isFinite)) return [];
    const { label, kind } = MEANINGS[meaning];
    const isCorrected = meaning === 'power' || meaning === 'torque';
    const peak = meaning === 'power' ? view.peakPower : meaning === 'torque' ? view.peakTorque : null;
    const height = peak ? show.plotted(peak.value, kind) : null;
    return [
      {
        id: meaning,
        title: label,
        unit: meaning === 'lambda' ? 'λ' : show.unit(kind),
        note: isCorrected
          ? standardName(view.correction)
          : meaning === 'boost'
            ? (pull.places.boostTap ?? '')
            : '',
        decimals: meaning === 'lambda' ? 2 : 0,
        share,
        zeroLine: meaning === 'boost',
        lines: [
          {
            id: pull.id,
            style: { combination: 0 },
            weight: 'mean',
            ...plottedCurve({ show }, curve.engineSpeedRpm, values, meaning),
            label: null,
          },
        ],
        bands: [],
        marks:
          peak && height !== null
            ? [
                {
                  style: { combination: 0 },
                  x: withinNodes(peak.atRpm, curve),
                  y: height,
                  text: peak.stillClimbing
                    ? `${show.quantity(peak.value, kind, { decimals: 0 })}, still climbing`
                    : show.peak(peak, meaning === 'torque' ? 'torque' : 'power'),
                  stillClimbing: peak.stillClimbing,
                },
              ]
            : [],
      },
    ];
  });
  const reached = panels.flatMap((panel) => panel.lines.flatMap((line) => line.x));
  if (reached.length === 0) return null;
  const xRange: [number, number] = [
    reached.reduce((one, other) => Math.min(one, other)),
    reached.reduce((one, other) => Math.max(one, other)),
  ];
  const highest = view.peakPower ? ` Highest power ${show.peak(view.peakPower, 'power')}.` : '';
  return {
    xTitle: 'Engine speed',
    xUnit: show.unit('engineSpeed'),
    xRange,
    xWindow: null,
    panels,
    decimalMark: show.options.decimalMark,
    alternative: `${pull.name}: ${listed(panels.map(({ title }) => inSentence(title)))} from ${show.speedRange(xRange)}.${highest}`,
  };
}

/** The last accepted row may lie half a bin beyond the last node, where the drawn line ends. */
function withinNodes(rpm: number, { engineSpeedRpm }: GriddedCurve): number {
  const last = engineSpeedRpm.at(-1) ?? rpm;
  return Math.round(Math.min(Math.max(rpm, engineSpeedRpm[0] ?? rpm), last));
}

/** Every channel of the curve at every node. */
export function pullCursor(curve: GriddedCurve | null, show: Showing): CursorTable | null {
  const meanings = [...(curve?.channels.keys() ?? [])].filter(
    (meaning) =>
      meaning !== 'time' && meaning !== 'engineSpeed' && curve?.channels.get(meaning)?.some(Number.isFinite),
  );
  if (!curve || meanings.length === 0) return null;
  const place = (meaning: string) => ['power', 'torque', 'boost', 'lambda'].indexOf(meaning);
  const ordered = meanings.toSorted((one, other) => (place(one) + 1 || 99) - (place(other) + 1 || 99));
  const power = curve.channels.get('power') ?? new Float64Array();
  const highest = power.reduce(
    (best, value, node) =>
      value > (power[best] ?? Number.NEGATIVE_INFINITY) || !Number.isFinite(power[best]) ? node : best,
    0,
  );
  return {
    at: [...curve.engineSpeedRpm],
    columns: [{ key: 'This pull', combination: 0 }],
    rows: ordered.map((meaning) => {
      const display = meaningDisplay(meaning, show);
      return {
        id: meaning,
        name: display.label,
        unit: display.unit,
        cells: [Array.from(curve.channels.get(meaning)!, display.number)],
      };
    }),
    start: highest,
  };
}

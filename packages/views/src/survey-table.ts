import { type SurveyFigures, surveyFigures } from '@pullbook/core/trial';
import type { ShownTable } from './model.ts';
import { type CombinationInTrial, fullName, type TrialInView } from './trial-in-view.ts';

const LITRE = 1e-3;

/** Engines of different size side by side: per litre, as mean effective pressure, by piston speed. `null`: no survey. */
export function surveyTable(view: TrialInView): ShownTable | null {
  const engines = surveyed(view);
  if (engines.length === 0) return null;
  const { show, comparison } = view;
  const window = comparison?.averagesWindowRpm;
  const over = window ? `, average from ${show.speedRange(window)}` : '';
  const row = (name: string, unit: string, cell: (one: SurveyFigures) => string) => ({
    name,
    unit,
    cells: engines.map(({ survey }) => cell(survey)),
  });
  const perLitre = (value: number | null) =>
    show.number((value ?? Number.NaN) * LITRE, 'power', { decimals: 1 });
  const pressure = (value: number | null) =>
    show.number(value ?? Number.NaN, 'pressureDifference', { decimals: 0 });
  const speed = (value: number | null) => show.number(value ?? Number.NaN, 'speed');
  const powerUnit = `${show.unit('power')}/L`;
  const rows = [
    row('Displacement', show.unit('volume'), ({ displacement }) =>
      show.number(displacement ?? Number.NaN, 'volume', { decimals: 0 }),
    ),
    row('Highest power per litre', powerUnit, (one) => perLitre(one.peakPowerPerDisplacement)),
    ...(window
      ? [row(`Power per litre${over}`, powerUnit, (one) => perLitre(one.meanPowerPerDisplacement))]
      : []),
    row('Mean effective pressure at the highest torque', show.unit('pressureDifference'), (one) =>
      pressure(one.peakMeanEffectivePressure),
    ),
    ...(window
      ? [
          row(`Mean effective pressure${over}`, show.unit('pressureDifference'), (one) =>
            pressure(one.averageMeanEffectivePressure),
          ),
        ]
      : []),
    row('Mean piston speed at the highest power', show.unit('speed'), (one) =>
      speed(one.meanPistonSpeedAtPeakPower),
    ),
  ];
  return {
    id: 'survey',
    title: 'Engines side by side',
    columns: engines.map(({ item }) => ({ text: item.key, combination: item.index })),
    rows,
  };
}

/** What a reader of a survey must know: what it is not, and whose figures lack. */
export function surveyCaveats(view: TrialInView): string[] {
  if (view.state !== 'survey') return [];
  const lacking = surveyed(view).flatMap(({ item, survey }) =>
    survey.missing === null
      ? []
      : [`No figure per litre of ${fullName(item)}: ${survey.missing}. Write it on its sheet.`],
  );
  return [
    'A survey: the engines differ in more than one part, so a difference between them belongs to no single part. Mean effective pressure is that of four-stroke engines.',
    ...lacking,
  ];
}

function surveyed(view: TrialInView): { item: CombinationInTrial; survey: SurveyFigures }[] {
  if (view.state !== 'survey') return [];
  return view.combinations.flatMap((item) =>
    item.figures === null || item.combination === null
      ? []
      : [{ item, survey: surveyFigures(item.combination.sheet, item.figures) }],
  );
}

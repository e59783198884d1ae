import { beyondMeasured } from '@pullbook/core/airpath';
import type { ShownTable } from '../model.ts';
import { bandAt, figureAt, type MatchedInView, type MatchInView } from './match-in-view.ts';
import {
  figureNumber,
  figureUnit,
  rangeNumbers,
  SHOWN_FIGURES,
  type ShownFigure,
  STATE_WORDS,
} from './match-words.ts';

const STEP_RPM = 500;
const COLUMNS = [
  'brakePower',
  'boost',
  'manifoldTemperature',
  'airFlow',
  'drivePower',
] as const satisfies ShownFigure[];

/** The figures of each combination at whole 500 r/min, each with its band where that is known, and where on the map it lies badly. */
export function matchTable(view: MatchInView): ShownTable {
  const { matched, show } = view;
  const own = [...new Set(matched.flatMap(({ curve }) => curve.engineSpeedRpm))].sort(
    (one, other) => one - other,
  );
  const whole = own.filter((rpm) => rpm % STEP_RPM === 0);
  // A step test on odd speeds has no whole ones: then all of its own.
  const speeds = whole.length > 0 ? whole : own;
  const worthSaying = matched
    .map((one) => ({ combination: one.combination, stateAt: statesOf(one) }))
    .filter(({ stateAt }) => speeds.some((rpm) => stateAt(rpm) !== ''));
  return {
    id: 'match-at-speeds',
    title: 'At chosen speeds, computed',
    columns: [
      ...COLUMNS.flatMap((figure) =>
        matched.map(({ combination: { key, combination } }) => ({
          text: `${SHOWN_FIGURES[figure].name} ${key}, ${figureUnit(show, figure)}`,
          combination,
        })),
      ),
      ...worthSaying.map(({ combination: { key, combination } }) => ({
        text: `On the map, ${key}`,
        combination,
      })),
    ],
    rows: speeds.map((rpm) => ({
      name: show.number(rpm, 'engineSpeed'),
      unit: show.unit('engineSpeed'),
      cells: [
        ...COLUMNS.flatMap((figure) => matched.map((one) => cellOf(view, one, figure, rpm))),
        ...worthSaying.map(({ stateAt }) => stateAt(rpm)),
      ],
    })),
  };
}

function cellOf({ show }: MatchInView, one: MatchedInView, figure: ShownFigure, rpm: number): string {
  const number = figureNumber(show, figure, figureAt(one, figure, rpm));
  const band = rangeNumbers(show, figure, bandAt(one, one.bands, figure, rpm));
  // The band holds together where a narrow cell breaks.
  return band === '' ? number : `${number} (${band.replaceAll(' ', '\u00a0')})`;
}

/** Where a match lies badly, and beside a worse state that the map was not measured there; of a rated map all is assumed and said so elsewhere. */
function statesOf({ combination: { input }, curve }: MatchedInView): (rpm: number) => string {
  const isBeyond = input.compressor.map.form === 'points' ? beyondMeasured(input, curve) : [];
  return (rpm) => {
    const node = curve.engineSpeedRpm.indexOf(rpm);
    const state = curve.state[node];
    if (state === undefined) return '';
    const beyond = STATE_WORDS['beyond the measured map'];
    return isBeyond[node] === true && STATE_WORDS[state] !== beyond
      ? `${STATE_WORDS[state]}, ${beyond}`
      : STATE_WORDS[state];
  };
}

import type { EdgeRemark, MatchedReport, MatchPoint } from '@pullbook/workshop';
import type { Context } from '../context.ts';
import type { Shared } from '../shared-options.ts';
import { figure, number } from './figure.ts';
import { findingLines } from './findings.ts';
import { remarkLines } from './remarks.ts';
import { table } from './table.ts';

type View = Shared['view'];

/** So many rows fit a terminal; the JSON and the CSV have every speed. */
const MOST_ROWS = 14;

interface Around {
  title: string;
  left: readonly { name: string; reason: EdgeRemark }[];
  remarks: readonly EdgeRemark[];
  cautions: readonly string[];
  draws: number | null;
  seed: number | null;
}

/** Matches for a person: a table each, what they rest on, and the cautions last. */
export function matchLines(
  matches: readonly MatchedReport[],
  around: Around,
  shared: Shared,
  context: Context,
): string[] {
  const { bold, dim } = context.colours;
  return [
    bold(around.title),
    ...(around.draws === null
      ? []
      : [dim(`In brackets: 95 of 100 draws (${around.draws} draws, seed ${around.seed}).`)]),
    ...matches.flatMap((match, place) => [
      '',
      ...oneMatch(match, newIn(match, matches.slice(0, place)), shared, context),
    ]),
    ...around.left.flatMap(({ name, reason }) => ['', `${name}: no match. ${reason.message}`]),
    ...(around.remarks.length === 0 ? [] : ['', ...remarkLines(around.remarks, context)]),
    '',
    ...around.cautions.map((one) => bold(one)),
  ];
}

/** What is assumed here and was not said of a match before. */
function newIn({ assumptions }: MatchedReport, before: readonly MatchedReport[]): EdgeRemark[] {
  const said = new Set(before.flatMap((one) => one.assumptions.map(({ message }) => message)));
  return assumptions.filter(({ message }) => !said.has(message));
}

function oneMatch(
  match: MatchedReport,
  assumed: readonly EdgeRemark[],
  { view }: Shared,
  context: Context,
): string[] {
  const { bold } = context.colours;
  const { points, measured, drive, fit, findings } = match;
  const atSpeed = new Map((measured?.points ?? []).map((point) => [point.engineSpeedRpm, point]));
  const beside = (cells: string[]) => (measured === null ? [] : cells);
  const banded = (point: MatchPoint, name: string, unit: string, kind: 'power' | 'gaugePressure') => {
    const value = (key: string) => bare(point[key], unit, kind, view);
    return typeof point[`${name}Low`] === 'number'
      ? `${value(name)} (${value(`${name}Low`)} to ${value(`${name}High`)})`
      : value(name);
  };
  const unitOf = (unit: string, kind: 'power' | 'gaugePressure' | 'torque' | 'temperature') =>
    figure(1, unit, kind, view).split(/\s/u).at(-1) ?? '';
  return [
    bold(match.key === '' ? match.name : `${match.key}: ${match.name}`),
    `Air ${figure(match.airPressureKpa, 'kPa', 'absolutePressure', view)}, ${figure(match.airTemperatureC, '°C', 'temperature', view)}, ${number(match.relativeHumidityPercent, 0, view)} %. ${saidOfBaseline(match)} Map: ${match.map.name}${match.map.form === 'rated' ? ', assumed' : ''}.`,
    '',
    ...table([
      [
        'rpm',
        `Boost, ${unitOf('kPa', 'gaugePressure')}`,
        ...beside(['measured']),
        `Charge, ${unitOf('°C', 'temperature')}`,
        'Impeller, rpm',
        `Drive, ${unitOf('kW', 'power')}`,
        `Power, ${unitOf('kW', 'power')}`,
        ...beside(['measured']),
        `Torque, ${unitOf('N·m', 'torque')}`,
        'Where on the map',
      ],
      ...thinned(points).map((point) => [
        number(point.engineSpeedRpm, 0, view),
        banded(point, 'boostKpa', 'kPa', 'gaugePressure'),
        ...beside([bare(atSpeed.get(point.engineSpeedRpm)?.boostKpa, 'kPa', 'gaugePressure', view)]),
        bare(point.manifoldTemperatureC, '°C', 'temperature', view),
        bare(point.impellerSpeedRpm, 'rpm', 'engineSpeed', view),
        bare(point.drivePowerKw, 'kW', 'power', view),
        banded(point, 'brakePowerKw', 'kW', 'power'),
        ...beside([bare(atSpeed.get(point.engineSpeedRpm)?.brakePowerKw, 'kW', 'power', view)]),
        bare(point.brakeTorqueNm, 'N·m', 'torque', view),
        placeOf(point, match.map),
      ]),
    ]),
    '',
    `Drive: ${drive.kind}, ${number(drive.pulleyRatio, 3, view)} × ${number(drive.stepUp, 3, view)}, slip ${number(drive.slipPercent, 1, view)} %; at ${figure(drive.atEngineSpeedRpm, 'rpm', 'engineSpeed', view)} the impeller turns ${figure(drive.impellerSpeedRpm, 'rpm', 'engineSpeed', view)}${drive.maximumImpellerSpeedRpm === null ? '' : ` (its limit: ${figure(drive.maximumImpellerSpeedRpm, 'rpm', 'engineSpeed', view)})`}.`,
    ...(fit === null ? [] : fitLines(fit, context, view)),
    ...(findings.length === 0 ? [] : ['', bold('Findings'), ...findingLines(findings, context)]),
    ...(assumed.length === 0 ? [] : ['', bold('Assumed'), ...remarkLines(assumed, context)]),
  ];
}

function saidOfBaseline({ baseline: { origin, airFlowFrom, pullIds } }: MatchedReport): string {
  const from = {
    measured: `Without supercharger: ${pullIds.length} measured ${pullIds.length === 1 ? 'pull' : 'pulls'}`,
    scaled: 'Without supercharger: scaled, never measured',
    given: 'Without supercharger: as given in the file',
  }[origin];
  return `${from}, its air ${AIR_FROM[airFlowFrom]}.`;
}

const AIR_FROM: Record<MatchedReport['baseline']['airFlowFrom'], string> = {
  given: 'as given',
  'air flow': 'as measured',
  'fuel and mixture': 'by fuel and mixture',
  'torque and efficiency': 'by torque and a usual efficiency',
};

/** Of a rated map nothing is measured, which is said beside its name. */
const placeOf = ({ state, isBeyondMeasuredMap }: MatchPoint, { form }: MatchedReport['map']): string => {
  if (form === 'rated') return state === 'beyond the measured map' ? 'assumed' : `${state}, assumed`;
  const isHidden = isBeyondMeasuredMap && state !== 'beyond the measured map';
  return isHidden ? `${state}, beyond the measured map` : state;
};

function fitLines(fit: NonNullable<MatchedReport['fit']>, context: Context, view: View): string[] {
  return [
    '',
    context.colours.bold(
      `Fitted to ${fit.pullIds.length} boosted ${fit.pullIds.length === 1 ? 'pull' : 'pulls'}`,
    ),
    ...table([
      ['Factor', 'Before', 'Fitted', 'Spread', 'By'],
      ...fit.parameters.map((one) => [
        FACTORS[one.id] ?? one.id,
        number(one.prior, 3, view),
        number(one.value, 3, view),
        number(one.spread, 3, view),
        one.from.length === 0 ? 'nothing: stays' : one.from.join(', '),
      ]),
    ]),
    ...fit.readings.map(
      ({ strength, text, wouldSettle }) =>
        `  ${strength}: ${text}${wouldSettle === null ? '' : ` What would settle it: ${wouldSettle.charAt(0).toLowerCase()}${wouldSettle.slice(1)}`}`,
    ),
    ...remarkLines(fit.remarks, context),
  ];
}

const FACTORS: Record<string, string> = {
  headScale: 'head of the map',
  flowScale: 'flow of the map',
  swallowingScale: 'air swallowed',
  chargeHeat: 'heat of the charge',
  workFactor: 'work of the air',
  slip: 'slip of the belt',
};

/** Every row where they are few, else evenly thinned, the last one always there. */
function thinned(points: readonly MatchPoint[]): MatchPoint[] {
  const step = Math.ceil(points.length / MOST_ROWS);
  return points.filter((_, place) => (points.length - 1 - place) % step === 0);
}

/** The number alone, in the units shown; `–` where there is none. */
function bare(
  value: MatchPoint[string] | undefined,
  unit: string,
  kind: 'power' | 'gaugePressure' | 'torque' | 'temperature' | 'engineSpeed',
  view: View,
): string {
  if (typeof value !== 'number') return '–';
  return figure(value, unit, kind, view).replace(/\s+\S+$/u, '');
}

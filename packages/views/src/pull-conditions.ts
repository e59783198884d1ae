import { airState } from '@pullbook/core/air';
import {
  type Cell,
  calibrationsBehind,
  calibrationText,
  lagsInForce,
  MEANINGS,
  type Pull,
  type PullView,
} from '@pullbook/core/pull';
import type { PullPage } from './model.ts';
import type { Showing } from './showing.ts';
import { correctionName } from './standard-name.ts';

type Line = PullPage['conditions'][number];

/** What the pull was made under: air, correction, sweep, tune, places. What is not known says so. */
export function conditionsOf(pull: Pull, view: PullView, show: Showing, cell: Cell | null): Line[] {
  return [
    ...airLines(pull, show, cell),
    { label: 'Figures as they came', value: carriedText(pull, show) },
    ...sweepLines(pull, view, show),
    ...treatmentLines(pull, view, show),
    ...textLines({
      Spark: pull.tune.sparkAdvance,
      'Mixture aimed at': pull.tune.targetLambda,
      Jets: pull.tune.jets,
      'Fuel pressure': pull.tune.fuelPressure,
      'Into the charge cooler': pull.tune.coolerWater,
      'Fuel batch': pull.tune.fuelBatch,
      Tune: pull.tune.notes,
      'Boost read at': pull.places.boostTap,
      'Charge probe': pull.places.chargeProbe,
      'Inlet probe': pull.places.inletProbe,
      Cell: pull.cell ?? undefined,
      Operator: pull.operator ?? undefined,
      'Place in the session': pull.orderInSession === null ? undefined : `pull ${pull.orderInSession}`,
    }),
    ...calibrationsBehind(pull, cell).map((one) => ({
      label: `Calibration, ${one.instrument.name}`,
      value: calibrationText(one),
    })),
  ];
}

function airLines({ weather }: Pull, show: Showing, cell: Cell | null): Line[] {
  if (!weather) return [{ label: 'Air', value: 'not noted' }];
  const state = airState(weather);
  const lines: Line[] = [
    { label: 'Barometer at the station', value: show.quantity(weather.pressure, 'absolutePressure') },
    { label: 'Inlet air', value: show.quantity(weather.temperature, 'temperature') },
    { label: 'Altitude', value: altitudeText(weather.altitude, cell, show) },
  ];
  if (!state.ok) return lines;
  const { relativeHumidity, dryPressure, density } = state.value;
  return [
    ...lines,
    {
      label: 'Humidity',
      value: weather.humidity ? show.perCent(relativeHumidity, { decimals: 0 }) : 'not noted, taken as dry',
    },
    { label: 'Dry pressure', value: show.quantity(dryPressure, 'absolutePressure') },
    { label: 'Air density', value: show.quantity(density, 'density') },
  ];
}

function altitudeText(noted: number | null, cell: Cell | null, show: Showing): string {
  if (noted !== null) return show.height(noted);
  return cell?.altitude == null ? 'not noted' : `${show.height(cell.altitude)}, of the cell`;
}

function carriedText({ carried }: Pull, show: Showing): string {
  if (carried.standard === 'not stated') return 'not stated, taken as observed';
  if (carried.standard === 'unknown') return 'corrected, by what is not known; never converted';
  if (carried.standard === 'observed') return 'observed';
  const factor = carried.factor === null ? 'factor not known' : `factor ${show.factor(carried.factor)}`;
  return `corrected to ${correctionName(carried.standard)}, ${factor}`;
}

function sweepLines({ sweep, form }: Pull, { window, remarks }: PullView, show: Showing): Line[] {
  if (form === 'summary') return [];
  const rate = window?.sweepRateRpmPerS ?? null;
  const inertia = sweep.momentOfInertia;
  const inFile = { yes: 'already added back', no: 'not added back', unknown: 'not known whether added back' }[
    sweep.inertiaCompensated
  ];
  const isAddedHere = remarks.some(({ code }) => code === 'inertia-added');
  const added = isAddedHere ? `${inFile} in the file, added here` : inFile;
  return [
    {
      label: 'Sweep',
      value: rate === null ? 'rate not known' : `${show.quantity(rate, 'sweepRate')}, ${window?.direction}`,
    },
    {
      label: 'Inertia torque',
      value:
        inertia === null
          ? `moment of inertia not noted; ${added}`
          : `${added}; ${show.quantity(inertia, 'momentOfInertia')}`,
    },
  ];
}

/** Whether the curve's means are as wide as the shop's settings have them. */
export const isWidthOfShop = ({ curve, remarks }: PullView): boolean =>
  curve !== null && remarks.some(({ code }) => code === 'bin-width-of-shop');

/** What was set by hand about the reading; nothing for a pull that is read as it comes. */
function treatmentLines(pull: Pull, view: PullView, show: Showing): Line[] {
  const { windowRpm } = view.recipe;
  const { binWidthRpm } = pull.treatment;
  if (pull.form === 'summary') return [];
  const lags = lagsInForce(pull, view.recipe).map(
    ([meaning, lag]) =>
      `${MEANINGS[meaning].label} read ${show.seconds(lag)} ${lag > 0 ? 'earlier' : 'later'}`,
  );
  return [
    ...(windowRpm ? [{ label: 'Accepted window', value: `set by hand, ${show.speedRange(windowRpm)}` }] : []),
    ...(binWidthRpm !== null && view.curve?.kindOfRows === 'samples'
      ? [{ label: 'Bins', value: `set by hand, ${show.speed(binWidthRpm)}` }]
      : []),
    ...(isWidthOfShop(view)
      ? [{ label: 'Bins', value: `as the shop's settings have them, ${show.speed(view.curve!.binWidthRpm)}` }]
      : []),
    ...(lags.length > 0 ? [{ label: 'Lags', value: lags.join('; ') }] : []),
  ];
}

function textLines(texts: Record<string, string | undefined>): Line[] {
  return Object.entries(texts).flatMap(([label, value]) => (value ? [{ label, value }] : []));
}

import { powerFromTorque } from '../quantity/index.ts';
import type { Remark } from '../remark/index.ts';
import { acceptanceWindow } from './acceptance-window.ts';
import { acceptedRows } from './accepted-rows.ts';
import { boostOfPull, reachesBoost } from './boost-of-pull.ts';
import { curveChannels, valuesByMeaning } from './channels.ts';
import { carriedFactor, correctionOf } from './correction.ts';
import { gridCurve } from './grid-curve.ts';
import { gridHolds } from './grid-holds.ts';
import { torqueHiddenByInertia } from './inertia.ts';
import { kindOfRows } from './kind-of-rows.ts';
import { usableTime, withoutLag } from './lag.ts';
import type { Channel, ChannelMeaning, Pull, PullView, Recipe, Spike } from './model.ts';
import { fitPeak } from './peak.ts';
import { possibleValues } from './possible-values.ts';
import {
  cellNamed,
  type ShopReading,
  SILENT_SHOP,
  shopWidthRemarks,
  withAltitudeOfCell,
  withShopWidth,
} from './shop-reading.ts';
import { findSpikes } from './spikes.ts';
import { viewSummary } from './summary-view.ts';
import { torqueOfRows } from './torque-and-power.ts';
import { askedLags, lagsInForce, recipeFor } from './treatment.ts';
import { treatmentRemarks } from './treatment-remarks.ts';
import { outsideTypical } from './typical.ts';
import {
  LAG_NEEDS_TIME,
  noTorque,
  peakRemarks,
  SPEED_SPIKES,
  TIME_UNUSABLE,
  torqueAtFirstRow,
} from './view-remarks.ts';
import { factorColumnRemarks, weatherOfPull } from './weather-of-pull.ts';

/** Channels a spike test says nothing of: the clock, switches, and what nobody understands. */
const NOT_TESTED_FOR_SPIKES: readonly ChannelMeaning[] = ['time', 'throttle', 'correctionFactor', 'other'];

/** A way to come by a view: `viewPull`, or what remembers its views, since the same is the same. */
export type PullViewer = (pull: Pull, recipe: Recipe, shop?: ShopReading) => PullView;

/**
 * A pull turned into curves: lags taken out, the window found, spikes left out, torque and power brought to the standard
 * asked for, put over engine speed, peaks fitted. The pull itself is never altered. Where the recipe says nothing, the
 * pull's own treatment is used (`recipeFor`), then the shop's bin width and the height of its cell, and the remarks name it. All SI; curves in the correction that `correction` names. A pull that cannot make a curve comes back with `curve: null` and a remark that says why.
 *
 * `viewPull(pull, defaultRecipe('sae-j1349')).peakPower?.value` is the corrected peak power, W
 */
export function viewPull(written: Pull, asked: Recipe, shop: ShopReading = SILENT_SHOP): PullView {
  const pull = withAltitudeOfCell(written, cellNamed(shop.cells, written.cell));
  if (pull.form === 'summary') return viewSummary(pull, asked);
  const own = recipeFor(pull, asked);
  const recipe = withShopWidth(own, shop);
  const found = curveChannels(pull);
  if (!found.ok) return withoutCurve(pull, recipe, found.remarks);
  const remarks: Remark[] = [];
  const { channels, time } = inTime(pull, recipe, remarks);
  const { values, remarks: doubles } = valuesByMeaning(channels);
  const speedRpm = values.get('engineSpeed')!;
  const torqueRows = torqueOfRows(speedRpm, values.get('torque') ?? null, values.get('power') ?? null);
  const { window, holds, remarks: ofWindow } = acceptanceWindow(channels, { windowRpm: recipe.windowRpm });
  const kind = holds ? 'points' : kindOfRows(speedRpm, time);
  remarks.push(...doubles, ...torqueRows.remarks, ...ofWindow);
  if (window === null) return withoutCurve(pull, recipe, remarks);
  remarks.push(...treatmentRemarks(pull, recipe, kind), ...shopWidthRemarks(own, recipe, kind));

  const rows = acceptedRows(window);
  const boost = boostOfPull(pull, values);
  if (boost.boost !== null) values.set('boost', boost.boost);
  if (torqueRows.source === 'torque') values.delete('power');
  const looked = holds ?? (kind === 'samples' ? [window] : []);
  const spikes = looked.flatMap(({ fromRow, toRow }) => spikesOf(values, fromRow, toRow));
  const good = withoutSpikes(values, spikes);
  if (spikes.some((spike) => spike.meaning === 'engineSpeed')) remarks.push(SPEED_SPIKES);

  const { weather, remarks: ofWeather } = weatherOfPull(pull, values, rows);
  const correction = correctionOf({
    asked: recipe.correction,
    carried: pull.carried,
    weather,
    boosted: reachesBoost(boost.boost),
  });
  remarks.push(
    ...boost.remarks,
    ...ofWeather,
    ...factorColumnRemarks(pull.carried, values, rows),
    ...correction.remarks,
    ...outsideTypical(values, rows),
  );

  if (torqueRows.torque !== null) {
    const hidden = torqueHiddenByInertia(pull.sweep, recipe.addInertia, speedRpm, time, window);
    remarks.push(...hidden.remarks);
    const carried = carriedFactor(pull.carried) ?? 1;
    const source = good.get(torqueRows.source!)!;
    const torque = torqueRows.torque.map((value, row) =>
      Number.isNaN(source[row]!)
        ? Number.NaN
        : (value + carried * (hidden.torque?.[row] ?? 0)) * correction.multiplier,
    );
    good.set('torque', torque);
    good.set(
      'power',
      torque.map((value, row) => powerFromTorque(value, speedRpm[row]!)),
    );
  } else remarks.push(noTorque(pull));

  const speedsOfRows = good.get('engineSpeed')!;
  const onRows = { speedRpm: speedsOfRows, channels: good, rows };
  const { curve, remarks: ofGrid } = holds
    ? gridHolds(onRows, holds)
    : gridCurve(onRows, kind, recipe.binWidthRpm);
  remarks.push(...ofGrid);
  const peakOf = (meaning: 'power' | 'torque') =>
    curve.channels.has(meaning)
      ? fitPeak(curve.engineSpeedRpm, curve.channels.get(meaning)!, {
          kindOfRows: kind,
          count: curve.count,
          endRpm: window.windowRpm[1],
        })
      : null;
  const [peakPower, peakTorque] = [peakOf('power'), peakOf('torque')];
  remarks.push(...peakRemarks(peakPower, 'Power'), ...peakRemarks(peakTorque, 'Torque'));
  if (
    peakTorque !== null &&
    peakTorque.atRpm === firstFigure(curve.engineSpeedRpm, curve.channels.get('torque')!)
  )
    remarks.push(torqueAtFirstRow(peakTorque.atRpm));
  return {
    pullId: pull.id,
    recipe,
    correction: correction.applied,
    window,
    spikes,
    curve,
    peakPower,
    peakTorque,
    remarks,
  };
}

/** The channels with their lags taken out, and the time that can be relied on. */
function inTime(
  pull: Pull,
  recipe: Recipe,
  remarks: Remark[],
): { channels: Channel[]; time: Float64Array | null } {
  const time = usableTime(pull.channels.find((channel) => channel.meaning === 'time')?.values);
  if (time === null && pull.channels.some((channel) => channel.meaning === 'time'))
    remarks.push(TIME_UNUSABLE);
  if (time === null && askedLags(recipe).length > 0) remarks.push(LAG_NEEDS_TIME);
  const possible = possibleValues(pull.channels);
  remarks.push(...possible.remarks);
  const lags = new Map(lagsInForce(pull, recipe));
  const channels = possible.channels.map((channel) => {
    const lag = lags.get(channel.meaning);
    return time === null || lag === undefined
      ? channel
      : { ...channel, values: withoutLag(channel.values, time, lag) };
  });
  return { channels, time };
}

function spikesOf(
  values: ReadonlyMap<ChannelMeaning, Float64Array>,
  fromRow: number,
  toRow: number,
): Spike[] {
  return [...values]
    .filter(([meaning]) => !NOT_TESTED_FOR_SPIKES.includes(meaning))
    .flatMap(([meaning, series]) =>
      findSpikes(series, { fromRow, toRow }).map((spike) => ({ ...spike, meaning })),
    )
    .sort((a, b) => a.row - b.row);
}

function withoutSpikes(
  values: ReadonlyMap<ChannelMeaning, Float64Array>,
  spikes: readonly Spike[],
): Map<ChannelMeaning, Float64Array> {
  const good = new Map([...values].map(([meaning, series]) => [meaning, series.slice()] as const));
  for (const spike of spikes) good.get(spike.meaning)![spike.row] = Number.NaN;
  return good;
}

function withoutCurve(pull: Pull, recipe: Recipe, remarks: Remark[]): PullView {
  return {
    pullId: pull.id,
    recipe,
    correction: {
      asked: recipe.correction,
      standard: pull.carried.standard,
      factor: carriedFactor(pull.carried),
      reached: false,
    },
    window: null,
    spikes: [],
    curve: null,
    peakPower: null,
    peakTorque: null,
    remarks,
  };
}

function firstFigure(speedsRpm: Float64Array, values: Float64Array): number {
  return speedsRpm[values.findIndex(Number.isFinite)] ?? Number.NaN;
}

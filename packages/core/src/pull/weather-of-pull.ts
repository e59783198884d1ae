import type { AirReading } from '../air/index.ts';
import { median } from '../numeric/median.ts';
import { absolutePressure, figureOf, numberFigure, percentFigure, temperature } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { CarriedCorrection, ChannelMeaning, Pull } from './model.ts';

/** Weather entered for the pull, or else the medians of its own channels over the accepted rows. */
export function weatherOfPull(
  pull: Pull,
  values: ReadonlyMap<ChannelMeaning, Float64Array>,
  rows: readonly number[],
): { weather: AirReading | null; remarks: Remark[] } {
  if (pull.weather !== null) return { weather: pull.weather, remarks: [] };
  const typical = (meaning: ChannelMeaning) => {
    const channel = values.get(meaning);
    return channel === undefined ? Number.NaN : median(rows.map((row) => channel[row]!));
  };
  const pressure = typical('barometer');
  const inlet = typical('inletAirTemperature');
  if (!Number.isFinite(pressure) || !Number.isFinite(inlet)) return { weather: null, remarks: [] };
  const humidity = typical('relativeHumidity');
  return {
    weather: {
      pressure: absolutePressure(pressure),
      temperature: temperature(inlet),
      humidity: Number.isFinite(humidity) ? { route: 'relativeHumidity', ratio: humidity } : null,
      altitude: null,
    },
    remarks: [
      remark(
        'note',
        'weather-from-channels',
        said`No weather was entered; the pull's own channels are used: ${figureOf(pressure, 'absolutePressure')}, ${figureOf(inlet, 'temperature')}${
          Number.isFinite(humidity) ? said`, ${percentFigure(humidity)} humidity` : ', humidity unknown'
        }.`,
      ),
    ],
  };
}

/** A factor column away from 1, where nothing says whether torque already carries it. */
export function factorColumnRemarks(
  carried: CarriedCorrection,
  values: ReadonlyMap<ChannelMeaning, Float64Array>,
  rows: readonly number[],
): Remark[] {
  const channel = values.get('correctionFactor');
  if (channel === undefined || carried.standard !== 'not stated') return [];
  const factor = median(rows.map((row) => channel[row]!));
  if (!Number.isFinite(factor) || Math.abs(factor - 1) < 5e-4) return [];
  return [
    remark(
      'caution',
      'file-has-a-factor',
      said`The file has a correction factor of ${numberFigure(factor, 4)}, and nothing says whether its torque already carries it. It is taken as observed; if it was corrected, state the standard and this factor on the pull, or it is corrected twice.`,
    ),
  ];
}

import { median } from '../numeric/index.ts';
import { figureOf, percentFigure, rangeOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import { atTheTop, type PullAtHand } from './pull-at-hand.ts';
import { sheetText } from './sheet-words.ts';

/** (κ − 1)/κ of air, κ = 1.4. */
const EXPONENT = 0.4 / 1.4;

/**
 * Share of the heat that a perfect compressor would need: T₁ (π^((κ−1)/κ) − 1) / (T₂ − T₁), temperatures in K. From 300 K to
 * 390 K at a pressure ratio of 2 it is 0.730.
 */
export const compressorEfficiency = (inlet: number, discharge: number, ratio: number): number =>
  (inlet * (ratio ** EXPONENT - 1)) / (discharge - inlet);

/** V14: discharge temperature against pressure ratio. V15: charge against the air that cools it. */
export const compressorHeat = (at: PullAtHand): Finding[] => [...efficiency(at), ...belowWhatCools(at)];

function efficiency(at: PullAtHand): Finding[] {
  const pressure = at.values('dischargePressure') ?? at.values('boost');
  const [discharge, inlet] = [at.values('dischargeTemperature'), inletOf(at)];
  if (pressure === null || discharge === null || inlet === null || at.ambient === null) return [];
  const ambient = at.ambient;
  const value = atTheTop(
    pressure.map((gauge, node) => {
      const ratio = 1 + gauge / ambient;
      const inletHere = inlet(node);
      return ratio > at.limit('V14.ratio') && discharge[node]! > inletHere
        ? compressorEfficiency(inletHere, discharge[node]!, ratio)
        : Number.NaN;
    }),
  );
  const [low, high] = [at.limit('V14.low'), at.limit('V14.high')];
  if (!Number.isFinite(value) || (value >= low && value <= high)) return [];
  const behindCooler = at.values('dischargePressure') === null;
  return [
    at.find('V14', {
      input: 'Discharge temperature and pressure ratio',
      kind: 'ratio',
      value,
      threshold: value < low ? low : high,
      said: said`At the top the discharge temperature means a compressor efficiency of ${percentFigure(value)}; ${percentFigure(low)} to ${percentFigure(high)} is usual. ${
        value > high
          ? 'A late or wet probe reads too cold, or it sits behind the cooler.'
          : 'A probe heated by its place, recirculated air, or a compressor far off its map.'
      }${behindCooler ? ' The pressure is that of the manifold, less than at the discharge.' : ''}`,
    }),
  ];
}

/** Inlet temperature at a node: logged, else the pull's weather; `null`: neither. */
function inletOf(at: PullAtHand): ((node: number) => number) | null {
  const logged = at.values('inletAirTemperature');
  if (logged !== null) return (node) => logged[node]!;
  const entered = at.pull.weather?.temperature;
  return entered === undefined ? null : () => entered;
}

function belowWhatCools(at: PullAtHand): Finding[] {
  const charge = at.values('chargeTemperature');
  const inlet = inletOf(at);
  const isAirToAir = /air[ -]to[ -]air/.test(sheetText(at.sheet, 'cooler', 'type'));
  if (charge === null || inlet === null || !isAirToAir) return [];
  const value = median(charge.map((kelvin, node) => inlet(node) - kelvin).filter(Number.isFinite));
  const threshold = at.limit('V15.below');
  if (!(value > threshold)) return [];
  const kind = 'temperatureDifference';
  return [
    at.find('V15', {
      input: 'Charge and inlet air',
      kind,
      value,
      threshold,
      said: said`Behind an air-to-air cooler the charge is ${figureOf(value, kind)} colder than the inlet air (${rangeOf(inlet(0) - value, inlet(0), 'temperature', ' against ')}); it cannot be. A soaked core or a wet probe does it, else check both probes.`,
    }),
  ];
}

import type { MatchFigure } from '../airpath/index.ts';
import type { BoostedPull } from './model.ts';

/** How far a reading may lie from a match that is right but for its parameters: a share of the figure and a floor, one deviation. */
export interface ReadingError {
  share: number;
  floor: number;
}

/** A channel of a boosted pull, and the figure of the match that it is held against. */
export interface FittedChannel {
  channel: Exclude<keyof BoostedPull, 'pullId' | 'air' | 'engineSpeedRpm'>;
  figure: MatchFigure;
  /** In a sentence: `boost`. */
  name: string;
  /** K where true, else a share of the figure. */
  isTemperature: boolean;
  /** Exponent of the fitted swallowing scale in the reading's own bias; see `channelsFor`. Missing: none. */
  followsSwallowing?: number;
  /** One and the same in all pulls at all speeds: gauges, the day. */
  common: ReadingError;
  /** Of the shape over speed, alike in all pulls: what the model leaves out. Neighbouring speeds share it. */
  shape: ReadingError;
  /** One for each pull, at all its speeds. */
  pull: ReadingError;
  /** Of each speed by itself. */
  node: ReadingError;
}

const share = (value: number, floor = 0): ReadingError => ({ share: value, floor });
const floor = (value: number): ReadingError => ({ share: 0, floor: value });

/** Errors of gauges and pulls: common practice, no source. Those of the shape: what a match of textbook terms leaves (the same). */
export const FITTED_CHANNELS: readonly FittedChannel[] = [
  {
    channel: 'boost',
    figure: 'boost',
    name: 'boost',
    isTemperature: false,
    // What a gauge is off it is off at the next pulley too: the fit may follow it, so it is not an error here.
    common: share(0.002, 100),
    shape: share(0.003, 80),
    pull: share(0.004, 100),
    node: share(0.004, 150),
  },
  {
    channel: 'brakePower',
    figure: 'brakePower',
    name: 'power',
    isTemperature: false,
    // The same brake measured the baseline: what differs from day to day is in the prior of the work already.
    common: share(0.003),
    shape: share(0.005),
    pull: share(0.007),
    node: share(0.005),
  },
  {
    channel: 'chargeTemperature',
    figure: 'manifoldTemperature',
    name: 'charge temperature',
    isTemperature: true,
    common: floor(2),
    shape: floor(3),
    pull: floor(2.5),
    node: floor(1),
  },
  {
    channel: 'dischargeTemperature',
    figure: 'dischargeTemperature',
    name: 'discharge temperature',
    isTemperature: true,
    common: floor(3),
    shape: floor(4),
    pull: floor(2.5),
    node: floor(1),
  },
  {
    channel: 'airFlow',
    figure: 'airFlow',
    name: 'air',
    isTemperature: false,
    common: share(0.03),
    shape: share(0.015),
    pull: share(0.01),
    node: share(0.01),
  },
  {
    channel: 'impellerSpeedRpm',
    figure: 'impellerSpeedRpm',
    name: 'shaft speed',
    isTemperature: false,
    common: share(0.002),
    shape: share(0.002),
    pull: share(0.001),
    node: share(0.002),
  },
];

/** r/min over which two speeds of one curve share their error (common practice, no source). */
export const SHARED_OVER_RPM = 800;

export const errorAt = (error: ReadingError, value: number): number =>
  error.floor + error.share * Math.abs(value);

import { toInside } from '@pullbook/core/quantity';
import type { DemoPrediction } from './model.ts';

/** Four guesses, each made before its pull: two came out, one did not, one is still open. */
export const PREDICTIONS: DemoPrediction[] = [
  {
    ref: 'prediction-supercharger',
    trialRef: 'trial-supercharger',
    key: 'B',
    what: 'peakPower',
    value: toInside(470, 'hp'),
    low: toInside(455, 'hp'),
    high: toInside(485, 'hp'),
    basis: 'a rule of thumb: power goes with absolute pressure, less a tenth for heat and drive',
    at: '2026-03-13T18:20:00+01:00',
  },
  {
    ref: 'prediction-cam',
    trialRef: 'trial-cam',
    key: 'B',
    what: 'meanGain',
    value: 0.03,
    low: 0.01,
    high: 0.05,
    basis: 'a guess from the cam card',
    at: '2026-03-14T12:10:00+01:00',
  },
  {
    ref: 'prediction-pulley',
    trialRef: 'trial-pulley',
    key: 'B',
    what: 'meanGain',
    value: 0.05,
    low: 0.035,
    high: 0.065,
    basis: 'a guess: 5 % more speed is 10 % more boost, and half of it reaches the crankshaft',
    at: '2026-03-14T18:05:00+01:00',
  },
  {
    ref: 'prediction-bare-longer',
    trialRef: 'trial-missing-baseline',
    key: 'A',
    what: 'peakPower',
    value: toInside(345, 'hp'),
    low: toInside(333, 'hp'),
    high: toInside(357, 'hp'),
    basis: 'what the cam gave under boost, scaled by what the engine makes without',
    at: '2026-03-14T17:00:00+01:00',
  },
];

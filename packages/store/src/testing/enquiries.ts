import type { Enquiry, KeptAnswer, Rung } from '@pullbook/core/reach';
import type { Book } from '../model.ts';
import { AT, combination, prediction, trial } from './things.ts';

const banded = (value: number) => ({ value, low: value - 1000, high: value + 1000 });

/** A rung of an invented answer. */
export const rungOf = (id: string, power = 390_000): Rung => ({
  id,
  changes: [
    {
      part: 'pulley',
      said: { text: 'Blower pulley 80 mm', parts: ['Blower pulley 80 mm'] },
      edits: [{ section: 'drive', field: 'blowerPulley', text: '80 mm' }],
      clears: [],
      cost: 1,
      ground: 'scaled from your data',
      from: { text: 'the parts list', parts: ['the parts list'] },
    },
  ],
  buildId: 'present',
  made: null,
  reached: banded(power),
  peakPower: { ...banded(power), atRpm: 6400 },
  highestBoost: null,
  chance: 0.7,
  reaches: true,
  cost: { total: 1, highest: 1 },
  bindsFirst: null,
  limits: [],
  curve: {
    engineSpeedRpm: [5000, 6400],
    power: {
      value: [power - 9000, power],
      low: [power - 10_000, power - 1000],
      high: [power, power + 1000],
    },
    boost: null,
    map: null,
    airFlow: [0.4, 0.5],
    fuelFlow: [0.03, 0.04],
    impellerSpeedRpm: null,
  },
  fuelEffect: null,
  ground: 'scaled from your data',
  assumptions: [],
});

export const answerOf = (rungs: Rung[], near: KeptAnswer['near'] = []): KeptAnswer => ({
  combinationName: 'Six, 84 mm',
  standard: { id: 'sae-j607', factor: 1.02 },
  air: { pressure: 98_000, temperature: 298 },
  answer: {
    target: { what: 'peak power', power: 387_766, atRpm: null, windowRpm: null, boostCap: null },
    feasible: rungs.length > 0,
    now: rungOf('now', 370_000),
    rungs,
    left: [],
    reason: null,
    leastRemedy: null,
    remedies: [],
    searched: { combinations: 40, solved: 38 },
    remarks: [],
  },
  near,
});

export const enquiry = (id: string, combinationId: string, fields: Partial<Enquiry> = {}): Enquiry => ({
  id,
  question: 'How do I make 520 hp?',
  combinationId,
  asked: {
    power: '520 hp',
    what: 'peak power',
    at: null,
    window: null,
    boostCap: null,
    without: [],
    correction: 'sae-j607',
  },
  answer: answerOf([rungOf('a1')]),
  pullIds: [],
  madeBy: { version: '0.1.0', seed: 7 },
  became: [],
  cards: [],
  at: AT,
  ...fields,
});

/** What a rung of an enquiry becomes: a combination made from the one that was asked of, in a trial, with a prediction. */
export const planned = (
  enquiryId: string,
  rungId: string,
  madeFromId: string,
  before: Enquiry['became'] = [],
): Parameters<Book['addPlanned']>[0] => ({
  combination: combination(`made ${rungId}`, '96 mm', madeFromId),
  trial: trial(`trial ${rungId}`, {
    combinations: [
      { key: 'A', combinationId: madeFromId, shortName: '' },
      { key: 'B', combinationId: `made ${rungId}`, shortName: '' },
    ],
  }),
  predictions: [prediction(`power ${rungId}`, `trial ${rungId}`)],
  enquiryId,
  became: [...before, { rungId, combinationId: `made ${rungId}`, trialId: `trial ${rungId}`, at: AT }],
});

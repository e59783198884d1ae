import { CORRECTIONS } from '@pullbook/core/air';
import { SECTIONS } from '@pullbook/core/combination';
import { CHANGE_PARTS } from '@pullbook/core/reach';
import { LIMIT_IDS } from '@pullbook/core/rule';
import { EDGE_UNITS } from './edge-units.ts';
import {
  COUNT,
  HASH,
  list,
  MAYBE_NUMBER,
  MAYBE_TEXT,
  NUMBER,
  object,
  objectWith,
  oneOf,
  orNull,
  TEXT,
  TRUTH,
} from './schema-pieces.ts';

/** Shape of an enquiry with the answer that was given. */

const SECTION = oneOf(...SECTIONS.map(({ id }) => id));
const LIMIT_ID = oneOf(...LIMIT_IDS);
const GROUND = oneOf('measured by you', 'scaled from your data', 'rule of thumb');
const COST = { type: 'integer', minimum: 0, maximum: 5 };
const WHAT = oneOf('peak power', 'power at a speed', 'average power');
const WINDOW = orNull({ type: 'array', items: NUMBER, minItems: 2, maxItems: 2 });
const BANDED = object({ value: NUMBER, low: NUMBER, high: NUMBER });
const BANDED_AT = object({ value: NUMBER, low: NUMBER, high: NUMBER, atRpm: NUMBER });
const BANDED_CURVE = object({ value: list(NUMBER), low: list(NUMBER), high: list(NUMBER) });

/** A sentence, and its pieces with the figures apart. */
const PIECES = list({ anyOf: [TEXT, { type: 'object' }] });
const SAID = object({ text: TEXT, parts: PIECES });
const REMARKS = list(
  objectWith({ code: TEXT, level: TEXT, message: TEXT }, { parts: PIECES, line: COUNT, column: COUNT }),
);

const CHANGE = object({
  part: oneOf(...CHANGE_PARTS),
  said: SAID,
  edits: list(object({ section: SECTION, field: TEXT, text: MAYBE_TEXT })),
  clears: list(SECTION),
  cost: COST,
  ground: GROUND,
  from: SAID,
});

const LIMIT = object({
  id: LIMIT_ID,
  ruleId: TEXT,
  // In `unit`.
  value: NUMBER,
  threshold: NUMBER,
  kind: oneOf(...Object.keys(EDGE_UNITS)),
  unit: TEXT,
  stay: oneOf('below', 'above'),
  // Share of the threshold that is left.
  margin: NUMBER,
  engineSpeedRpm: MAYBE_NUMBER,
  binds: TRUTH,
  label: TEXT,
  source: TEXT,
  said: SAID,
});

const CURVE = object({
  engineSpeedRpm: list(NUMBER),
  powerW: BANDED_CURVE,
  boostPa: orNull(BANDED_CURVE),
  map: orNull(
    object({
      correctedFlowKgPerS: list(NUMBER),
      pressureRatio: list(NUMBER),
      state: list(TEXT),
    }),
  ),
  airFlowKgPerS: list(NUMBER),
  fuelFlowKgPerS: list(NUMBER),
  impellerSpeedRpm: orNull(list(NUMBER)),
});

const RUNG = object({
  id: TEXT,
  changes: list(CHANGE),
  buildId: TEXT,
  made: { type: 'null' },
  reachedW: BANDED,
  peakPowerW: BANDED_AT,
  highestBoostPa: orNull(BANDED_AT),
  chance: NUMBER,
  reaches: TRUTH,
  cost: object({ total: NUMBER, highest: COST }),
  bindsFirst: orNull(LIMIT),
  limits: list(LIMIT),
  curve: CURVE,
  fuelEffect: orNull(
    object({
      work: NUMBER,
      workSpread: NUMBER,
      evaporationCoolingK: NUMBER,
      fuelVapour: NUMBER,
      because: REMARKS,
    }),
  ),
  ground: GROUND,
  assumptions: REMARKS,
});

const LEFT = object({
  buildId: TEXT,
  name: TEXT,
  most: object({ overallRatio: NUMBER, blowerPulleyDiameterM: MAYBE_NUMBER, peakPowerW: BANDED_AT }),
  buyable: orNull(object({ blowerPulleyDiameterM: NUMBER, peakPowerW: BANDED_AT })),
  stoppedBy: orNull(LIMIT),
  stops: list(object({ limit: LIMIT, overallRatio: NUMBER, peakPowerW: NUMBER })),
  curve: CURVE,
});

const REMEDY = object({
  what: oneOf(...LIMIT_IDS, 'breathing', 'target'),
  said: SAID,
  share: NUMBER,
  changes: list(CHANGE),
});

const ANSWER = object({
  target: object({
    what: WHAT,
    powerW: NUMBER,
    atRpm: MAYBE_NUMBER,
    windowRpm: WINDOW,
    boostCapPa: MAYBE_NUMBER,
  }),
  feasible: TRUTH,
  now: RUNG,
  rungs: list(RUNG),
  left: list(LEFT),
  reason: orNull(SAID),
  leastRemedy: orNull(REMEDY),
  remedies: list(REMEDY),
  searched: object({ combinations: COUNT, solved: COUNT }),
  remarks: REMARKS,
});

const SHEET_DIFFERENCE = object({
  section: SECTION,
  field: TEXT,
  label: TEXT,
  before: MAYBE_TEXT,
  after: MAYBE_TEXT,
  packageName: MAYBE_TEXT,
});

const NEAR = object({
  combinationId: TEXT,
  name: TEXT,
  pullIds: list(TEXT),
  powerW: NUMBER,
  isSameEngine: TRUTH,
  side: oneOf('above', 'below'),
  separates: { type: 'object', additionalProperties: list(SHEET_DIFFERENCE) },
});

export const ENQUIRY = object({
  id: TEXT,
  question: TEXT,
  combinationId: TEXT,
  // In the words and units in which it was asked.
  asked: object({
    power: TEXT,
    what: WHAT,
    at: MAYBE_TEXT,
    window: MAYBE_TEXT,
    boostCap: MAYBE_TEXT,
    without: list(oneOf(...CHANGE_PARTS)),
    correction: oneOf(...Object.keys(CORRECTIONS)),
  }),
  answer: object({
    combinationName: TEXT,
    // Powers were multiplied by the factor.
    standard: object({ id: oneOf(...Object.keys(CORRECTIONS)), factor: NUMBER }),
    air: object({ pressurePa: NUMBER, temperatureK: NUMBER }),
    answer: ANSWER,
    near: list(NEAR),
  }),
  pullIds: list(TEXT),
  madeBy: object({ version: TEXT, seed: { type: 'integer' } }),
  became: list(object({ rungId: TEXT, combinationId: TEXT, trialId: TEXT, at: TEXT })),
  cards: list(object({ name: TEXT, hash: HASH, at: TEXT })),
  at: TEXT,
});

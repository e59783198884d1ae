import type { MatchState } from '@pullbook/core/airpath';
import { CHANGE_PARTS, type Enquiry, type Rung, type RungCurve } from '@pullbook/core/reach';
import { LIMIT_IDS } from '@pullbook/core/rule';
import fc from 'fast-check';

/** Any enquiry with an answer that has everything in it an answer can have; only what joins it to its book is left out. */

const AT = '2026-03-14T10:42:00+01:00';
const words = fc.string({ unit: 'grapheme', maxLength: 12 });
/** JSON has no minus nothing. */
const figure = fc.double({ noNaN: true, min: -1e9, max: 1e9 }).map((value) => (value === 0 ? 0 : value));
const orNull = <T>(what: fc.Arbitrary<T>) => fc.option(what, { nil: null });
const some = <T>(what: fc.Arbitrary<T>, most = 2) => fc.array(what, { maxLength: most });
const two = fc.array(figure, { minLength: 2, maxLength: 2 });

const ground = fc.constantFrom(
  'measured by you' as const,
  'scaled from your data' as const,
  'rule of thumb' as const,
);
const cost = fc.constantFrom(0 as const, 1 as const, 5 as const);
const banded = fc.record({ value: figure, low: figure, high: figure });
const bandedAt = fc.record({ value: figure, low: figure, high: figure, atRpm: figure });
const bandedCurve = fc.record({ value: two, low: two, high: two });
const sentence = fc.record({ text: words, parts: some(words) });
const remark = fc.record({
  code: fc.constant('said'),
  level: fc.constantFrom('note' as const, 'caution' as const),
  message: words,
});

const change = fc.record({
  part: fc.constantFrom(...CHANGE_PARTS),
  said: sentence,
  edits: some(
    fc.record({
      section: fc.constant('drive' as const),
      field: fc.constant('blowerPulley'),
      text: orNull(words),
    }),
  ),
  clears: some(fc.constantFrom('cooler' as const, 'supercharger' as const)),
  cost,
  ground,
  from: sentence,
});

const limit = fc.record({
  id: fc.constantFrom(...LIMIT_IDS),
  ruleId: fc.constant('V20'),
  value: figure,
  threshold: figure,
  kind: fc.constantFrom(
    'engineSpeed' as const,
    'gaugePressure' as const,
    'ratio' as const,
    'massFlow' as const,
  ),
  stay: fc.constantFrom('below' as const, 'above' as const),
  margin: figure,
  engineSpeedRpm: orNull(figure),
  binds: fc.boolean(),
  label: words,
  source: words,
  said: sentence,
});

const curve: fc.Arbitrary<RungCurve> = fc.record({
  engineSpeedRpm: fc.constant([3000, 4000]),
  power: bandedCurve,
  boost: orNull(bandedCurve),
  map: orNull(
    fc.record({
      correctedFlow: two,
      pressureRatio: two,
      state: fc.constant<MatchState[]>(['on the map', 'choked']),
    }),
  ),
  airFlow: two,
  fuelFlow: two,
  impellerSpeedRpm: orNull(two),
});

const rung: fc.Arbitrary<Rung> = fc.record({
  id: fc.constantFrom('a', 'b'),
  changes: some(change),
  buildId: words,
  made: fc.constant(null),
  reached: banded,
  peakPower: bandedAt,
  highestBoost: orNull(bandedAt),
  chance: figure,
  reaches: fc.boolean(),
  cost: fc.record({ total: figure, highest: cost }),
  bindsFirst: orNull(limit),
  limits: some(limit),
  curve,
  fuelEffect: orNull(
    fc.record({
      work: figure,
      workSpread: figure,
      evaporationCooling: figure,
      fuelVapour: figure,
      because: some(remark),
    }),
  ),
  ground,
  assumptions: some(remark),
});

const remedy = fc.record({
  what: fc.constantFrom(...LIMIT_IDS, 'breathing' as const, 'target' as const),
  said: sentence,
  share: figure,
  changes: some(change),
});

const answer = fc.record({
  target: fc.record({
    what: fc.constantFrom('peak power' as const, 'average power' as const),
    power: figure,
    atRpm: orNull(figure),
    windowRpm: orNull(fc.constant<[number, number]>([3000, 6000])),
    boostCap: orNull(figure),
  }),
  feasible: fc.boolean(),
  now: rung,
  rungs: some(rung),
  left: some(
    fc.record({
      buildId: words,
      name: words,
      most: fc.record({ overallRatio: figure, blowerPulleyDiameter: orNull(figure), peakPower: bandedAt }),
      buyable: orNull(fc.record({ blowerPulleyDiameter: figure, peakPower: bandedAt })),
      stoppedBy: orNull(limit),
      stops: some(fc.record({ limit, overallRatio: figure, peakPower: figure })),
      curve,
    }),
  ),
  reason: orNull(sentence),
  leastRemedy: orNull(remedy),
  remedies: some(remedy),
  searched: fc.record({ combinations: fc.nat(), solved: fc.nat() }),
  remarks: some(remark),
});

const near = fc.record({
  combinationId: words,
  name: words,
  pullIds: some(words),
  power: figure,
  isSameEngine: fc.boolean(),
  side: fc.constantFrom('above' as const, 'below' as const),
  separates: fc.record({
    a: some(
      fc.record({
        section: fc.constant('cam' as const),
        field: words,
        label: words,
        before: orNull(words),
        after: orNull(words),
        packageName: orNull(words),
      }),
    ),
  }),
});

export const generatedEnquiry: fc.Arbitrary<Omit<Enquiry, 'id' | 'combinationId' | 'pullIds' | 'became'>> =
  fc.record({
    question: words,
    asked: fc.record({
      power: words,
      what: fc.constantFrom('peak power' as const, 'power at a speed' as const),
      at: orNull(words),
      window: orNull(words),
      boostCap: orNull(words),
      without: some(fc.constantFrom(...CHANGE_PARTS)),
      correction: fc.constantFrom('sae-j1349' as const, 'observed' as const),
    }),
    answer: fc.record({
      combinationName: words,
      standard: fc.record({ id: fc.constant('sae-j607' as const), factor: figure }),
      air: fc.record({ pressure: figure, temperature: figure }),
      answer,
      near: some(near),
    }),
    madeBy: fc.record({ version: words, seed: fc.nat() }),
    cards: some(fc.record({ name: words, hash: fc.constant('ab'.repeat(32)), at: fc.constant(AT) })),
    at: fc.constant(AT),
  });

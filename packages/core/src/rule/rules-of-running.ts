import type { Rule } from './model.ts';
import { bare, COMMON_PRACTICE, derivedFrom, FROM_MEMORY, inUnit, publishedIn, rule, share } from './rule.ts';

const POUND_PER_HP_HOUR = 'lb/(hp·h)';
const consumption = (id: string, label: string, value: number) =>
  inUnit(id, label, value, POUND_PER_HP_HOUR, 'specificConsumption');

/** Whether the engine, its blower, fuel and oil did what such things do. */
export const RULES_OF_RUNNING: readonly Rule[] = [
  rule('V08', {
    title: 'Fuel against power',
    statement:
      'Fuel flow over observed power lies where petrol engines do, without and with a supercharger. Alcohol is not judged: its ranges are too wide. A consumption printed in a file is not held against the flow, for the book has no channel for it.',
    places: ['import', 'pull'],
    level: 'caution',
    thresholds: [
      consumption('V08.low', 'Petrol without supercharger, below', 0.36),
      consumption('V08.high', 'Petrol without supercharger, above', 0.62),
      consumption('V08.boostedLow', 'Petrol with supercharger, below', 0.45),
      consumption('V08.boostedHigh', 'Petrol with supercharger, above', 0.85),
    ],
  }),
  rule('V09', {
    title: 'Air and fuel against mixture',
    statement: 'Air flow over fuel flow is lambda times the stoichiometric ratio: meters, leaks, air hat.',
    places: ['import', 'pull'],
    level: 'note',
    thresholds: [share('V09.share', 'Ratio of the flows off the one of lambda', 7)],
    provenance: derivedFrom('air / fuel = λ · stoichiometric ratio; how far off: common practice, no source'),
  }),
  rule('V10', {
    title: 'Torque for the displacement',
    statement:
      'Highest torque over displacement, as the mean pressure of a four-stroke, is one an engine can have; with a supercharger times pressure ratio and the highest boost index.',
    places: ['import', 'pull'],
    level: 'caution',
    thresholds: [
      inUnit(
        'V10.high',
        'Mean effective pressure above, without supercharger',
        256,
        'psi',
        'pressureDifference',
      ),
      inUnit(
        'V10.low',
        'Mean effective pressure below, without supercharger',
        145,
        'psi',
        'pressureDifference',
      ),
      bare('V10.index', 'Highest boost index', 1.08),
    ],
    provenance: FROM_MEMORY,
  }),
  rule('V11', {
    title: 'Manifold against barometer, without supercharger',
    statement:
      'At full load the manifold stands little below the barometer and never above it: else a restriction, an air hat, a tap or a zero.',
    places: ['import', 'pull'],
    level: 'note',
    thresholds: [
      inUnit('V11.below', 'Manifold below the barometer', 2, 'inHg', 'pressureDifference'),
      inUnit('V11.above', 'Manifold above the barometer', 1, 'inHg', 'pressureDifference'),
    ],
  }),
  rule('V12', {
    title: 'Zero of the boost sensor',
    statement: 'While the engine stands, boost is nil and the manifold is at the barometer.',
    places: ['import', 'pull'],
    level: 'caution',
    thresholds: [inUnit('V12.zero', 'Off nil while the engine stands', 0.5, 'psi', 'pressureDifference')],
  }),
  rule('V13', {
    title: 'Boost over engine speed, and slip',
    statement:
      'With a shaft speed logged, slip is what the drive ratio says less what was measured. Without one, boost at the top is held against the match fitted to the engine’s own pulls, which has the air it takes in already; where there is no such match, against its own trend from 55 to 80 % of the highest speed: that can only ask, for a good belt falls short of it too.',
    places: ['import', 'pull', 'match'],
    level: 'note',
    thresholds: [
      bare('V13.exponentLow', 'Boost goes with speed to the power of, below', 1.5, 1),
      bare('V13.exponentHigh', 'Boost goes with speed to the power of, above', 2.4, 1),
      share('V13.residual', 'Boost at the top below the fitted match, or its own trend', 6),
      share('V13.slip', 'Slip by shaft speed: caution', 3),
      share('V13.slipAlarm', 'Slip by shaft speed: alarm', 5),
    ],
  }),
  rule('V14', {
    title: 'Heat of the compressor',
    statement:
      'Discharge temperature and pressure ratio give an efficiency that compressors have; by a match it stays near its best, and the air leaves no hotter than hoses stand.',
    places: ['import', 'pull', 'match'],
    level: 'note',
    thresholds: [
      share('V14.low', 'Efficiency below', 50),
      share('V14.high', 'Efficiency above', 85),
      bare('V14.ratio', 'Looked at above a pressure ratio of', 1.2, 1),
      share('V14.matched', 'Efficiency by a match below', 60),
      inUnit('V14.discharge', 'Discharge temperature by a match above', 350, '°F', 'temperature'),
    ],
    provenance: derivedFrom(
      'η = T₁ (π^((κ−1)/κ) − 1) / (T₂ − T₁), κ = 1.4; the limits: common practice, no source',
    ),
  }),
  rule('V15', {
    title: 'What a cooler can do',
    statement:
      'A cooler comes near what cools it and never past it. The book has no channel for the water of a cooler, so that only an air-to-air one is held against its air. Ice-soaked cores and wet probes break it honestly. By a match its core takes little off the pressure.',
    places: ['import', 'pull', 'combination', 'match'],
    level: 'caution',
    thresholds: [
      share('V15.effectiveness', 'Effectiveness above', 95),
      inUnit('V15.below', 'Charge below the inlet air, air-to-air cooler', 0, 'K', 'temperatureDifference'),
      inUnit('V15.loss', 'Pressure lost in the core by a match above', 2, 'psi', 'pressureDifference'),
    ],
    provenance: derivedFrom(
      'heat flows from warm to cold; the limits of effectiveness and of the loss: common practice, no source',
    ),
  }),
  rule('V16', {
    title: 'Boost index',
    statement:
      'Power with over power without the supercharger, over the pressure ratio, both on like standards: whether it makes what it should for that boost. Of a match: whether it promises what engines do.',
    places: ['comparison', 'match'],
    level: 'caution',
    thresholds: [bare('V16.low', 'Index below', 0.72), bare('V16.high', 'Index above', 1.08)],
    provenance: FROM_MEMORY,
  }),
  rule('V17', {
    title: 'How long the injectors are open',
    statement:
      'Fuel flow over what all injectors pass when open, at the pressure across them by its root where it is logged, and their dead time where it is on the sheet. A plan reckons the fuel from its air and mixture.',
    places: ['import', 'pull', 'plan'],
    level: 'caution',
    thresholds: [
      share('V17.duty', 'Share of the time: caution', 85),
      share('V17.dutyAlarm', 'Share of the time: alarm', 95),
    ],
  }),
  rule('V18', {
    title: 'Fuel pressure holds',
    statement: 'Fuel pressure less boost stays what it was at the start of the pull.',
    places: ['import', 'pull'],
    level: 'caution',
    thresholds: [share('V18.share', 'Off its figure at the start', 10)],
  }),
  rule('V20', {
    title: 'Impeller speed',
    statement:
      'Impeller speed, measured or by the drive at no slip at the highest speed of the pull, stays below the limit on the sheet, and its tip below what aluminium wheels stand. A match is held against it at no slip, at the engine’s limit and what that may be overrun by. Keep to the maker’s limit.',
    places: ['import', 'pull', 'match', 'plan'],
    level: 'alarm',
    thresholds: [
      share('V20.near', 'Share of the limit: caution', 95),
      share('V20.limit', 'Share of the limit: alarm', 100),
      {
        ...inUnit('V20.tip', 'Tip speed: caution', 480, 'm/s', 'speed'),
        units: { us: 'ft/s', si: 'm/s' },
        decimals: 0,
        source: FROM_MEMORY.source,
      },
    ],
    provenance: { ...COMMON_PRACTICE, source: 'the limit on the sheet; tip speed: from memory of the trade' },
  }),
  rule('V32', {
    title: 'Exhaust temperatures against each other',
    statement: 'No cylinder is far from the others: a dead one is cold, a lean one hot.',
    places: ['import', 'pull'],
    level: 'caution',
    thresholds: [
      inUnit('V32.spread', 'Hottest less coldest', 200, '°F', 'temperatureDifference'),
      inUnit('V32.cold', 'One below the mean', 300, '°F', 'temperatureDifference'),
    ],
  }),
  rule('V39', {
    title: 'Oil and crankcase',
    statement:
      'Oil pressure is enough for the speed, and through a session neither falls nor does crankcase pressure creep up: rings, bearings, fuel in the oil.',
    places: ['import', 'pull', 'session'],
    level: 'caution',
    thresholds: [
      inUnit('V39.oil', 'Oil pressure for each 1,000 r/min: caution', 10, 'psi', 'gaugePressure'),
      inUnit('V39.oilAlarm', 'Oil pressure for each 1,000 r/min: stop', 7, 'psi', 'gaugePressure'),
      share('V39.crankcase', 'Crankcase pressure up through a session', 30),
      share('V39.oilFall', 'Oil pressure down through a session, oil no hotter', 10),
      inUnit(
        'V39.oilHotter',
        'Oil hotter by more: its pressure is not judged',
        18,
        '°F',
        'temperatureDifference',
      ),
    ],
    provenance: {
      kind: 'common practice',
      source: 'common practice, no source; fall of oil pressure through a session: from memory',
    },
  }),
  rule('V28', {
    title: 'The same combination drifts',
    statement:
      'Pulls of one combination, first and last of a session or through a trial, give the same power.',
    places: ['session', 'comparison'],
    level: 'caution',
    thresholds: [share('V28.share', 'Power of the last against the first', 1, 1)],
    provenance: publishedIn('forum post on repeat and return testing (the habit); the limit: from memory'),
  }),
];

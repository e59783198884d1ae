import type { Rule } from './model.ts';
import {
  bare,
  derivedFrom,
  FROM_MEMORY,
  feetPerMinute,
  fixed,
  inUnit,
  publishedIn,
  rule,
  share,
} from './rule.ts';

const boost = (id: string, label: string, value: number) => inUnit(id, label, value, 'psi', 'gaugePressure');
const inch = (id: string, label: string, value: number) => inUnit(id, label, value, 'in', 'length');

/** Boost that goes with a compression ratio: upper ends of the trade's ranges, psi; the ratio is the middle of its step. */
const COMPRESSION_STEPS = [
  { ratio: 8.25, uncooled: 10, cooled: 15, race: 30 },
  { ratio: 9.25, uncooled: 7, cooled: 12, race: 25 },
  { ratio: 10.25, uncooled: 5, cooled: 9, race: 20 },
  { ratio: 11.25, uncooled: 0, cooled: 7, race: 16 },
];

/** Ratios at which the thresholds of `V22` stand, rising. */
export const COMPRESSION_RATIOS: readonly number[] = COMPRESSION_STEPS.map(({ ratio }) => ratio);

const RING_GAPS = 'forum-quoted ring-gap factor list';
const PLUG_GAPS = 'Q&A page "What is spark plug gapping"';

/** Whether a sheet agrees with itself, and its parts with what they were asked to do. */
export const RULES_OF_HARDWARE: readonly Rule[] = [
  rule('V19', {
    title: 'Fuel pump against need',
    statement:
      'The pump gives more than the engine needs, at the pressure it works against and its real voltage.',
    places: ['plan'],
    level: 'caution',
    thresholds: [bare('V19.margin', 'Pump over need, below', 1.15)],
  }),
  rule('V21', {
    title: 'Piston speed',
    statement:
      'Mean piston speed at the highest speed of the pull, by what the sheet says of pistons, rods and crankshaft.',
    places: ['import', 'pull', 'plan'],
    level: 'caution',
    thresholds: [
      feetPerMinute('V21.cast', 'A cast part: caution above', 3500),
      feetPerMinute('V21.forged', 'Any parts: caution above', 4000),
      feetPerMinute('V21.race', 'Any parts: alarm above', 5000),
    ],
    provenance: publishedIn('book "Performance Tuning in Theory and Practice" (classes, as quoted)'),
  }),
  rule('V22', {
    title: 'Parts for the boost',
    statement:
      'Ring gap for its bore, compression ratio for boost and fuel, plug gap for boost. Where octane and compression tell the spark that the fuel allows (V48), a plan is held to that and only cautioned here.',
    places: ['import', 'pull', 'plan'],
    level: 'caution',
    thresholds: [
      boost('V22.ringBoost', 'Ring gap is looked at above', 8),
      { ...bare('V22.ringGap', 'Top ring gap over bore, below', 0.005, 4), source: RING_GAPS },
      boost('V22.plugBoost', 'Plug gap: first step above', 12),
      boost('V22.plugBoostHigh', 'Plug gap: second step above', 20),
      ...[
        inch('V22.plugGap', 'Plug gap with any boost, above', 0.035),
        inch('V22.plugGapBoost', 'Plug gap at the first step, above', 0.03),
        inch('V22.plugGapHigh', 'Plug gap at the second step, above', 0.026),
      ].map((one) => ({ ...one, source: PLUG_GAPS })),
      ...COMPRESSION_STEPS.flatMap(({ ratio, uncooled, cooled, race }) => [
        boost(
          `V22.uncooled-${ratio}`,
          `Compression ${ratio}, pump gasoline, no cooler: boost above`,
          uncooled,
        ),
        boost(`V22.cooled-${ratio}`, `Compression ${ratio}, pump gasoline, cooled: boost above`, cooled),
        boost(`V22.race-${ratio}`, `Compression ${ratio}, E85 or racing gasoline, cooled: boost above`, race),
      ]).map((one) => ({ ...one, source: FROM_MEMORY.source })),
    ],
    provenance: publishedIn(`${RING_GAPS}; ${PLUG_GAPS}; boost by compression and fuel: from memory`),
  }),
  rule('V23', {
    title: 'Cam card against itself',
    statement:
      'Durations, centrelines, lobe separation and advance of a card are what its events give; lobe separation and overlap lie where cams are made.',
    places: ['combination'],
    level: 'note',
    thresholds: [
      fixed(inUnit('V23.card', 'Card off its events', 1, '°', 'angle')),
      inUnit('V23.separationLow', 'Lobe separation below', 102, '°', 'angle'),
      inUnit('V23.separationHigh', 'Lobe separation above', 116, '°', 'angle'),
      inUnit(
        'V23.overlapBoosted',
        'Overlap at 1.27 mm (0.050 in) with a supercharger, above',
        8,
        '°',
        'angle',
      ),
    ],
    provenance: publishedIn(
      '"Turbo camshaft guide – overlap calculation" (algebra); "All about camshafts" (span); overlap: from memory',
    ),
    wraps: ['cam-card-disagrees'],
  }),
  rule('V24', {
    title: 'Flow sheet',
    statement: 'Flow rises with lift, and no valve lets through more than its curtain can.',
    places: ['combination'],
    level: 'note',
    thresholds: [
      fixed(bare('V24.coefficient', 'Share of the ideal flow through the curtain, above', 0.85)),
      share('V24.fall', 'Flow falls from one lift to the next', 2),
    ],
    provenance: FROM_MEMORY,
    wraps: ['flow-beyond-curtain'],
  }),
  rule('V36', {
    title: 'Compression ratio against volumes',
    statement: 'The compression ratio entered is the one that the volumes give.',
    places: ['combination'],
    level: 'note',
    thresholds: [fixed(bare('V36.off', 'Entered off computed', 0.15))],
    wraps: ['compression-ratio-disagrees', 'no-clearance-volume'],
  }),
  rule('V37', {
    title: 'Displacement against bore and stroke',
    statement: 'The displacement stated is the one of cylinders, bore and stroke, as far as its digits tell.',
    places: ['combination'],
    level: 'note',
    thresholds: [share('V37.share', 'Stated off computed', 0.5, 1)],
    provenance: derivedFrom('cylinders · π/4 · bore² · stroke; how far off: common practice, no source'),
    wraps: ['displacement-disagrees'],
  }),
];

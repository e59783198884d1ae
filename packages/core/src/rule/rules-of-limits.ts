import { FASTEST_IN_LINE, FLOATS_STAND } from '../fuel/index.ts';
import { toInside } from '../quantity/index.ts';
import type { Rule, Threshold } from './model.ts';
import { COMMON_PRACTICE, derivedFrom, FROM_MEMORY, inUnit, publishedIn, rule, share } from './rule.ts';

/** The trade tells powers of V8 engines with bores about 4 in; an eighth is what one cylinder stands. */
const V8_CYLINDERS = 8;

const aCylinder = (id: string, label: string, horsepowerOfV8: number): Threshold => ({
  id,
  label: `${label}, power a cylinder above`,
  value: toInside(horsepowerOfV8, 'hp', 'power') / V8_CYLINDERS,
  kind: 'power',
});

const bar = (id: string, label: string, value: number): Threshold =>
  inUnit(id, label, value, 'bar', 'absolutePressure');

/** What bounds an engine that is planned, beside the rules that a pull or a match breaks as well. */
export const RULES_OF_LIMITS: readonly Rule[] = [
  rule('V44', {
    title: 'Valve springs under boost',
    statement:
      'Boost on the back of the intake valve takes only a share of the load that its spring has on the seat.',
    places: ['import', 'pull', 'plan'],
    level: 'caution',
    thresholds: [share('V44.share', 'Share of the seat load taken by boost, above', 25)],
    provenance: derivedFrom('boost · π/4 · d² of the valve; the share: common practice, no source'),
  }),
  rule('V45', {
    title: 'Head clamping',
    statement: 'Bolts and gasket of the head are up to the boost and to the power of each cylinder.',
    places: ['import', 'pull', 'plan'],
    level: 'caution',
    thresholds: [
      inUnit('V45.bolts', 'Production bolts: boost above', 10, 'psi', 'gaugePressure'),
      aCylinder('V45.composition', 'Composition gasket', 600),
    ],
    provenance: publishedIn(
      'trade-magazine article "When to upgrade a performance head gasket" (gaskets); bolts: from memory',
    ),
  }),
  rule('V46', {
    title: 'Short block for its power',
    statement:
      'Power of each cylinder against where many parts of that kind have failed, by the words of the sheet; and the power that the shop trusts the block with. Told of V8 engines with bores about 102 mm (4 in), so that it is rough for others. Each family of engines has its own figures: set yours on the sheet.',
    places: ['import', 'pull', 'plan'],
    level: 'caution',
    thresholds: [
      inUnit('V46.castPistonsBoost', 'Cast or hypereutectic pistons: boost above', 6, 'psi', 'gaugePressure'),
      aCylinder('V46.castPistons', 'Cast or hypereutectic pistons', 500),
      aCylinder('V46.castCrankshaft', 'Cast crankshaft', 500),
      aCylinder('V46.nodularCrankshaft', 'Nodular iron crankshaft', 600),
      aCylinder('V46.forgedCrankshaft', 'Forged crankshaft', 1000),
      aCylinder('V46.productionRods', 'Production, cast or powdered metal rods', 550),
      aCylinder('V46.forgedRods', 'Forged rods', 800),
      aCylinder('V46.twoBolt', 'Two-bolt main caps', 500),
    ],
    provenance: FROM_MEMORY,
  }),
  rule('V47', {
    title: 'Highest pressure in the cylinder',
    statement:
      'Highest pressure in the cylinder, reckoned on a simple pressure trace at the spark that the fuel allows, against what pistons of that kind stand. Knock goes far beyond it and breaks them all.',
    places: ['plan'],
    level: 'caution',
    thresholds: [
      bar('V47.cast', 'Cast or hypereutectic pistons: above', 90),
      bar('V47.forged', 'Any pistons: above', 120),
    ],
    provenance: FROM_MEMORY,
  }),
  rule('V48', {
    title: 'Spark that the fuel allows',
    statement:
      'The advance at which this fuel is about to knock, at this compression, charge and speed, is not much later than for best torque: later burns too late and heats the exhaust. Planning grade: the knock of this very engine is heard on the brake alone.',
    places: ['plan'],
    level: 'caution',
    thresholds: [inUnit('V48.latest', 'Later than for best torque by more than', 12, '°', 'angle')],
    provenance: {
      ...COMMON_PRACTICE,
      source:
        'knock integral on a simple pressure trace; least advance under boost some 16° at high speed, 2° kept from knock: common practice, no source',
    },
  }),
  rule('V49', {
    title: 'Fuel line',
    statement:
      'Fuel goes through the feed line no faster than is usual, so that little pressure is lost in it.',
    places: ['plan'],
    level: 'note',
    thresholds: [
      {
        id: 'V49.fastest',
        label: 'Speed of the fuel in the line above',
        value: FASTEST_IN_LINE,
        kind: 'speed',
        units: { us: 'ft/s', si: 'm/s' },
        decimals: 2,
      },
    ],
    provenance: COMMON_PRACTICE,
  }),
  rule('V50', {
    title: 'Boost that parts stand',
    statement:
      'Boost against what the shop trusts the block with, and of a blow-through carburettor against what hollow floats stand.',
    places: ['import', 'pull', 'plan'],
    level: 'caution',
    thresholds: [
      {
        id: 'V50.floats',
        label: 'Blow-through carburettor with hollow floats: boost above',
        value: FLOATS_STAND,
        kind: 'gaugePressure',
      },
    ],
    provenance: { ...FROM_MEMORY, source: 'the sheet’s own limit; hollow floats: from memory of the trade' },
  }),
  rule('V51', {
    title: 'Boost that was asked for',
    statement: 'Boost stays below what the question allows.',
    places: ['plan'],
    level: 'caution',
    provenance: { ...COMMON_PRACTICE, source: 'the question' },
  }),
  rule('V52', {
    title: 'Charge behind the cooler',
    statement: 'The charge comes to the engine cool enough: a cooler that is small or warm leaves it hot.',
    places: ['plan'],
    level: 'caution',
    thresholds: [inUnit('V52.charge', 'Charge in the manifold above', 140, '°F', 'temperature')],
    provenance: FROM_MEMORY,
  }),
];

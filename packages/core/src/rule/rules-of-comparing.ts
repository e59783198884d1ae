import type { Rule } from './model.ts';
import { derivedFrom, fixed, inUnit, rule } from './rule.ts';

const BESIDE = ['comparison'] as const;
const apart = (id: string, label: string, fahrenheit: number) =>
  fixed(inUnit(id, label, fahrenheit, '°F', 'temperatureDifference'));

/** Whether what is compared is alike but for the change. */
export const RULES_OF_COMPARING: readonly Rule[] = [
  rule('V25', {
    title: 'Temperatures at the start',
    statement: 'Compared pulls start with oil, coolant, charge and inlet air alike.',
    places: BESIDE,
    level: 'caution',
    thresholds: [
      apart('V25.oil', 'Oil apart', 10),
      apart('V25.coolant', 'Coolant apart', 5),
      apart('V25.air', 'Charge or inlet air apart', 10),
    ],
  }),
  rule('V26', {
    title: 'One change',
    statement: 'The sheets of the compared combinations differ in one thing.',
    places: BESIDE,
    level: 'caution',
    wraps: ['more-than-one-change', 'nothing-changed-on-the-sheet'],
  }),
  rule('V27', {
    title: 'Difference against scatter',
    statement: 'The difference is larger than what pulls of one combination scatter by.',
    places: BESIDE,
    level: 'note',
    provenance: derivedFrom('band of the mean gain from the repeats and the shop’s history'),
    elsewhere: 'It is the verdict of the comparison and is said there, with its band.',
  }),
  rule('V33', {
    title: 'Spark and mixture alike',
    statement: 'Compared pulls have the same spark and mixture.',
    places: BESIDE,
    level: 'caution',
    thresholds: [
      fixed(inUnit('V33.spark', 'Spark apart', 1, '°', 'angle')),
      fixed({ id: 'V33.lambda', label: 'Lambda apart', value: 0.03, kind: 'ratio', decimals: 2 }),
    ],
  }),
  rule('V35', {
    title: 'Taps and probes at one place',
    statement:
      'Boost and temperatures of compared pulls are taken at the same places; else they are not set against each other.',
    places: BESIDE,
    level: 'caution',
    wraps: ['boost-tap-moved'],
  }),
];

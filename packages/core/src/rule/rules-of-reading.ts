import type { Rule } from './model.ts';
import { bare, derivedFrom, FROM_MEMORY, fixed, inUnit, publishedIn, rule, share } from './rule.ts';

const AT_READING = ['import', 'pull'] as const;

/** Whether figures can be what they claim to be: units, weather, factor, the shape of a curve. */
export const RULES_OF_READING: readonly Rule[] = [
  rule('V01', {
    title: 'Power against torque and speed',
    statement: 'Power in the file is torque × speed.',
    places: AT_READING,
    level: 'alarm',
    thresholds: [fixed(share('V01.share', 'Power off torque × speed', 0.5, 1))],
    provenance: derivedFrom('P = T · 2π n / 60; how far off: common practice, no source'),
    wraps: ['power-is-not-torque-times-speed'],
  }),
  rule('V02', {
    title: 'Units taken for each other',
    statement:
      'Power is not off torque × speed by just what a mix of units gives: lb-ft and N·m, or hp, metric hp and kW.',
    places: AT_READING,
    level: 'alarm',
    thresholds: [fixed(share('V02.share', 'Off the ratio of two units', 0.5, 1))],
    provenance: derivedFrom('ratios of the units; how near: common practice, no source'),
    wraps: ['unit-mix'],
  }),
  rule('V03', {
    title: 'Even sweep',
    statement: 'Speed moves one way at an even rate through the accepted window.',
    places: AT_READING,
    level: 'caution',
    thresholds: [fixed(share('V03.slope', 'Rate off the middling one of the pull', 25))],
    wraps: ['uneven-sweep'],
  }),
  rule('V04', {
    title: 'Factor against weather',
    statement:
      'The factor is one through the pull, and the one that the weather of the pull gives for its standard; else the standard that fits best is named.',
    places: AT_READING,
    level: 'caution',
    thresholds: [
      share('V04.constant', 'Factor wanders through the pull, either way', 0.3, 1),
      fixed(share('V04.weather', 'Factor off the one of the weather', 0.5, 1)),
    ],
    wraps: ['factor-is-not-the-weathers'],
  }),
  rule('V05', {
    title: 'Air and factor inside the standard',
    statement: 'Inlet air and factor lie where the standard holds, or where a factor is usual.',
    places: AT_READING,
    level: 'caution',
    thresholds: [
      fixed(bare('V05.low', 'Factor below, where the standard itself says nothing', 0.9)),
      fixed(bare('V05.high', 'Factor above, where the standard itself says nothing', 1.09)),
    ],
    wraps: ['outside-validity'],
  }),
  rule('V06', {
    title: 'Barometer against altitude',
    statement: 'The barometer fits the altitude of the cell and is not reduced to sea level.',
    places: AT_READING,
    level: 'caution',
    thresholds: [
      fixed(inUnit('V06.off', 'Barometer off what is usual at the altitude', 2, 'kPa', 'pressureDifference')),
    ],
    wraps: ['barometer-looks-reduced', 'barometer-off-altitude'],
  }),
  rule('V07', {
    title: 'Moisture against temperature',
    statement: 'The air holds no more water than it can at its temperature.',
    places: AT_READING,
    level: 'alarm',
    thresholds: [fixed(share('V07.saturation', 'Relative humidity', 100))],
    provenance: derivedFrom('vapour pressure ≤ saturation pressure at the temperature'),
    wraps: ['supersaturated', 'vapour-above-barometer'],
  }),
  rule('V29', {
    title: 'Peak not reached',
    statement: 'The highest figure is not the last row of the pull: where it is, it is still climbing.',
    places: AT_READING,
    level: 'note',
    wraps: ['power-still-climbing', 'torque-still-climbing'],
  }),
  rule('V30', {
    title: 'Peak at the edge, or of one row',
    statement:
      'The peak lies inside the window, and no single row that stands out would have been the headline.',
    places: AT_READING,
    level: 'note',
    thresholds: [bare('V30.bins', 'Bins from the edge of the window', 3, 0)],
    wraps: ['torque-falls-from-the-start'],
  }),
  rule('V31', {
    title: 'Torque swings',
    statement:
      'Over bins of 100 r/min torque does not swing about its own curve: brake control, belt surge or misfire.',
    places: AT_READING,
    level: 'note',
    thresholds: [share('V31.swing', 'Peak to peak as a share of torque', 2, 1)],
  }),
  rule('V34', {
    title: 'Mixture on the scale of another fuel',
    statement:
      'An air-fuel ratio of an alcohol fuel is told on its own scale, not on that of a gauge marked for petrol.',
    places: AT_READING,
    level: 'caution',
    thresholds: [bare('V34.lambda', 'Ratio over the stoichiometric one of the fuel', 1.15)],
  }),
  rule('V38', {
    title: 'Curves read off a picture cross at 5,252 r/min',
    statement:
      'Power in hp and torque in lb-ft of a picture or printed sheet are one number at 5,252 r/min; else the axes were read wrongly.',
    places: AT_READING,
    level: 'caution',
    thresholds: [share('V38.share', 'Apart at 5,252 r/min', 1, 1)],
    provenance: publishedIn(
      'magazine article "So how do you get repeatable results?" (the crossing); reading error of a chart: from memory',
    ),
  }),
  rule('V40', {
    title: 'Dates against order',
    statement: 'Pulls of a session come in the order of their times, by place and by number in the name.',
    places: ['session'],
    level: 'note',
    provenance: FROM_MEMORY,
  }),
];

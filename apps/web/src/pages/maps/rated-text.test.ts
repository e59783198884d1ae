import { expect, test } from 'vitest';
import { BLANK_RATED, ratedText } from './rated-text.ts';

const RATED = {
  ...BLANK_RATED,
  flow: '66 lb/min',
  pressureRatio: '2,0',
  speed: '50000 rpm',
  wheelExitDiameter: '105 mm',
};

test('units stand in the heading and figures in the row; what is not known is left out', () => {
  expect(ratedText(RATED).split('\n')).toEqual([
    '# form: rated',
    '# reference pressure: 100 kPa',
    '# reference temperature: 25 °C',
    '# wheel exit diameter: 105 mm',
    '# wheel inlet diameter: unknown',
    'flow [lb/min];pressure ratio;speed [rpm]',
    '66;2,0;50000',
    '',
  ]);
  expect(ratedText({ ...RATED, efficiency: '74%' })).toContain('efficiency [%]\n66;2,0;50000;74\n');
});

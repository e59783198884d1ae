import type { ReachChange } from '@pullbook/core/reach';
import { said } from '@pullbook/core/remark';
import { expect, test } from 'vitest';
import { shortChanges } from './rung-names.ts';

const change = (part: ReachChange['part'], text: string) => ({ part, said: said`${text}` }) as ReachChange;

test.each([
  [[change('pulley', 'Blower pulley 80.0 mm in place of 84.0 mm')], 'blower pulley 80 mm'],
  [[change('breathing', 'Cam: 12° longer cam')], '12° longer cam'],
  [
    [
      change('fuel', 'Methanol in place of gasoline'),
      change('injectors', 'Injectors: 160 lb/h at 3 bar, 6 of them'),
      change('pump', 'Fuel pump 525 L/h at 3 bar'),
    ],
    'methanol',
  ],
  [[change('fuel', 'E85 as labelled in place of gasoline')], 'E85 as labelled'],
  [[change('injectors', 'Injectors: 160 lb/h at 3 bar')], 'injectors 160 lb/h at 3 bar'],
  [
    [change('pulley', 'Crank pulley 175 mm in place of 165 mm'), change('breathing', 'Cam: 12° longer cam')],
    'crank pulley 175 mm, 12° longer cam',
  ],
])('changes in few words, without what follows of itself', (changes, words) => {
  expect(shortChanges({ changes })).toBe(words);
});

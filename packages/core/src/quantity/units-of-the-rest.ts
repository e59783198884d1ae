import { HOUR, MINUTE } from './defining-constants.ts';
import { unit } from './unit.ts';

/** Ratio (1), time in s, voltage in V. `λ` is air over stoichiometric air; `:1` serves compression and air to fuel. */
export const UNITS_OF_THE_REST = [
  unit('ratio', '', 1, '1 | - | ratio'),
  unit('ratio', '%', 0.01, 'percent | per cent | pct | % RH | RH % | %rel'),
  unit('ratio', 'λ', 1, 'lambda'),
  unit('ratio', ':1', 1, 'AFR | A/F'),

  unit('time', 's', 1, 'sec | second | seconds'),
  unit('time', 'ms', 1e-3, 'msec'),
  unit('time', 'min', MINUTE, 'minute | minutes'),
  unit('time', 'h', HOUR, 'hr | hour | hours'),

  unit('voltage', 'V', 1, 'volt | volts | VDC'),
  unit('voltage', 'mV', 1e-3, '', { exactCase: true }),
];

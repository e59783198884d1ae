import { MINUTE } from './defining-constants.ts';
import { unit } from './unit.ts';

const TURN = 2 * Math.PI;

/** Engine speed in r/min, sweep rate in r/min per second, frequency in Hz, angle in rad. */
export const UNITS_OF_TURNING = [
  unit('frequency', 'Hz', 1, '1/s | s-1 | hertz'),
  unit('frequency', 'kHz', 1000),

  unit('engineSpeed', 'rpm', 1, 'r/min | 1/min | /min | min-1 | rev/min | revs/min | revolutions per minute'),
  unit('engineSpeed', 'krpm', 1000, '1000 rpm | 1000 r/min | x1000 rpm | rpm x1000 | rpm/1000'),
  unit('engineSpeed', 'rev/s', MINUTE, 'r/s | rps | revs/s | Hz | 1/s | s-1'),
  unit('engineSpeed', 'rad/s', MINUTE / TURN, 'rad/sec'),

  unit(
    'sweepRate',
    'rpm/s',
    1,
    'r/min/s | rpm/sec | r/(min·s) | rpm per second | 1/min/s | min-1/s | rev/min/s',
  ),
  unit('sweepRate', 'rev/s²', MINUTE, 'r/s2'),
  unit('sweepRate', 'rad/s²', MINUTE / TURN, 'rad/sec2'),

  unit(
    'angle',
    '°',
    Math.PI / 180,
    'deg | degree | degrees | °CA | deg CA | ° crank | deg crank | °BTDC | deg BTDC',
  ),
  unit('angle', 'rad', 1, 'radian | radians'),
];

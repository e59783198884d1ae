import { fileOfPull, type PlannedPull } from './file-of-pull.ts';
import { COMMA_SI, COMMA_US, SEMICOLON_SI, UNITS_ROW_US } from './layouts.ts';
import type { DemoFile } from './model.ts';
import { reading } from './weather.ts';

/** The twelve logged pulls of the three days, in their order. */
export function pullFiles(seed: number): DemoFile[] {
  return PULLS.map((planned) => fileOfPull(seed, planned));
}

const DAY_ONE = {
  build: 'naturally aspirated',
  combinationRef: 'bare-base',
  setUpRef: 'set-up-1',
  sessionRef: 'day-one',
} as const;
const DAY_TWO = {
  build: 'supercharged',
  combinationRef: 'blown-base',
  setUpRef: 'set-up-2',
  sessionRef: 'day-two',
} as const;
const LATER = {
  build: 'supercharged, longer cam',
  combinationRef: 'blown-longer',
  setUpRef: 'set-up-3',
  sessionRef: 'day-two',
} as const;
const DAY_THREE = {
  build: 'supercharged, smaller pulley',
  combinationRef: 'blown-smaller-pulley',
  setUpRef: 'set-up-4',
  sessionRef: 'day-three',
} as const;

const PULLS: PlannedPull[] = [
  {
    ...DAY_ONE,
    ref: 'pull-1',
    order: 1,
    at: '2026-03-13T10:12:00+01:00',
    weather: reading(98.9, 21.4, 41),
    oilStartCelsius: 82.5,
    layout: COMMA_US,
  },
  {
    ...DAY_ONE,
    ref: 'pull-2',
    order: 2,
    at: '2026-03-13T10:31:00+01:00',
    weather: reading(98.9, 21.9, 40),
    oilStartCelsius: 83,
    layout: COMMA_SI,
    torqueSpikeRpm: 4810,
    note: 'One row of torque jumps near 4,800: the plug of the load cell was loose. Seated again after this pull.',
  },
  {
    ...DAY_ONE,
    ref: 'pull-3',
    order: 3,
    at: '2026-03-13T10:52:00+01:00',
    weather: reading(98.8, 22.3, 40),
    oilStartCelsius: 83,
    layout: SEMICOLON_SI,
  },
  {
    ...DAY_TWO,
    ref: 'pull-4',
    order: 1,
    at: '2026-03-14T10:02:00+01:00',
    weather: reading(98.7, 24.6, 44),
    oilStartCelsius: 82.5,
    layout: COMMA_US,
    note: 'Belt tightened by half a turn after this pull; a trace of dust, no noise.',
  },
  {
    ...DAY_TWO,
    ref: 'pull-5',
    order: 2,
    at: '2026-03-14T10:24:00+01:00',
    weather: reading(98.7, 25, 43),
    oilStartCelsius: 83.5,
    soak: 0.8,
    layout: SEMICOLON_SI,
  },
  {
    ...DAY_TWO,
    ref: 'pull-6',
    order: 3,
    at: '2026-03-14T10:41:00+01:00',
    weather: reading(98.7, 25.2, 43),
    oilStartCelsius: 83.5,
    soak: 1.2,
    layout: UNITS_ROW_US,
    liftRpm: 5600,
    outcome: 'aborted',
    event: { engineSpeedRpm: 5600, text: 'Throttle lifted early: a coolant hose was seeping.' },
  },
  {
    ...DAY_TWO,
    ref: 'pull-7',
    order: 4,
    at: '2026-03-14T11:15:00+01:00',
    weather: reading(98.6, 25.4, 43),
    oilStartCelsius: 83,
    soak: 0.6,
    layout: UNITS_ROW_US,
  },
  {
    ...LATER,
    ref: 'pull-8',
    order: 5,
    at: '2026-03-14T15:48:00+01:00',
    weather: reading(98.5, 26.1, 42),
    oilStartCelsius: 88.2,
    soak: 0.4,
    layout: COMMA_US,
    note: 'Valve lash set cold after the cam change. Fuel and spark as before, checked on a part-load run.',
  },
  {
    ...LATER,
    ref: 'pull-9',
    order: 6,
    at: '2026-03-14T16:09:00+01:00',
    weather: reading(98.5, 26.3, 42),
    oilStartCelsius: 88.6,
    soak: 1,
    layout: COMMA_SI,
  },
  {
    ...DAY_THREE,
    ref: 'pull-10',
    order: 1,
    at: '2026-03-15T11:20:00+01:00',
    weather: reading(98.9, 23.4, 42),
    oilStartCelsius: 83,
    layout: COMMA_US,
    note: 'Base cam and 80 mm pulley on, belt new and tightened after a warm-up.',
  },
  {
    ...DAY_THREE,
    ref: 'pull-11',
    order: 2,
    at: '2026-03-15T11:46:00+01:00',
    weather: reading(98.9, 23.8, 42),
    oilStartCelsius: 83.5,
    soak: 0.6,
    layout: UNITS_ROW_US,
  },
  {
    ...DAY_THREE,
    ref: 'pull-12',
    order: 3,
    at: '2026-03-15T12:15:00+01:00',
    weather: reading(98.8, 24.1, 41),
    oilStartCelsius: 83.5,
    soak: 0.9,
    layout: SEMICOLON_SI,
  },
];

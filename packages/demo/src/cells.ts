import type { DemoCell } from './model.ts';

/**
 * The invented shop's two cells. The weather station's calibration of cell 1 ran out after the first day of pulls, so that
 * the demo shows what that looks like; cell 2 was never used.
 */
export const CELLS: DemoCell[] = [
  {
    ref: 'cell-1',
    name: 'cell 1',
    brake: 'Invented. Water brake with a load cell on a 0.75 m arm.',
    altitude: 210,
    momentOfInertia: 0.12,
    notes: 'Invented. Fresh air from the yard side, 2.4 m³/s.',
    instruments: [
      {
        ref: 'cell-1-load',
        name: 'Load cell',
        measures: 'torque',
        serial: 'invented 1',
        calibrations: [
          {
            day: '2026-03-11',
            validUntil: '2026-04-10',
            how: 'Six dead weights up and down, arm 0.75 m, trunnion shaken.',
            found: 'span +0.1 %, zero 0.3 N·m',
            by: 'invented',
          },
        ],
      },
      {
        ref: 'cell-1-weather',
        name: 'Weather station',
        measures: 'weather',
        serial: 'invented 2',
        calibrations: [
          {
            day: '2025-03-13',
            validUntil: '2026-03-13',
            how: 'Barometer and thermometer beside a reference, one day.',
            found: 'pressure +0.04 kPa, temperature -0.2 K',
            by: 'invented',
          },
        ],
      },
    ],
  },
  {
    ref: 'cell-2',
    name: 'cell 2',
    brake: 'Invented. Eddy-current brake, being set up.',
    altitude: 210,
    momentOfInertia: null,
    notes: 'Invented. No pull was made here yet.',
    instruments: [
      { ref: 'cell-2-load', name: 'Load cell', measures: 'torque', serial: 'invented 3', calibrations: [] },
    ],
  },
];

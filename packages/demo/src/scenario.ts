import { toInside } from '@pullbook/core/quantity';
import { CELLS } from './cells.ts';
import { DEMO_SEED } from './demo-seed.ts';
import { hiddenTruthOf } from './hidden-truth.ts';
import { inventedMap } from './invented-map.ts';
import type { DemoScenario } from './model.ts';
import { PREDICTIONS } from './predictions.ts';
import { PUBLISHED } from './published.ts';
import { pullFiles } from './pull-files.ts';
import { SHEET_BEFORE_REBUILD, sheet } from './sheets.ts';
import { TRIALS } from './trials.ts';

const ENGINE = 'engine-now';
const ENGINE_BEFORE = 'engine-before';
const CELL = 'cell 1';

/**
 * The demo: an invented hill-climb car's 3.8-litre straight six, pulled naturally aspirated on one day, with a
 * centrifugal supercharger on the next, then with a longer cam at the same pulley, and on a third day with the base cam
 * and a smaller pulley. One pull went wrong, and the longer cam was never pulled without the supercharger. The same seed
 * gives the same bytes; another one has other noise and another truth behind it (`hiddenTruthOf`).
 *
 * `demoScenario().files[0].name` is the first logger file.
 */
export function demoScenario(seed: number = DEMO_SEED): DemoScenario {
  return {
    bookName: 'Hill-climb six',
    engines: [
      {
        ref: ENGINE,
        name: 'Hill-climb six',
        buildRevision: 'rebuilt, winter 2025',
        notes: 'Invented. 3.8-litre straight six, 96 x 88 mm.',
      },
      {
        ref: ENGINE_BEFORE,
        name: 'Hill-climb six',
        buildRevision: 'before the rebuild',
        notes: 'Invented. Only one figure is remembered.',
      },
    ],
    packages: [
      {
        ref: 'supercharger-package',
        name: 'Supercharger package',
        covers: ['supercharger', 'drive', 'cooler', 'fuelSystem.injectorFlow'],
      },
    ],
    maps: [inventedMap(hiddenTruthOf(seed))],
    combinations: [
      {
        ref: 'bare-base',
        engineRef: ENGINE,
        name: 'Naturally aspirated, base cam',
        sheetText: sheet({ name: 'Naturally aspirated, base cam', cam: 'base', supercharged: false }),
        madeFromRef: null,
        packageRefs: [],
        createdAt: '2026-03-12T17:30:00+01:00',
      },
      {
        ref: 'blown-base',
        engineRef: ENGINE,
        name: 'Supercharged, base cam',
        sheetText: sheet({ name: 'Supercharged, base cam', cam: 'base', supercharged: true }),
        madeFromRef: 'bare-base',
        packageRefs: ['supercharger-package'],
        createdAt: '2026-03-13T18:10:00+01:00',
      },
      {
        ref: 'blown-longer',
        engineRef: ENGINE,
        name: 'Supercharged, 12° longer cam',
        sheetText: sheet({ name: 'Supercharged, 12° longer cam', cam: 'longer', supercharged: true }),
        madeFromRef: 'blown-base',
        packageRefs: ['supercharger-package'],
        createdAt: '2026-03-14T12:05:00+01:00',
      },
      {
        ref: 'bare-longer',
        engineRef: ENGINE,
        name: 'Naturally aspirated, 12° longer cam',
        sheetText: sheet({ name: 'Naturally aspirated, 12° longer cam', cam: 'longer', supercharged: false }),
        madeFromRef: 'bare-base',
        packageRefs: [],
        createdAt: '2026-03-14T16:25:00+01:00',
      },
      {
        ref: 'blown-smaller-pulley',
        engineRef: ENGINE,
        name: 'Supercharged, base cam, smaller blower pulley',
        sheetText: sheet({
          name: 'Supercharged, base cam, smaller blower pulley',
          cam: 'base',
          supercharged: true,
          blowerPulley: '80 mm',
        }),
        madeFromRef: 'blown-base',
        packageRefs: ['supercharger-package'],
        createdAt: '2026-03-14T12:35:00+01:00',
      },
      {
        ref: 'before-rebuild',
        engineRef: ENGINE_BEFORE,
        name: 'Before the rebuild',
        sheetText: SHEET_BEFORE_REBUILD,
        madeFromRef: null,
        packageRefs: [],
        createdAt: '2026-03-12T17:00:00+01:00',
      },
    ],
    sessions: [
      {
        ref: 'day-one',
        name: 'Naturally aspirated',
        cell: CELL,
        day: '2026-03-13',
        notes: 'Oil and coolant warmed at 2,500 rpm before each pull.',
      },
      {
        ref: 'day-two',
        name: 'Supercharger and cam',
        cell: CELL,
        day: '2026-03-14',
        notes: 'Belt tightened after the first pull.',
      },
      {
        ref: 'day-three',
        name: 'Smaller pulley',
        cell: CELL,
        day: '2026-03-15',
        notes: 'New belt, tightened after the warm-up.',
      },
    ],
    cells: CELLS,
    setUps: [
      {
        ref: 'set-up-1',
        combinationRef: 'bare-base',
        fittedAt: '2026-03-13T08:40:00+01:00',
        notes: 'First time on the brake after the rebuild.',
      },
      {
        ref: 'set-up-2',
        combinationRef: 'blown-base',
        fittedAt: '2026-03-14T08:15:00+01:00',
        notes: 'Engine left on the brake overnight; supercharger fitted there.',
      },
      {
        ref: 'set-up-3',
        combinationRef: 'blown-longer',
        fittedAt: '2026-03-14T14:20:00+01:00',
        notes: 'Cam changed on the brake; same pulley, same belt.',
      },
      {
        ref: 'set-up-4',
        combinationRef: 'blown-smaller-pulley',
        fittedAt: '2026-03-15T09:10:00+01:00',
        notes: 'Base cam back in, 80 mm pulley in place of 84 mm.',
      },
    ],
    files: pullFiles(seed),
    summaries: [
      {
        ref: 'pull-before-rebuild',
        name: 'Best pull before the rebuild',
        combinationRef: 'before-rebuild',
        summary: {
          peakPower: toInside(301, 'hp'),
          peakPowerRpm: 6100,
          peakTorque: toInside(281, 'lb-ft'),
          peakTorqueRpm: 4500,
        },
        origin: 'remembered',
        carried: { standard: 'unknown', factor: null },
        notes: [
          {
            at: '2026-03-12T17:05:00+01:00',
            text: 'From memory: 301 hp at 6,100 and 281 lb-ft at 4,500, on another brake. The sheet is lost.',
          },
        ],
      },
    ],
    trials: TRIALS,
    predictions: PREDICTIONS,
    published: PUBLISHED,
    silenced: [
      {
        ruleId: 'V30',
        pullRef: 'pull-2',
        reason: 'The plug of the load cell was loose and was seated again after this pull.',
        at: '2026-03-13T10:40:00+01:00',
      },
    ],
  };
}

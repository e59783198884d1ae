import type { DemoTrial } from './model.ts';

type Pulls = DemoTrial['pulls'];

const counted = (key: string, ...refs: string[]): Pulls =>
  refs.map((pullRef) => ({ pullRef, key, role: 'counted', reason: null }));

const lifted = (key: string): Pulls => [
  {
    pullRef: 'pull-6',
    key,
    role: 'rejected',
    reason: 'Throttle lifted at 5,600 rpm: a coolant hose was seeping.',
  },
];

const BARE_BASE = ['pull-1', 'pull-2', 'pull-3'];
const BLOWN_BASE = ['pull-4', 'pull-5', 'pull-7'];
const BLOWN_LONGER = ['pull-8', 'pull-9'];
const SMALLER_PULLEY = ['pull-10', 'pull-11', 'pull-12'];

/** `AB` as A, then B. */
const planned = (order: string): { key: string }[] => [...order].map((key) => ({ key }));

/** Four questions: two with a small answer, one with a big one, and one that was never measured. */
export const TRIALS: DemoTrial[] = [
  {
    ref: 'trial-cam',
    question: 'What does the longer cam add at the same pulley?',
    kind: 'comparison',
    combinations: [
      { key: 'A', combinationRef: 'blown-base', shortName: 'base cam' },
      { key: 'B', combinationRef: 'blown-longer', shortName: '12° longer cam' },
    ],
    pulls: [...counted('A', ...BLOWN_BASE), ...lifted('A'), ...counted('B', ...BLOWN_LONGER)],
    correction: 'sae-j1349',
    averagesWindowRpm: [4000, 6500],
    remark: 'The car is geared to stay between 4,000 and 6,500 rpm, so that is where it counts.',
    createdAt: '2026-03-14T16:40:00+01:00',
  },
  {
    ref: 'trial-supercharger',
    question: 'What does the supercharger add on the base cam?',
    kind: 'comparison',
    combinations: [
      { key: 'A', combinationRef: 'bare-base', shortName: 'no supercharger' },
      { key: 'B', combinationRef: 'blown-base', shortName: 'supercharger' },
    ],
    pulls: [...counted('A', ...BARE_BASE), ...counted('B', ...BLOWN_BASE), ...lifted('B')],
    correction: 'sae-j1349',
    averagesWindowRpm: null,
    remark: '',
    createdAt: '2026-03-14T11:30:00+01:00',
  },
  {
    ref: 'trial-missing-baseline',
    question: 'What would the longer cam make without the supercharger?',
    kind: 'comparison',
    combinations: [
      { key: 'A', combinationRef: 'bare-longer', shortName: 'longer cam without supercharger' },
      { key: 'B', combinationRef: 'bare-base', shortName: 'base cam, no supercharger' },
      { key: 'C', combinationRef: 'blown-longer', shortName: 'longer cam, supercharger' },
    ],
    pulls: [...counted('B', ...BARE_BASE), ...counted('C', ...BLOWN_LONGER)],
    correction: 'sae-j1349',
    averagesWindowRpm: null,
    remark: '',
    plan: {
      gainRatio: 0.06,
      odds: 0.8,
      pulls: planned('BBBCCCAABB'),
      looksAt: [10],
      stopCriteria: null,
      notes:
        'Once more as it stands, then the supercharger comes off, then the base cam goes back in: all on one day, on one drum of fuel.',
    },
    createdAt: '2026-03-14T16:30:00+01:00',
  },
  {
    ref: 'trial-pulley',
    question: 'What does the smaller pulley add?',
    kind: 'comparison',
    combinations: [
      { key: 'A', combinationRef: 'blown-base', shortName: '84 mm pulley' },
      { key: 'B', combinationRef: 'blown-smaller-pulley', shortName: '80 mm pulley' },
    ],
    pulls: [...counted('A', ...BLOWN_BASE), ...lifted('A'), ...counted('B', ...SMALLER_PULLEY)],
    correction: 'sae-j1349',
    averagesWindowRpm: [4000, 6500],
    remark: '',
    createdAt: '2026-03-14T12:40:00+01:00',
  },
];

import { CALIBRATED, type Gate, NO_FALSE_CLEAR, NO_FALSE_SPEED } from './gates.ts';
import { blocks, inOrder, type Scene, type Told } from './scene.ts';

/** One row of the study. */
export interface Case {
  id: string;
  section: Section;
  /** What is simulated, in words. */
  says: string;
  scene: Scene;
  /** Empty: only reported. */
  gates: Gate[];
  /** Pulls at which a verdict is looked at, up to the first that is clear; missing: once, at the end. */
  looks?: { at: readonly number[]; planned: boolean };
}

export type Section =
  | 'Spreads drawn from the stated prior'
  | 'Spreads exactly as stated'
  | 'History wrong'
  | 'Drift'
  | 'Soak'
  | 'Other forms of scatter'
  | 'Several changes'
  | 'Looks'
  | 'Little history'
  | 'No difference'
  | 'Power';

/** A shop that has pulled for years: its scatter is known well. */
export const KNOWN: Told = {
  pull: { sigma: 0.004, degreesOfFreedom: 20 },
  setUp: { sigma: 0.005, degreesOfFreedom: 10 },
  day: { sigma: 0.0087, degreesOfFreedom: 10 },
  cell: { sigma: 0.03, degreesOfFreedom: 10 },
  within: { sigma: 0.003, degreesOfFreedom: 20, lengthRpm: 250 },
  driftPerHour: { sigma: 0.002, degreesOfFreedom: 10 },
};

/** A new shop: the trade's ranges, little better than a guess. */
export const GUESSED: Told = {
  pull: { sigma: 0.006, degreesOfFreedom: 6 },
  setUp: { sigma: 0.005, degreesOfFreedom: 4 },
  day: { sigma: 0.0087, degreesOfFreedom: 4 },
  cell: { sigma: 0.03, degreesOfFreedom: 4 },
  within: { sigma: 0.003, degreesOfFreedom: 8, lengthRpm: 250 },
  driftPerHour: { sigma: 0.002, degreesOfFreedom: 4 },
};

const untimed = (order: string) => inOrder(order, { timed: false });
const timed = (order: string) => inOrder(order, { timed: true });
const SIZES = [1, 2, 3, 5] as const;
const NOT_BELOW = 0.93;
const withGain = (gates: Gate[], gain: Scene['gain']) => [
  ...gates,
  NO_FALSE_SPEED,
  ...(gain === 'none' ? [NO_FALSE_CLEAR] : []),
];

const drawn: Case[] = [
  ...SIZES.map((n): Case => {
    const gain = 'none';
    return {
      id: `drawn-one-set-up-${n}`,
      section: 'Spreads drawn from the stated prior',
      says: `${n} + ${n} pulls, not taken apart, scatter known well, no gain`,
      scene: { pulls: untimed(blocks(n, 'one')), told: KNOWN, truth: 'drawn', gain },
      gates: withGain(CALIBRATED, gain),
    };
  }),
  ...SIZES.map((n): Case => {
    const gain = n === 1 ? 'none' : n === 2 ? 'above-4200' : n === 3 ? 'crossing' : 'steady';
    return {
      id: `drawn-guessed-${n}`,
      section: 'Spreads drawn from the stated prior',
      says: `${n} + ${n} pulls, taken apart between, scatter guessed, gain: ${gain}`,
      scene: { pulls: untimed(blocks(n, 'two')), told: GUESSED, truth: 'drawn', gain },
      gates: withGain(CALIBRATED, gain),
    };
  }),
  ...(
    [
      ['returns', 'A1 A1 B2 B2 A3 A3', 'back to the baseline in a third set-up'],
      ['alternate', 'A1 B2 A3 B4', 'each pull in a set-up of its own'],
      ['another-day', 'A1 A1 | B2 B2', 'the change on another day'],
      ['day-and-return', 'A1 A1 B2 | A3 A3 B4', 'both on two days'],
      ['another-cell', 'A1 A1 @ B2 B2', 'the change in another cell'],
      ['unequal', 'A1 B2 B2 B2 B2 B2', 'one pull against five, taken apart between'],
      ['unequal-one', 'A1 B1 B1 B1 B1 B1', 'one pull against five, not taken apart'],
    ] as const
  ).map(
    ([id, order, says]): Case => ({
      id: `drawn-${id}`,
      section: 'Spreads drawn from the stated prior',
      says: `${order}: ${says}, scatter guessed, no gain`,
      scene: { pulls: untimed(order), told: GUESSED, truth: 'drawn', gain: 'none' },
      gates: withGain(CALIBRATED, 'none'),
    }),
  ),
];

const exact: Case[] = [
  ...SIZES.flatMap((n) =>
    (['one', 'two'] as const).map(
      (setUps): Case => ({
        id: `exact-${setUps}-${n}`,
        section: 'Spreads exactly as stated',
        says: `${n} + ${n} pulls, ${setUps === 'one' ? 'not taken apart' : 'taken apart between'}, known well`,
        scene: { pulls: untimed(blocks(n, setUps)), told: KNOWN, truth: 'exact', gain: 'none' },
        gates: atLeast(NOT_BELOW),
      }),
    ),
  ),
  {
    id: 'exact-returns',
    section: 'Spreads exactly as stated',
    says: 'A1 A1 B2 B2 A3 A3: back to the baseline in a third set-up, guessed',
    scene: { pulls: untimed('A1 A1 B2 B2 A3 A3'), told: GUESSED, truth: 'exact', gain: 'none' },
    gates: atLeast(NOT_BELOW),
  },
];

function atLeast(low: number): Gate[] {
  return [
    { measure: 'mean', low },
    { measure: 'pointwise', low },
    { measure: 'simultaneous', low },
  ];
}

const WRONG_FLOOR: Record<number, number> = { 2: 0.88, 3: 0.91, 5: 0.93 };
const wrong: Case[] = [0.5, 1.5, 2].flatMap((truth) =>
  SIZES.map((n): Case => {
    const low = truth < 1 ? NOT_BELOW : WRONG_FLOOR[n];
    return {
      id: `wrong-${truth}-${n}`,
      section: 'History wrong',
      says: `${n} + ${n} pulls that scatter ${truth} times as stated, not taken apart`,
      scene: { pulls: untimed(blocks(n, 'one')), told: KNOWN, truth, gain: 'none' },
      gates: low === undefined ? [] : [{ measure: 'mean', low }],
    };
  }),
);

const drift: Case[] = [
  ...['A1 B1 A1', 'A1 B1 B1 A1', 'A1 A1 B1 B1 B1 B1 A1 A1', 'A1 B1 A1 B1'].map(
    (order): Case => ({
      id: `drift-${order.replaceAll(/[1 ]/g, '')}`,
      section: 'Drift',
      says: `${order}: five times the stated drift, guessed`,
      scene: { pulls: timed(order), told: GUESSED, truth: 'drawn', gain: 'none', drift: 5 },
      gates: withGain(CALIBRATED, 'none'),
    }),
  ),
  ...['A1 A1 B1 B1', 'A1 A1 A1 B1 B1 B1'].map(
    (order): Case => ({
      id: `drift-blocks-${order.length}`,
      section: 'Drift',
      says: `${order}: blocks, drift as the prior has it, guessed`,
      scene: { pulls: timed(order), told: GUESSED, truth: 'drawn', gain: 'none', drift: 'drawn' },
      gates: withGain(CALIBRATED, 'none'),
    }),
  ),
  {
    id: 'drift-blocks-more',
    section: 'Drift',
    says: 'A1 A1 B1 B1: blocks, five times the stated drift: no order shows it',
    scene: { pulls: timed('A1 A1 B1 B1'), told: GUESSED, truth: 'drawn', gain: 'none', drift: 5 },
    gates: [],
  },
  {
    id: 'drift-returns',
    section: 'Drift',
    says: 'A1 A1 B2 B2 A3 A3: returns in another set-up, drift as the prior has it, guessed',
    scene: { pulls: timed('A1 A1 B2 B2 A3 A3'), told: GUESSED, truth: 'drawn', gain: 'none', drift: 'drawn' },
    gates: withGain(CALIBRATED, 'none'),
  },
];

const soak: Case[] = ['A1 B1 A1', 'A1 B1 B1 A1'].flatMap((order) =>
  [2, 0].map(
    (warmUps): Case => ({
      id: `soak-${order.replaceAll(/[1 ]/g, '')}-${warmUps}`,
      section: 'Soak',
      says: `${order}: heat takes 1 % towards a limit, ${warmUps === 0 ? 'no warm-up pull' : 'after two warm-up pulls'}, known well`,
      scene: {
        pulls: timed(order),
        told: KNOWN,
        truth: 'drawn',
        gain: 'none',
        soak: { share: 0.01, hours: 0.3, warmUps },
      },
      gates: warmUps === 0 ? [] : withGain(CALIBRATED, 'none'),
    }),
  ),
);

/** Not what the bands are made for; what must hold is that they seldom call clear what is not there. */
const FORGIVING: Gate[] = [{ measure: 'falseClear', high: 0.07 }];
const forms: Case[] = [1, 2, 3, 5].flatMap((n) =>
  (
    [
      ['heavy', { tails: 'heavy' }, 'heavy tails'],
      ['waves', { along: 'waves' }, 'waves along the speed'],
    ] as const
  ).map(
    ([id, form, says]): Case => ({
      id: `${id}-${n}`,
      section: 'Other forms of scatter',
      says: `${n} + ${n} pulls, ${says}, scatter as stated and known well`,
      scene: { pulls: untimed(blocks(n, 'one')), told: KNOWN, truth: 'exact', gain: 'none', ...form },
      gates: FORGIVING,
    }),
  ),
);

/** All gains at once: the band is made for the family, and may be wider where gains share less than is assumed. */
const FAMILY: Gate[] = [{ measure: 'mean', low: 0.93, high: 0.985 }, NO_FALSE_CLEAR];
const several: Case[] = [
  ['A1 A1 B1 B1 C1 C1', 'two changes, not taken apart'],
  ['A1 A1 B2 B2 C3 C3 D4 D4', 'three changes, taken apart between'],
  ['A1 A1 A1 B1 B1 C1 C1 D1 D1 E1 E1', 'four changes, not taken apart'],
].map(
  ([order, says]): Case => ({
    id: `several-${new Set(order!.replaceAll(/[\d ]/g, '')).size - 1}`,
    section: 'Several changes',
    says: `${order}: ${says}, known well; all gains at once`,
    scene: { pulls: untimed(order!), told: KNOWN, truth: 'drawn', gain: 'none' },
    gates: FAMILY,
  }),
);

const LOOKS = [2, 4, 6, 8];
const looks: Case[] = [true, false].flatMap((planned) =>
  (['drawn', 'exact'] as const).map(
    (truth): Case => ({
      id: `looks-${planned ? 'planned' : 'unplanned'}-${truth}`,
      section: 'Looks',
      says: `A B B A A B B A, looked at after ${LOOKS.join(', ')} pulls until clear, ${planned ? 'as planned' : 'not planned'}, known well, spreads ${truth === 'drawn' ? 'drawn' : 'as stated'}`,
      scene: { pulls: untimed('A1 B1 B1 A1 A1 B1 B1 A1'), told: KNOWN, truth, gain: 'none' },
      gates: planned ? [{ measure: 'falseClear', high: 0.055 }] : [],
      looks: { at: LOOKS, planned },
    }),
  ),
);

const ONE: Told = {
  ...KNOWN,
  pull: { sigma: 0.004, degreesOfFreedom: 1 },
  within: { sigma: 0.003, degreesOfFreedom: 1, lengthRpm: 250 },
};
const little: Case[] = ([1, 2, 3] as const).flatMap((n) =>
  (['drawn', 'exact'] as const).map(
    (truth): Case => ({
      id: `history-of-one-${truth}-${n}`,
      section: 'Little history',
      says: `${n} + ${n} pulls, not taken apart, history worth one degree of freedom, spreads ${truth === 'drawn' ? 'drawn' : 'as stated'}`,
      scene: { pulls: untimed(blocks(n, 'one')), told: ONE, truth, gain: 'none' },
      gates: [{ measure: 'mean', low: NOT_BELOW }, NO_FALSE_CLEAR],
    }),
  ),
);

const noDifference: Case[] = ([2, 5] as const).map(
  (n): Case => ({
    id: `no-difference-${n}`,
    section: 'No difference',
    says: `${n} + ${n} pulls, not taken apart, known well, true gain just the 1 % that matters`,
    scene: { pulls: untimed(blocks(n, 'one')), told: KNOWN, truth: 'drawn', gain: 'one-per-cent' },
    gates: [{ measure: 'falseNoDifference', high: 0.05 }],
  }),
);

const power: Case[] = SIZES.map(
  (n): Case => ({
    id: `power-${n}`,
    section: 'Power',
    says: `${n} + ${n} pulls, not taken apart, 1 % there, scatter 0.4 % as stated and known well`,
    scene: { pulls: untimed(blocks(n, 'one')), told: KNOWN, truth: 'exact', gain: 'one-per-cent' },
    gates: [],
  }),
);

export const CASES: readonly Case[] = [
  ...drawn,
  ...exact,
  ...wrong,
  ...drift,
  ...soak,
  ...forms,
  ...several,
  ...looks,
  ...little,
  ...noDifference,
  ...power,
];

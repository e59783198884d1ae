import { fieldWords } from './field-words.ts';
import type { CamFigureId, CombinationSheet, DerivedFigure } from './model.ts';
import { sheetNumber, sheetValue } from './sheet-number.ts';

const HALF_TURN = Math.PI;

/** The four events of a card at one lift, rad of crank: before TDC, after BDC, before BDC, after TDC. */
export interface CamEvents {
  intakeOpens: number;
  intakeCloses: number;
  exhaustOpens: number;
  exhaustCloses: number;
}

/** What the four events say of a cam, rad of crank; lobe separation is in degrees of the cam. */
export interface CamFigures {
  durationIntake: number;
  durationExhaust: number;
  intakeCentreline: number;
  exhaustCentreline: number;
  lobeSeparation: number;
  advance: number;
  overlap: number;
}

/**
 * Figures of a cam card from its events, the centreline being the middle between opening and closing: exact for a symmetric
 * lobe, a few degrees off the nose for another. `IO 32, IC 64, EO 75, EC 27` gives durations 276 and 282, centrelines 106
 * and 114, lobe separation 110, advance 4, overlap 59.
 */
export function camFromEvents({
  intakeOpens,
  intakeCloses,
  exhaustOpens,
  exhaustCloses,
}: CamEvents): CamFigures {
  const intakeCentreline = (HALF_TURN + intakeCloses - intakeOpens) / 2;
  const exhaustCentreline = (HALF_TURN + exhaustOpens - exhaustCloses) / 2;
  const lobeSeparation = (intakeCentreline + exhaustCentreline) / 2;
  return {
    durationIntake: intakeOpens + HALF_TURN + intakeCloses,
    durationExhaust: exhaustOpens + HALF_TURN + exhaustCloses,
    intakeCentreline,
    exhaustCentreline,
    lobeSeparation,
    advance: lobeSeparation - intakeCentreline,
    overlap: intakeOpens + exhaustCloses,
  };
}

type Needs = readonly string[];

/** One way to a figure: the fields of the section `cam` it needs, and what it makes of them. */
interface Way {
  needs: Needs;
  compute: (values: readonly number[]) => number;
  /** The formula with the inputs as entered. */
  words: (texts: readonly string[]) => string;
}

const EVENTS_IN: Needs = ['intakeOpens', 'intakeCloses'];
const EVENTS_EX: Needs = ['exhaustOpens', 'exhaustCloses'];

const FIGURES: readonly { id: CamFigureId; label: string; ways: readonly Way[] }[] = [
  {
    id: 'eventDurationIntake',
    label: 'Intake duration from its events',
    ways: [
      {
        needs: EVENTS_IN,
        compute: ([opens, closes]) => opens! + HALF_TURN + closes!,
        words: ([opens, closes]) => `${opens} + 180° + ${closes}`,
      },
    ],
  },
  {
    id: 'eventDurationExhaust',
    label: 'Exhaust duration from its events',
    ways: [
      {
        needs: EVENTS_EX,
        compute: ([opens, closes]) => opens! + HALF_TURN + closes!,
        words: ([opens, closes]) => `${opens} + 180° + ${closes}`,
      },
    ],
  },
  {
    id: 'eventIntakeCentreline',
    label: 'Intake centreline from its events',
    ways: [
      {
        needs: EVENTS_IN,
        compute: ([opens, closes]) => (HALF_TURN + closes! - opens!) / 2,
        words: ([opens, closes]) => `(180° + ${closes} − ${opens}) / 2, after top dead centre`,
      },
    ],
  },
  {
    id: 'exhaustCentreline',
    label: 'Exhaust centreline',
    ways: [
      {
        needs: EVENTS_EX,
        compute: ([opens, closes]) => (HALF_TURN + opens! - closes!) / 2,
        words: ([opens, closes]) => `(180° + ${opens} − ${closes}) / 2, before top dead centre`,
      },
      {
        needs: ['lobeSeparation', 'intakeCentreline'],
        compute: ([separation, centreline]) => 2 * separation! - centreline!,
        words: ([separation, centreline]) => `2 × ${separation} − ${centreline}, before top dead centre`,
      },
    ],
  },
  {
    id: 'eventLobeSeparation',
    label: 'Lobe separation from the events',
    ways: [
      {
        needs: [...EVENTS_IN, ...EVENTS_EX],
        compute: (events) => fromFour(events).lobeSeparation,
        words: () => 'half the sum of both centrelines',
      },
    ],
  },
  {
    id: 'advanceAsFitted',
    label: 'Advance as fitted',
    ways: [
      {
        needs: [...EVENTS_IN, ...EVENTS_EX],
        compute: (events) => fromFour(events).advance,
        words: () => 'lobe separation less intake centreline, both from the events',
      },
      {
        needs: ['lobeSeparation', 'intakeCentreline'],
        compute: ([separation, centreline]) => separation! - centreline!,
        words: ([separation, centreline]) => `${separation} − ${centreline}`,
      },
    ],
  },
  {
    id: 'overlap',
    label: 'Overlap',
    ways: [
      {
        needs: ['intakeOpens', 'exhaustCloses'],
        compute: ([opens, closes]) => opens! + closes!,
        words: ([opens, closes]) => `${opens} + ${closes}`,
      },
      {
        needs: ['durationIntake', 'durationExhaust', 'lobeSeparation'],
        compute: ([intake, exhaust, separation]) => (intake! + exhaust!) / 2 - 2 * separation!,
        words: ([intake, exhaust, separation]) => `(${intake} + ${exhaust}) / 2 − 2 × ${separation}`,
      },
    ],
  },
];

const fromFour = ([intakeOpens, intakeCloses, exhaustOpens, exhaustCloses]: readonly number[]): CamFigures =>
  camFromEvents({
    intakeOpens: intakeOpens!,
    intakeCloses: intakeCloses!,
    exhaustOpens: exhaustOpens!,
    exhaustCloses: exhaustCloses!,
  });

/**
 * What the cam card of a sheet gives, each by the first way whose inputs are there, with the lift it holds at. A figure none
 * of whose inputs is on the sheet is left out; one that lacks some says which.
 */
export function camFigures(sheet: CombinationSheet): DerivedFigure[] {
  return FIGURES.flatMap(({ id, label, ways }): DerivedFigure[] => {
    const base = { id, label, kind: 'angle' } as const;
    for (const { needs, compute, words } of ways) {
      const values = needs.map((field) => sheetNumber(sheet, 'cam', field));
      if (values.some((value) => value === null)) continue;
      const texts = needs.map((field) => sheetValue(sheet, 'cam', field)!.text);
      const from = `${words(texts)}${liftText(sheet, needs)}`;
      return [{ ...base, value: compute(values as number[]), from, missing: null }];
    }
    const begun = ways.find(({ needs }) => needs.some((field) => sheetValue(sheet, 'cam', field) !== null));
    if (begun === undefined) return [];
    const lacking = begun.needs.filter((field) => sheetNumber(sheet, 'cam', field) === null);
    return [{ ...base, value: null, from: '', missing: `not known: ${fieldWords(lacking)}` }];
  });
}

/** `, at 1 mm`: durations and events hold at one lift only. */
function liftText(sheet: CombinationSheet, needs: Needs): string {
  const isEvents = needs.some((field) => /(Opens|Closes)$/.test(field));
  if (!isEvents && !needs.some((field) => field.startsWith('duration'))) return '';
  const lift =
    (isEvents && sheetValue(sheet, 'cam', 'eventsLift')) || sheetValue(sheet, 'cam', 'durationLift');
  return lift?.value == null ? ', at a lift that is not told' : `, at ${lift.text}`;
}

import { CORRECTIONS, type CorrectionId } from '../air/index.ts';
import {
  type CarriedCorrection,
  type CorrectionApplied,
  type PullViewer,
  type Recipe,
  viewPull,
} from '../pull/index.ts';
import { type Remark, remark } from '../remark/index.ts';
import type { ComparedInput } from './model.ts';

type Entry = ComparedInput['pulls'][number];

/** The same pull through a changed recipe; the view at hand where nothing changes. */
export function viewedWith(entry: Entry, changes: Partial<Recipe>, view: PullViewer = viewPull): Entry {
  const recipe = { ...entry.view.recipe, ...changes };
  const same = Object.entries(changes).every(
    ([name, value]) => entry.view.recipe[name as keyof Recipe] === value,
  );
  return same ? entry : { pull: entry.pull, view: view(entry.pull, recipe) };
}

/**
 * All pulls in one standard, so that no difference of standards is taken for a gain: the one asked for; where a pull
 * cannot reach it, observed; where one cannot reach that either, every pull as it was recorded. The remarks name the pulls
 * that stood in the way.
 */
export function inOneStandard(
  inputs: readonly ComparedInput[],
  view: PullViewer = viewPull,
): {
  inputs: ComparedInput[];
  correction: CorrectionApplied;
  remarks: Remark[];
} {
  const asked = inputs.flatMap((input) => input.pulls)[0]?.view.recipe.correction ?? 'observed';
  const inAsked = everyPull(inputs, () => asked, view);
  const short = notReached(inAsked);
  if (short.length === 0)
    return { inputs: inAsked, correction: appliedTo(inAsked, asked, true), remarks: [] };

  const names = short.map((entry) => `"${entry.pull.name}" (${whyNot(entry)})`).join(', ');
  const standard = CORRECTIONS[asked].name;
  const inObserved = everyPull(inputs, () => 'observed', view);
  if (asked !== 'observed' && notReached(inObserved).length === 0)
    return {
      inputs: inObserved,
      correction: { ...appliedTo(inObserved, asked, false), standard: 'observed', factor: 1 },
      remarks: [
        remark(
          'caution',
          'compared-as-observed',
          `Not all pulls can be brought to ${standard}: ${names}. All of them are compared as observed. Enter what is missing to compare them in ${standard}.`,
        ),
      ],
    };

  const asRecorded = everyPull(inputs, ({ pull }) => recordedIn(pull.carried.standard), view);
  const carried = new Set(
    asRecorded.flatMap((input) => input.pulls.map(({ pull }) => pull.carried.standard)),
  );
  const mixed = carried.size > 1;
  return {
    inputs: asRecorded,
    correction: { ...appliedTo(asRecorded, asked, false), standard: mixed ? 'unknown' : [...carried][0]! },
    remarks: [
      remark(
        'caution',
        mixed ? 'compared-in-different-standards' : 'compared-as-recorded',
        `Not all pulls can be brought to ${standard}: ${names}. Every pull is compared as it was recorded` +
          (mixed
            ? `, and they were recorded in different standards (${[...carried].map(standardText).join(', ')}): between standards alone lie up to 4 %.`
            : ` (${standardText([...carried][0]!)}).`) +
          ' Enter what is missing to compare them like for like.',
      ),
    ],
  };
}

/** A standard as people read it, also where none is known. */
export function standardText(standard: CarriedCorrection['standard']): string {
  if (standard === 'not stated') return 'not stated';
  if (standard === 'unknown') return 'corrected, standard unknown';
  return CORRECTIONS[standard].name;
}

const recordedIn = (standard: CarriedCorrection['standard']): CorrectionId =>
  standard === 'not stated' || standard === 'unknown' ? 'observed' : standard;

function everyPull(
  inputs: readonly ComparedInput[],
  correction: (entry: Entry) => CorrectionId,
  view: PullViewer,
): ComparedInput[] {
  return inputs.map((input) => ({
    ...input,
    pulls: input.pulls.map((entry) => viewedWith(entry, { correction: correction(entry) }, view)),
  }));
}

const notReached = (inputs: readonly ComparedInput[]): Entry[] =>
  inputs.flatMap((input) => input.pulls.filter((entry) => !entry.view.correction.reached));

function whyNot({ pull }: Entry): string {
  if (
    pull.carried.standard !== 'observed' &&
    pull.carried.standard !== 'not stated' &&
    pull.carried.factor === null
  )
    return pull.carried.standard === 'unknown'
      ? 'corrected by an unknown standard'
      : 'its factor is not known';
  return pull.weather === null ? 'no weather' : 'its weather cannot be used';
}

function appliedTo(
  inputs: readonly ComparedInput[],
  asked: CorrectionId,
  reached: boolean,
): CorrectionApplied {
  const factors = new Set(
    inputs.flatMap((input) => input.pulls.map((entry) => entry.view.correction.factor)),
  );
  return { asked, standard: asked, factor: factors.size === 1 ? [...factors][0]! : null, reached };
}

import { writeSaid } from '@pullbook/core/quantity';
import { type Remark, remarkAbout } from '@pullbook/core/remark';
import { remarksBeside } from '@pullbook/core/rule';
import type { ShownRemark, ViewOptions } from './model.ts';
import { SAID_OF_THE_BAND } from './not-from-the-band.ts';
import { shownRemarks } from './remarks.ts';
import { standardNotes } from './standard-notes.ts';
import { countedPulls, type TrialInView } from './trial-in-view.ts';
import { listed } from './wording.ts';

/** What the sentence, the caveats and what may not be said say already, in the trial's own words. */
const SAID_ELSEWHERE: readonly string[] = [
  'more-than-one-change',
  'hole-in-window',
  'power-still-climbing',
  'no-common-window',
  ...SAID_OF_THE_BAND,
];

/** Remarks of the answer and of its counted pulls. What several pulls say alike is said once, with their names. */
export function trialRemarks(view: TrialInView): ShownRemark[] {
  const notes = standardNotes(view.trial.correction, true);
  // What a rule says is said: as a finding, or in the page's own words where it is none of those shown.
  const ruled = view.answer.findings;
  const isNew = ({ message, code }: Remark) => !notes.includes(message) && !SAID_ELSEWHERE.includes(code);
  const ofPulls = countedPulls(view).map(({ pull, view: { remarks } }) => ({
    name: pull.name,
    remarks: remarksBeside(remarks, ruled).filter(isNew),
  }));
  const ofAnswer = remarksBeside(view.answer.remarks, ruled).filter(isNew);
  return shownRemarks([...ofAnswer, ...pullRemarks(ofPulls, view.show.options)], view.show.options);
}

function pullRemarks(pulls: { name: string; remarks: Remark[] }[], options: ViewOptions): Remark[] {
  const sayers = new Map<string, { remark: Remark; names: string[] }>();
  for (const { name, remarks } of pulls) {
    for (const remark of remarks) {
      const reads = writeSaid(remark.message, remark.parts, options);
      const known = sayers.get(reads) ?? { remark, names: [] };
      if (!known.names.includes(name)) known.names.push(name);
      sayers.set(reads, known);
    }
  }
  return [...sayers.values()].map(({ remark, names }) =>
    names.length === pulls.length ? remark : remarkAbout(listed(names), remark),
  );
}

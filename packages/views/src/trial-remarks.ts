import { type Remark, remarkAbout } from '@pullbook/core/remark';
import { remarksBeside } from '@pullbook/core/rule';
import type { ShownRemark } from './model.ts';
import { shownRemarks } from './remarks.ts';
import { standardNotes } from './standard-notes.ts';
import { findingsToShow } from './trial-findings.ts';
import { countedPulls, type TrialInView } from './trial-in-view.ts';
import { listed } from './wording.ts';

/** What the caveats say already, in the trial's own words. */
const SAID_IN_CAVEATS: readonly string[] = ['more-than-one-change', 'hole-in-window', 'power-still-climbing'];

/** Remarks of the answer and of its counted pulls. What several pulls say alike is said once, with their names. */
export function trialRemarks(view: TrialInView): ShownRemark[] {
  const notes = standardNotes(view.trial.correction, true);
  const ruled = findingsToShow(view);
  const isNew = ({ message, code }: Remark) => !notes.includes(message) && !SAID_IN_CAVEATS.includes(code);
  const ofPulls = countedPulls(view).map(({ pull, view: { remarks } }) => ({
    name: pull.name,
    remarks: remarksBeside(remarks, ruled).filter(isNew),
  }));
  const ofAnswer = remarksBeside(view.answer.remarks, ruled).filter(isNew);
  return shownRemarks([...ofAnswer, ...pullRemarks(ofPulls)], view.show.options);
}

function pullRemarks(pulls: { name: string; remarks: Remark[] }[]): Remark[] {
  const sayers = new Map<string, { remark: Remark; names: string[] }>();
  for (const { name, remarks } of pulls) {
    for (const remark of remarks) {
      const known = sayers.get(remark.message) ?? { remark, names: [] };
      if (!known.names.includes(name)) known.names.push(name);
      sayers.set(remark.message, known);
    }
  }
  return [...sayers.values()].map(({ remark, names }) =>
    names.length === pulls.length ? remark : remarkAbout(listed(names), remark),
  );
}

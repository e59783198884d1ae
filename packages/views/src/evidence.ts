import { momentText } from './date.ts';
import type { EvidenceRow } from './model.ts';
import { standardName } from './standard-name.ts';
import type { TrialInView } from './trial-in-view.ts';

/** Every pull of the trial with its role: counted ones first, within a combination in the trial's order. */
export function evidenceRows(view: TrialInView): EvidenceRow[] {
  const roles = ['counted', 'warm-up', 'rejected'];
  return view.combinations.flatMap((combination) =>
    combination.pulls
      .toSorted((one, other) => roles.indexOf(one.role) - roles.indexOf(other.role))
      .map(({ key, role, reason, pull, view: { peakPower, correction } }) => ({
        pullId: pull.id,
        name: pull.name,
        key,
        combination: combination.index,
        role,
        reason: reason ?? '',
        facts: [
          momentText(pull.recordedAt),
          peakPower ? view.show.peak(peakPower, 'power') : 'no power',
          correction.standard === view.comparison?.correction.standard ? '' : standardName(correction),
        ]
          .filter(Boolean)
          .join(' · '),
      })),
  );
}

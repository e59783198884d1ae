import { undoCorrection } from '@pullbook/core/air';
import type { CorrectionApplied } from '@pullbook/core/pull';
import { momentText } from '../date.ts';
import { evidenceRows } from '../evidence.ts';
import type { ShownTable } from '../model.ts';
import type { ReportBlock, ReportSection } from '../publish/model.ts';
import { standardName } from '../standard-name.ts';
import type { PullInTrial } from '../trial-in-view.ts';
import { inSentence } from '../wording.ts';
import { paragraph } from './answer-section.ts';
import type { ReportInView } from './report-in-view.ts';

export const ROLES = { counted: 'counted', rejected: 'rejected', 'warm-up': 'warm-up' } as const;

/** Every pull with its role, its highest power observed and corrected side by side with the factor between them, and what the standard says of itself. */
export function pullsSection(report: ReportInView): ReportSection {
  const { page, view } = report;
  const applied = view.comparison?.correction ?? null;
  // What is a caveat already stands under the answer.
  const isNew = (note: string) => page.caveats.every((caveat) => !caveat.includes(inSentence(note)));
  const isPlain = applied === null || !applied.reached || applied.standard === 'observed';
  const blocks: ReportBlock[] = [
    ...(applied === null || applied.reached ? [] : [paragraph(`Figures stand: ${standardName(applied)}.`)]),
    ...(page.evidence.length === 0
      ? [paragraph('The trial has no pull.')]
      : [{ kind: 'table', table: pullsTable(report, !isPlain) } as const]),
    ...page.standardNotes.filter(isNew).map((note) => paragraph(note, 'quiet')),
  ];
  return { id: 'pulls', title: 'Pulls, observed and corrected', blocks };
}

/** The means of the combinations stand with the highest figures. */
function pullsTable({ view }: ReportInView, isCorrected: boolean): ShownTable {
  const { show } = view;
  const rows = evidenceRows(view);
  const withReason = rows.some(({ reason }) => reason !== '');
  const pulls = new Map(
    view.combinations.flatMap((item) => item.pulls.map((one) => [one.pull.id, one] as const)),
  );
  const power = (watt: number) => show.number(watt, 'power', { decimals: 1 });
  const factored = ({ pull, view: { peakPower, correction } }: PullInTrial): string[] => [
    momentText(pull.recordedAt),
    peakPower && correction.factor !== null ? power(undoCorrection(peakPower.value, correction.factor)) : '',
    correction.factor === null ? 'not known' : show.factor(correction.factor),
    correctedText(peakPower === null ? '' : power(peakPower.value), correction),
  ];
  // What another standard carries, or none that is known, is not corrected to this one.
  const correctedText = (figure: string, { standard, ...more }: CorrectionApplied) => {
    if (figure === '') return 'no power';
    return standard === view.comparison?.correction.standard
      ? figure
      : `${figure}: ${standardName({ standard, ...more })}`;
  };
  const own = isCorrected
    ? ['Made', `Observed, ${show.unit('power')}`, 'Factor', `Corrected, ${show.unit('power')}`]
    : ['Made, highest power'];
  return {
    id: 'factors',
    title: isCorrected ? 'Every pull of the trial, with its highest power' : 'Every pull of the trial',
    columns: ['Of', 'Role', ...own, ...(withReason ? ['Why'] : [])].map((text) => ({
      text,
      combination: null,
    })),
    rows: rows.map(({ pullId, name, key, role, facts, reason }) => ({
      name,
      unit: '',
      cells: [
        key,
        ROLES[role],
        ...(isCorrected ? factored(pulls.get(pullId)!) : [facts]),
        ...(withReason ? [reason] : []),
      ],
    })),
  };
}

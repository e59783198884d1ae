import {
  type CombinationSheet,
  type PartChange,
  type SectionId,
  sectionTitle,
} from '@pullbook/core/combination';
import { thingsChanged } from '@pullbook/core/trial';
import { engineText } from '../engine-line.ts';
import { asSubject, type CombinationInTrial, fullName, type TrialInView } from '../trial-in-view.ts';
import { capitalised, counted, inSentence, listed } from '../wording.ts';
import type { NamedPicture, Picture } from './picture.ts';

interface Row {
  label: string;
  text: string;
  before: string | null;
  isChanged: boolean;
}

/** As many rows as a wide picture has room for at a size that can be read. */
const MOST_ROWS = 10;
/** More lines of one section than these are told together. */
const MOST_LINES = 6;

/** What each combination is made of, with what changed from the baseline first. */
export const combinationCards = (view: TrialInView): NamedPicture[] =>
  view.combinations.flatMap((item): NamedPicture[] => {
    const picture = combinationPicture(view, item);
    if (picture === null) return [];
    return [{ name: 'combination', key: item.key, title: `What ${item.key} is made of`, ...picture }];
  });

/** `null`: its sheet says nothing. */
export function combinationPicture(view: TrialInView, item: CombinationInTrial): Picture | null {
  const { combination } = item;
  if (combination === null) return null;
  const changes = view.state === 'survey' ? [] : (view.answer.changes[item.key] ?? []);
  const changed = changedRows(changes, combination.sheet, view.baseline.combination?.sheet ?? null);
  const plain = plainRows(combination.sheet, changes, view);
  const rows = fitting([...changed, ...plain], changed.length);
  if (rows.length === 0) return null;
  const things = thingsChanged(changes).map(inSentence);
  const isBaseline = item === view.baseline || view.state === 'survey';
  const subline = changedWords(view, things, isBaseline);
  const told = rows.map(({ label, text, before, isChanged }) =>
    isChanged ? `${label}: ${text}${before === null ? '' : `, before ${before}`}` : `${label}: ${text}`,
  );
  return {
    headline: changes.length === 0 ? `What ${asSubject(item)} is made of` : `${fullName(item)}: what changed`,
    subline,
    body: { kind: 'facts', rows },
    alternative: `${told.join('. ')}.`,
  };
}

function changedWords({ baseline }: TrialInView, things: string[], isBaseline: boolean): string {
  if (isBaseline) return '';
  if (things.length === 0) return `Its sheet is that of ${baseline.key}.`;
  return `Against ${fullName(baseline)}: ${things.length === 1 ? 'one thing' : `${things.length} things`} changed, ${listed(things)}.`;
}

/** A section that came or went is one row, and so is one with many lines. */
function changedRows(
  changes: readonly PartChange[],
  sheet: CombinationSheet,
  baseline: CombinationSheet | null,
): Row[] {
  const sections = [...new Set(changes.map(({ section }) => section))];
  return sections.flatMap((section): Row[] => {
    const lines = changes.filter((one) => one.section === section);
    const isNew = baseline !== null && baseline.sections[section] === undefined;
    const isGone = sheet.sections[section] === undefined;
    if (isNew === isGone && lines.length <= MOST_LINES)
      return lines.map((line) => lineRow(line, sections.length === 1));
    const differing = `${counted(lines.length, 'line')} of the sheet`;
    const told = (of: CombinationSheet | null) => (of === null ? '' : summaryOf(of, section)) || differing;
    return [
      {
        label: sectionTitle(section),
        text: isGone ? 'not fitted' : told(sheet),
        before: isNew ? 'not fitted' : told(baseline),
        isChanged: true,
      },
    ];
  });
}

/** Where all that changed is of one section, the words over the rows name it already. */
const lineRow = ({ section, label, before, after }: PartChange, isOnly: boolean): Row => ({
  label: isOnly ? withoutSection(section, label) : label,
  text: after ?? 'not on the sheet',
  before: before ?? 'not on the sheet',
  isChanged: true,
});

function withoutSection(section: SectionId, label: string): string {
  const lead = `${sectionTitle(section)}, `;
  return label.startsWith(lead) ? capitalised(label.slice(lead.length)) : label;
}

/**
 * What a section is told by, what a reader asks for first going first; a field that explains itself stands alone, another with
 * words before it.
 */
const TOLD_BY: Partial<Record<SectionId, readonly { field: string; lead?: string; after?: string }[]>> = {
  shortBlock: [
    { field: 'bore', lead: 'bore ' },
    { field: 'stroke', lead: 'stroke ' },
    { field: 'compressionRatio', lead: 'compression ' },
  ],
  cam: [
    { field: 'profile' },
    { field: 'durationIntake', lead: 'intake ' },
    { field: 'durationExhaust', lead: 'exhaust ' },
    { field: 'lobeSeparation', lead: 'lobe separation ' },
  ],
  supercharger: [{ field: 'type' }, { field: 'stepUp', lead: 'step-up ' }],
  drive: [
    { field: 'type' },
    { field: 'crankPulleyDiameter', lead: 'crank pulley ' },
    { field: 'blowerPulleyDiameter', lead: 'blower pulley ' },
  ],
  cooler: [{ field: 'type' }],
  fuel: [{ field: 'name' }, { field: 'researchOctane', lead: 'research octane ' }],
  fuelSystem: [{ field: 'type' }, { field: 'injectorFlow', lead: 'injectors ' }],
  intake: [{ field: 'manifold' }, { field: 'carburettor' }, { field: 'throttleDiameter', lead: 'throttle ' }],
  heads: [
    { field: 'type' },
    { field: 'ports' },
    { field: 'valvesPerCylinder', after: ' valves per cylinder' },
  ],
  exhaust: [
    { field: 'headers' },
    { field: 'primaryDiameter', lead: 'primaries ' },
    { field: 'silencer', lead: 'silencer ' },
  ],
};

/** `gasoline, research octane 98`; '' where the sheet says none of it. */
function summaryOf(sheet: CombinationSheet, section: SectionId): string {
  return (TOLD_BY[section] ?? [])
    .flatMap(({ field, lead = '', after = '' }) => {
      const text = sheet.sections[section]?.[field]?.text ?? '';
      return text === '' || /^unknown$/i.test(text) ? [] : [`${lead}${text}${after}`];
    })
    .join(', ');
}

/** The engine, then a row for each section of which nothing changed. */
function plainRows(sheet: CombinationSheet, changes: readonly PartChange[], view: TrialInView): Row[] {
  const changed = new Set(changes.map(({ section }) => section));
  const rows = (Object.keys(TOLD_BY) as SectionId[])
    .filter((section) => !changed.has(section))
    .map((section) => ({ label: sectionTitle(section), text: summaryOf(sheet, section) }));
  return [{ label: 'Engine', text: engineText(sheet, view.show.options) }, ...rows]
    .filter(({ text }) => text !== '')
    .map((row) => ({ ...row, before: null, isChanged: false }));
}

/** What changed goes first, and what cannot be shown of it is counted. */
function fitting(rows: Row[], changed: number): Row[] {
  if (changed <= MOST_ROWS) return rows.slice(0, MOST_ROWS);
  const shown = rows.slice(0, MOST_ROWS - 1);
  const more = counted(changed - shown.length, 'more line');
  return [...shown, { label: 'And besides', text: `${more} changed`, before: null, isChanged: true }];
}

import { type PartChange, SECTIONS, type SectionId } from '../combination/index.ts';
import type { CountedPull } from './condition.ts';
import type { ComparedBeside, ConditionDifference } from './model.ts';

const PREFIX = 'parts-';
const NOT_ON_THE_SHEET = 'not on the sheet';

/** Whether a condition is a part that was changed: what is asked about, as long as it is the only one. */
export const isOfParts = ({ id }: Pick<ConditionDifference, 'id'>): boolean => id.startsWith(PREFIX);

/** A row for every section of the sheets that changed from the baseline. Fuel has a row of its own. */
export function conditionsOfParts(
  pulls: readonly CountedPull[],
  { changes }: ComparedBeside,
): ConditionDifference[] {
  const keys = [...new Set(pulls.map(({ key }) => key))];
  const changed = (key: string, section: SectionId) =>
    (changes[key] ?? []).filter((line) => line.section === section);
  return SECTIONS.filter(({ id }) => id !== 'fuel').flatMap(({ id, title }): ConditionDifference[] => {
    const lines = keys.flatMap((key) => changed(key, id));
    if (lines.length === 0) return [];
    const packages = [...new Set(lines.flatMap(({ packageName }) => packageName ?? []))];
    const isBare = lines.every(({ before }) => before === null);
    const baseline = onlyOnce(lines).map((line) => sideText(line, line.before));
    return [
      {
        id: `${PREFIX}${id}`,
        label: title,
        values: Object.fromEntries(
          keys.map((key) => {
            const own = changed(key, id);
            if (changes[key] === undefined) return [key, isBare ? NOT_ON_THE_SHEET : baseline.join('; ')];
            return [
              key,
              own.length === 0 ? 'as the baseline' : own.map((line) => sideText(line, line.after)).join('; '),
            ];
          }),
        ),
        state: 'differs',
        why:
          packages.length > 0
            ? `By the sheets; it belongs to ${packages.map((name) => `"${name}"`).join(', ')} by declaration, which is one change.`
            : 'By the sheets. One thing changed at a time tells what it did; two tell only what they do together (common practice, no source).',
      },
    ];
  });
}

/** Lines of several changed combinations that differ from one baseline: each field once. */
const onlyOnce = (lines: readonly PartChange[]): PartChange[] => [
  ...new Map(lines.map((line) => [line.field, line])).values(),
];

/** `Intake duration 254 deg`: the section is the row's own label. */
function sideText({ label }: PartChange, text: string | null): string {
  const name = label.slice(label.indexOf(', ') + 2);
  return `${name} ${text ?? NOT_ON_THE_SHEET}`;
}

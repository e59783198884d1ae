import type { FindingGroup } from '../model.ts';
import type { ReportSection } from '../publish/model.ts';
import { listed } from '../wording.ts';
import { paragraph } from './answer-section.ts';
import { matchFindings, matchLimits } from './match-limits.ts';
import type { ReportInView } from './report-in-view.ts';

/** Rules about how much the hardware has left: fuel delivery, impeller, pistons, parts, cooler, compressor, belt, oil, springs, head, short block. */
const OF_LIMITS: readonly string[] = [
  'V13',
  'V14',
  'V15',
  'V17',
  'V18',
  'V19',
  'V20',
  'V21',
  'V22',
  'V39',
  'V41',
  'V42',
  'V44',
  'V45',
  'V46',
  'V50',
];

/** What binds first, as far as pulls, sheets and a match show it; where they show nothing it says so, and never that there is room. */
export function limitsSection(report: ReportInView): ReportSection {
  const { view, page } = report;
  const climbing = view.combinations.filter(({ figures }) => figures?.peakPower?.stillClimbing);
  const said = new Set([
    ...saidFindings(page.findings, isOfLimits),
    ...saidFindings(matchFindings(report), isOfLimits),
  ]);
  const items = [
    ...said,
    ...(climbing.length === 0
      ? []
      : [
          `Where the power of ${listed(climbing.map(({ key }) => key))} still climbs at the end of the pulls, that end is the limit, not the engine.`,
        ]),
  ];
  const match = matchLimits(report);
  return {
    id: 'limits',
    title: 'What limits it now',
    blocks: [
      ...(items.length > 0
        ? [{ kind: 'list', items } as const]
        : [
            paragraph(
              'No limit that can be seen in these pulls or on the sheets was met. That is no proof of room: what was not read, and makers’ limits that are on no sheet, are not in it.',
            ),
          ]),
      ...match,
    ],
  };
}

export const isOfLimits = (ruleId: string): boolean => OF_LIMITS.includes(ruleId);

/** Findings that nobody silenced, the strongest first, one line for what is said of several things: `Caution · Fuel pressure holds, Pull 7: …`. */
export function saidFindings(groups: readonly FindingGroup[], is: (ruleId: string) => boolean): string[] {
  return groups
    .filter(({ ruleId, silent }) => !silent && is(ruleId))
    .flatMap(({ title, lines }) => {
      const alike = new Map<string, FindingGroup['lines']>();
      for (const line of lines.filter(({ silenced }) => silenced === null)) {
        const key = `${line.level} ${withoutFigures(line.text)}`;
        alike.set(key, [...(alike.get(key) ?? []), line]);
      }
      return [...alike.values()].map(([first, ...others]) => {
        const { level, about, text } = first!;
        const also = listed([...new Set(others.map((one) => one.about))].filter((one) => one !== about));
        return `${LEVELS[level]} · ${title}${about && `, ${about}`}: ${text}${also && ` Likewise ${also}.`}`;
      });
    });
}

const withoutFigures = (text: string): string => text.replace(/\d[\d.,]*/gu, '');

const LEVELS: Record<FindingGroup['level'], string> = { alarm: 'Alarm', caution: 'Caution', note: 'Note' };

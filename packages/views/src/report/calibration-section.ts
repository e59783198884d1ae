import { calibrationsBehind, calibrationText, cellNamed, MEANINGS } from '@pullbook/core/pull';
import { dayText } from '../date.ts';
import type { ShownTable } from '../model.ts';
import type { ReportBlock, ReportSection } from '../publish/model.ts';
import { countedPulls, type PullInTrial } from '../trial-in-view.ts';
import { counted, listed } from '../wording.ts';
import { paragraph } from './answer-section.ts';
import type { ReportInView } from './report-in-view.ts';

/** How the instruments behind the counted pulls stood to their calibrations, unknown where unknown, and the offer of the raw data. */
export function calibrationSection(report: ReportInView): ReportSection {
  const pulls = countedPulls(report.view);
  const rows = calibrationRows(report, pulls);
  const blocks: ReportBlock[] = [
    ...undescribed(report, pulls).map((text) => paragraph(text)),
    ...(rows.length === 0 ? [] : [{ kind: 'table', table: calibrationTable(rows) } as const]),
    paragraph(
      'The bands say how far pulls, set-ups and days scatter. Whether brake and weather station read true, only their calibrations say; a common error of the brake cancels in a difference and not in a figure.',
    ),
    paragraph(
      `Raw data: the recordings of ${pulls.length === 1 ? 'the counted pull' : `all ${counted(pulls.length, 'counted pull')}`} are kept as they came, with weather, tune and what was set about their reading. They are handed over on request.`,
    ),
  ];
  return { id: 'calibration', title: 'Calibration and raw data', blocks };
}

interface CalibrationLine {
  name: string;
  measures: string;
  texts: string[];
}

function calibrationRows({ more }: ReportInView, pulls: readonly PullInTrial[]): CalibrationLine[] {
  const rows = new Map<string, CalibrationLine>();
  for (const { pull } of pulls) {
    const cell = cellNamed(more.cells, pull.cell);
    for (const one of calibrationsBehind(pull, cell)) {
      const { id, name, measures } = one.instrument;
      const row = rows.get(id) ?? {
        name: `${name}, ${cell!.name}`,
        measures: measures === 'weather' ? 'Weather' : MEANINGS[measures].label,
        texts: [],
      };
      const text = calibrationText(one).replace(/\d{4}-\d{2}-\d{2}/gu, dayText);
      if (!row.texts.includes(text)) row.texts.push(text);
      rows.set(id, row);
    }
  }
  return [...rows.values()];
}

const calibrationTable = (rows: readonly CalibrationLine[]): ShownTable => ({
  id: 'calibrations',
  title: 'Instruments behind the counted pulls',
  columns: ['Measures', 'Calibration at the pulls'].map((text) => ({ text, combination: null })),
  rows: rows.map(({ name, measures, texts }) => ({ name, unit: '', cells: [measures, texts.join('; ')] })),
});

/** Pulls of which nobody knows the instruments, said so. */
function undescribed({ more }: ReportInView, pulls: readonly PullInTrial[]): string[] {
  if (pulls.length === 0) return ['No pull is counted, so no calibration stands behind a figure.'];
  const names = [...new Set(pulls.map(({ pull }) => pull.cell?.trim() ?? ''))];
  const unknown = names.filter((name) => name !== '' && cellNamed(more.cells, name) === null);
  const bare = names.filter((name) => cellNamed(more.cells, name)?.instruments.length === 0);
  return [
    ...(names.includes('') ? ['The cell of some pulls is not noted: their calibrations are unknown.'] : []),
    ...(unknown.length === 0
      ? []
      : [
          `Not described in the book: ${listed(unknown)}. Its instruments and their calibrations are unknown.`,
        ]),
    ...(bare.length === 0
      ? []
      : [`No instrument is noted of ${listed(bare)}: its calibrations are unknown.`]),
  ];
}

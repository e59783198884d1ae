import { styleOf } from '../curve-panels.ts';
import { type CombinationInTrial, fullName, type TrialInView } from '../trial-in-view.ts';
import { chosenNodes, powerWords } from './chosen-speeds.ts';
import { claimLine } from './claim-words.ts';
import type { NamedPicture } from './picture.ts';
import { type CardTable, cell, tablePicture } from './table-picture.ts';

/** More combinations than these have no room for a column each. */
const MOST_COLUMNS = 4;

/** A trial that claims no gain: what each combination made, at speeds where they are few. */
export function plainTable(view: TrialInView): NamedPicture[] {
  const { comparison, show } = view;
  const shown = view.combinations.filter(({ figures }) =>
    figures?.channels.get('power')?.mean.some(Number.isFinite),
  );
  if (!comparison || shown.length === 0 || shown.length > MOST_COLUMNS) return [];
  const meanOf = (item: CombinationInTrial, meaning: 'power' | 'torque', node: number) =>
    item.figures?.channels.get(meaning)?.mean[node] ?? Number.NaN;
  const nodes = chosenNodes(comparison.engineSpeedRpm, (node) =>
    shown.some((item) => Number.isFinite(meanOf(item, 'power', node))),
  );
  const meanings = shown.length > 2 ? (['power'] as const) : (['power', 'torque'] as const);
  const columns = meanings.flatMap((meaning) => shown.map((item) => ({ item, meaning })));
  const table: CardTable = {
    columns: [
      { text: 'Engine speed', unit: show.unit('engineSpeed'), style: 'ink' },
      ...columns.map(({ item, meaning }) => ({
        text: shown.length === 1 ? (meaning === 'power' ? 'Power' : 'Torque') : `${item.key} ${meaning}`,
        unit: show.unit(meaning),
        style: styleOf(item),
      })),
    ],
    rows: nodes.map((node) => [
      cell(show.number(comparison.engineSpeedRpm[node]!, 'engineSpeed')),
      ...columns.map(({ item, meaning }) =>
        cell(show.number(meanOf(item, meaning, node), meaning), styleOf(item)),
      ),
    ]),
  };
  const headline =
    shown.length === 1 ? `${fullName(shown[0]!)}: what it makes` : 'Power and torque at chosen speeds';
  return [
    {
      name: 'table',
      key: null,
      title: 'Table of speeds',
      ...tablePicture(table, { headline, subline: `${powerWords(view)} ${claimLine(view)}` }),
    },
  ];
}

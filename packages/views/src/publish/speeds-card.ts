import type { CardCell } from '@pullbook/charts';
import { stretchesWords } from '../clear-ranges.ts';
import { styleOf } from '../curve-panels.ts';
import { type SaidGain, saidGains } from '../said-gain.ts';
import { type CombinationInTrial, fullName, type TrialInView } from '../trial-in-view.ts';
import { chosenNodes, powerWords } from './chosen-speeds.ts';
import { claimInTwo } from './claim-words.ts';
import type { NamedPicture } from './picture.ts';
import { type CardTable, cell, perCentAlone, tablePicture } from './table-picture.ts';

/**
 * A table for each gain: engine speed, baseline, changed, gain, per cent, and last the averages over the window. Gains that
 * are clear by the band for all speeds at once are set strong, and the words say so.
 */
export function gainTables(view: TrialInView): NamedPicture[] {
  const said = saidGains(view);
  return said.flatMap((one): NamedPicture[] => {
    const table = gainTable(view, one);
    if (table === null) return [];
    const isOne = said.length === 1;
    const headline = isOne
      ? claimInTwo(view).headline
      : `${fullName(one.changed)}, against ${one.baseline.key}`;
    return [
      {
        name: 'table',
        key: isOne ? null : one.changed.key,
        title: isOne ? 'Table of speeds' : `Table of ${one.changed.key}`,
        ...tablePicture(table, { headline, subline: `${powerWords(view)}${boldWords(one)}` }),
      },
    ];
  });
}

function gainTable(
  view: TrialInView,
  { gain, baseline, changed, comparison, show }: SaidGain,
): CardTable | null {
  const itemOf = (key: string) => view.combinations.find((item) => item.key === key)!;
  const [before, after] = [itemOf(baseline.key), itemOf(changed.key)];
  const powerOf = ({ figures }: CombinationInTrial) =>
    figures?.channels.get('power')?.mean ?? new Float64Array();
  const [low, high] = [powerOf(before), powerOf(after)];
  const nodes = chosenNodes(comparison.engineSpeedRpm, (node) =>
    [low[node], high[node], gain.power[node]].every((value) => Number.isFinite(value ?? Number.NaN)),
  );
  if (nodes.length === 0) return null;
  const clear = (rpm: number) =>
    gain.band?.clearRanges.some(({ fromRpm, toRpm }) => rpm >= fromRpm && rpm <= toRpm) ?? false;
  const [averageBefore, averageAfter] = [before, after].map(
    ({ figures }) => figures?.averages.get('power') ?? Number.NaN,
  );
  const row = (
    name: CardCell,
    from: number,
    to: number,
    power: number,
    ratio: number,
    strong: boolean,
  ): CardCell[] => [
    name,
    cell(show.number(from, 'power'), styleOf(before)),
    cell(show.number(to, 'power'), styleOf(after)),
    { ...cell(show.number(power, 'power', { sign: true })), ...(strong ? { strong } : {}) },
    { ...cell(perCentAlone(show, ratio)), ...(strong ? { strong } : {}) },
  ];
  const unit = show.unit('power');
  return {
    columns: [
      { text: 'Engine speed', unit: show.unit('engineSpeed'), style: 'ink' },
      { text: named(before), unit, style: styleOf(before) },
      { text: named(after), unit, style: styleOf(after) },
      { text: 'Gain', unit, style: 'ink' },
      { text: 'Gain', unit: '%', style: 'ink' },
    ],
    rows: [
      ...nodes.map((node) => {
        const rpm = comparison.engineSpeedRpm[node]!;
        const [from, to, power] = [low[node]!, high[node]!, gain.power[node]!];
        return row(cell(show.number(rpm, 'engineSpeed')), from, to, power, power / from, clear(rpm));
      }),
      row(
        { ...cell('Average'), strong: true },
        averageBefore!,
        averageAfter!,
        gain.meanPower,
        gain.meanPowerRatio,
        gain.verdict?.word === 'clear',
      ),
    ],
  };
}

/** ` Bold: clear of the noise, above 5,000 rpm.` */
function boldWords(said: SaidGain): string {
  const { band, verdict } = said.gain;
  if (band === null || verdict === null) return ' How sure it is, is not known.';
  const isClear = verdict.word === 'clear';
  const [gains, losses] = [stretchesWords(said, 1), stretchesWords(said, -1)];
  if (gains === '' && losses === '')
    return isClear ? ' Only the average is clear of the noise.' : ' Nothing here is clear of the noise.';
  const where = gains !== '' && losses !== '' ? `a gain ${gains}, a loss ${losses}` : gains || losses;
  return ` Bold: clear of the noise, ${where}${isClear ? '' : '; the average is not'}.`;
}

/** Key and as much of its name as a column has room for: a table's heading is no place for a sentence. */
const named = ({ key, shortName }: CombinationInTrial): string =>
  shortName === '' || shortName.length > LONGEST_NAME ? key : `${key} ${shortName}`;
const LONGEST_NAME = 18;

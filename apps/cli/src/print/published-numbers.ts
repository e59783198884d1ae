import type { CardNumbers, NumbersOfFile, PublishedNumbers } from '@pullbook/workshop';
import type { Context } from '../context.ts';
import { table } from './table.ts';

const shown = (value: number | null, decimals: number): string =>
  value === null ? '' : value.toFixed(decimals);

/** What a still, a report or an answer card carries: its figures in kW, N·m and kPa, and the words drawn in it. */
export function numberLines({ kind, numbers, texts }: NumbersOfFile, context: Context): string[] {
  const { bold } = context.colours;
  const invented = 'rungs' in numbers ? numbers.isInvented : numbers.invented;
  return [
    bold(`${numbers.question}${invented ? ' (invented data)' : ''}`),
    `Carried by this ${kind.toUpperCase()}; ${numbers.standard ?? 'no standard'}.`,
    ...('rungs' in numbers ? rungLines(numbers) : trialLines(numbers)),
    ...(texts.length === 0
      ? ['Its words are pixels: read them by eye, or publish it as svg, pdf or html.']
      : [bold('Drawn in it'), ...texts.map((text) => `  ${text}`)]),
  ];
}

function rungLines({ now, rungs }: CardNumbers): string[] {
  return table(
    [
      ['', 'changes', 'highest kW', 'low', 'high', 'chance'],
      ...[now, ...rungs].map((one, place) => [
        place === 0 ? 'as it is' : `${place}`,
        one.changes.map(({ text }) => text).join('; '),
        shown(one.peakPowerKw, 1),
        shown(one.peakPowerLowKw, 1),
        shown(one.peakPowerHighKw, 1),
        shown(one.chance, 2),
      ]),
    ],
    '  ',
  );
}

function trialLines(numbers: PublishedNumbers): string[] {
  return [
    ...table(
      [
        ['', 'pulls', 'average kW', 'highest kW', 'at r/min', 'highest N·m', 'boost kPa'],
        ...numbers.combinations.map((one) => [
          `${one.key} ${one.shortName}`,
          String(one.pulls),
          shown(one.averagePowerKw, 1),
          shown(one.peakPowerKw, 1),
          shown(one.peakPowerRpm, 0),
          shown(one.peakTorqueNm, 1),
          shown(one.highestBoostKpa, 1),
        ]),
      ],
      '  ',
    ),
    ...numbers.comparisons.map((one) =>
      [
        `${one.key} less A: ${shown(one.meanGainKw, 1)} kW on average`,
        one.meanGainLowKw === null
          ? ''
          : ` (95 % band ${shown(one.meanGainLowKw, 1)} to ${shown(one.meanGainHighKw, 1)} kW)`,
      ].join(''),
    ),
  ];
}

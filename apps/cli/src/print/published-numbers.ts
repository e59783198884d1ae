import type { NumbersOfFile } from '@pullbook/workshop';
import type { Context } from '../context.ts';
import { table } from './table.ts';

const shown = (value: number | null, decimals: number): string =>
  value === null ? '' : value.toFixed(decimals);

/** What a still or a report carries: its figures in kW, N·m and kPa, and the words drawn in it. */
export function numberLines({ kind, numbers, texts }: NumbersOfFile, context: Context): string[] {
  const { bold } = context.colours;
  return [
    bold(`${numbers.question}${numbers.invented ? ' (invented data)' : ''}`),
    `Carried by this ${kind.toUpperCase()}; ${numbers.standard ?? 'no standard'}.`,
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
    ...(texts.length === 0
      ? ['Its words are pixels: read them by eye, or publish it as svg, pdf or html.']
      : [bold('Drawn in it'), ...texts.map((text) => `  ${text}`)]),
  ];
}

import { remarksBeside, SHOWN_AS_CONDITIONS } from '@pullbook/core/rule';
import type { CompareReport, PullsCompared } from '@pullbook/workshop';
import type { Context } from '../context.ts';
import type { Shared } from '../shared-options.ts';
import { figure, number, peakPower, percent, window } from './figure.ts';
import { findingLines } from './findings.ts';
import { remarkLines } from './remarks.ts';
import { table } from './table.ts';
import { badgeLines, whyLines } from './why.ts';

/** A table for people shows every so many r/min; all nodes are in the JSON. */
const TABLE_STEP_RPM = 250;

/** The answer first: sentence, verdict, band; then peaks, the table, what differs and what is to be said. */
export function compareLines(report: PullsCompared, { view }: Shared, context: Context): string[] {
  const kilowatts = (value: number | null, sign = false) => figure(value, 'kW', 'power', view, { sign });
  const rpm = (value: number) => figure(value, 'rpm', 'engineSpeed', view);
  // Two decimals, so that an end that is just off zero does not read as zero beside the verdict.
  const end = (value: number) => figure(value, 'kW', 'power', view, { sign: true, decimals: 2 });
  const band = (low: number | null, high: number | null) =>
    low === null || high === null ? '–' : `${end(low)} to ${end(high)}`;
  const peakOf = (one: CompareReport['baselinePeak']) => {
    const highest = peakPower(one, view);
    if (one.peakPowerLowKw === null || one.peakPowerHighKw === null) return highest;
    return `${highest} (${kilowatts(one.peakPowerLowKw)} to ${kilowatts(one.peakPowerHighKw)})`;
  };
  // Differing conditions have a table of their own.
  const findings = report.findings.filter(({ ruleId }) => !SHOWN_AS_CONDITIONS.includes(ruleId));
  const remarks = remarksBeside(report.remarks, report.findings);
  const shown = report.curve.filter((row) => row.engineSpeedRpm % TABLE_STEP_RPM === 0);
  const differing = report.conditions.filter((one) => one.state !== 'alike');
  const { noise, peakGain } = report;
  return [
    context.colours.bold(report.sentence),
    ...(report.verdictLine === '' ? [] : [report.verdictLine]),
    '',
    ...(report.meanGainKw === null
      ? []
      : [
          `Gain: ${kilowatts(report.meanGainKw, true)} (${percent(report.meanGainPercent, view)}) on average, ${window(report.averagesWindowRpm, view)}`,
        ]),
    ...(report.meanGainLowKw === null
      ? []
      : [
          `Band: 95 %, ${band(report.meanGainLowKw, report.meanGainHighKw)}; 80 %, ${band(report.likelyGainLowKw, report.likelyGainHighKw)}`,
        ]),
    ...(noise === null
      ? []
      : [
          `Scatter: ${number(noise.pullSigmaPercent, 2, view)} % between pulls (${degreesOfFreedom(noise.degreesOfFreedom, view)}), ${number(noise.setUpSigmaPercent, 2, view)} % between set-ups${noise.historySetAside ? '; what was known before was set aside' : ''}`,
        ]),
    `Standard: ${report.correction.standard}${report.correction.reached ? '' : `, not ${report.correction.asked} as asked`}`,
    `Peaks: ${peakOf(report.baselinePeak)}; changed ${peakOf(report.changedPeak)}`,
    ...(peakGain === null
      ? []
      : [
          `Gain of the peaks: ${kilowatts(peakGain.gainKw, true)} (${band(peakGain.gainLowKw, peakGain.gainHighKw)})${peakGain.why === null ? '' : `. ${peakGain.why}`}`,
        ]),
    ...(report.at.length === 0
      ? []
      : [
          '',
          ...table([
            ['At', 'Gain', 'Band, this speed'],
            ...report.at.map((row) => [
              rpm(row.engineSpeedRpm),
              kilowatts(row.gainKw, true),
              band(row.gainLowKw, row.gainHighKw),
            ]),
          ]),
        ]),
    ...(shown.length === 0
      ? []
      : [
          '',
          ...table([
            ['Engine speed', 'Baseline', 'Changed', 'Gain', ...(noise ? ['Band, all speeds'] : [])],
            ...shown.map((row) => [
              rpm(row.engineSpeedRpm),
              kilowatts(row.baselineKw),
              kilowatts(row.changedKw),
              kilowatts(row.gainKw, true),
              ...(noise ? [band(row.gainLowKw, row.gainHighKw)] : []),
            ]),
          ]),
        ]),
    ...(report.explanation === null ? [] : whyLines([report.explanation], context)),
    ...badgeLines(report.badges, context),
    ...(differing.length === 0
      ? []
      : [
          '',
          ...table([
            ['Condition', 'Baseline', 'Changed', 'State'],
            ...differing.map((one) => [one.label, one.baseline ?? '–', one.changed ?? '–', one.state]),
          ]),
        ]),
    ...(findings.length === 0 ? [] : ['', ...findingLines(findings, context)]),
    ...(remarks.length === 0 ? [] : ['', ...remarkLines(remarks, context)]),
  ];
}

const degreesOfFreedom = (value: number | null, view: Shared['view']): string =>
  value === null ? 'known exactly' : `${number(value, 0, view)} degrees of freedom`;

import { speedFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { Peak, Pull } from './model.ts';

export function peakRemarks(peak: Peak | null, what: 'Power' | 'Torque'): Remark[] {
  if (peak === null || !peak.stillClimbing) return [];
  return [
    remark(
      what === 'Power' ? 'caution' : 'note',
      `${what.toLowerCase()}-still-climbing`,
      said`${what} is highest at the end of the pull, ${speedFigure(peak.atRpm)}, and still climbing: its peak was not reached.`,
    ),
  ];
}

export const torqueAtFirstRow = (atRpm: number) =>
  remark(
    'note',
    'torque-falls-from-the-start',
    said`Torque is highest where the pull begins, ${speedFigure(atRpm)}: its peak may lie lower.`,
  );

export const noTorque = (pull: Pull) =>
  remark(
    'refusal',
    'no-torque',
    `"${pull.name}" has neither torque nor power among its columns, so nothing can be said of either. Say which column it is.`,
  );

export const TIME_UNUSABLE = remark(
  'caution',
  'time-unusable',
  'The time column has gaps or does not always move on, so it is not used: the order of the rows stands in its place. Check the column chosen as time.',
);

export const LAG_NEEDS_TIME = remark(
  'caution',
  'lag-needs-time',
  'Lags were asked for but there is no usable time column; channels stay as recorded.',
);

export const SPEED_SPIKES = remark(
  'note',
  'engine-speed-spikes',
  'Some rows have an engine speed that stands out of its neighbours; those rows are left out as a whole.',
);

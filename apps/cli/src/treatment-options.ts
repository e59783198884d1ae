import type { PullDetailsText } from '@pullbook/workshop';
import type { Command } from 'commander';
import { binWidthValue, lagValue, windowOrFoundValue } from './option-values.ts';

export interface TreatmentOptions {
  lag?: Record<string, number>;
  window?: [number, number] | 'found';
  bin?: number | 'adapted';
  addInertia?: boolean;
}

/** Adds what a person may decide about how a pull is read. The rows as measured never change. */
export function withTreatmentOptions(command: Command): Command {
  return command
    .option(
      '--lag <channel=time>',
      'how late a channel comes: "lambda=0.3s"; 0s takes it away (repeatable)',
      lagValue,
    )
    .option(
      '--window <speeds>',
      'count only these engine speeds: 3000-6500; "found": as the pull itself says',
      windowOrFoundValue,
    )
    .option('--bin <width>', 'width of the means: 100rpm; "adapted": as the sampling allows', binWidthValue)
    .option('--add-inertia', "add the torque hidden by the sweep's inertia, which must be known")
    .option('--no-add-inertia', 'leave torque as the brake read it');
}

/** What was said of the reading on the command line. */
export function treatmentOf(options: TreatmentOptions): PullDetailsText['treatment'] {
  const { lag, window, bin, addInertia } = options;
  const said = {
    lagsS: lag,
    windowRpm: window === 'found' ? null : window,
    binWidthRpm: bin === 'adapted' ? null : bin,
    addInertia,
  };
  return Object.values(said).some((value) => value !== undefined) ? said : undefined;
}

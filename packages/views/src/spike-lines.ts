import { type ChannelMeaning, MEANINGS, type Spike } from '@pullbook/core/pull';
import { meaningDisplay } from './channel-display.ts';
import type { Showing } from './showing.ts';
import { counted } from './wording.ts';

/** Spikes of one channel with the one that stands out most. */
export interface SpikeGroup {
  meaning: ChannelMeaning;
  spikes: Spike[];
  furthest: Spike;
}

/** Spikes by channel; the channel whose furthest spike is off by the largest share comes first. */
export function spikeGroups(spikes: readonly Spike[]): SpikeGroup[] {
  const meanings = [...new Set(spikes.map(({ meaning }) => meaning))];
  const groups = meanings.map((meaning) => {
    const own = spikes.filter((spike) => spike.meaning === meaning);
    return {
      meaning,
      spikes: own,
      furthest: own.reduce((most, spike) => (offBy(spike) > offBy(most) ? spike : most)),
    };
  });
  return groups.toSorted((one, other) => offBy(other.furthest) - offBy(one.furthest));
}

/** `Torque, 1 row left out: row 400, 358 lb-ft where its neighbours say 301 lb-ft.` */
export function spikeLines(spikes: readonly Spike[], show: Showing): string[] {
  return spikeGroups(spikes).map(({ meaning, spikes: own, furthest }) => {
    const display = meaningDisplay(meaning, show);
    const lead = `${MEANINGS[meaning].label}, ${counted(own.length, 'row')} left out of the curve`;
    const which = own.length === 1 ? '' : 'furthest off, ';
    return `${lead}: ${which}row ${furthest.row + 1}, ${display.text(furthest.value)} where its neighbours say ${display.text(furthest.expected)}.`;
  });
}

/** On the picture: `358 lb-ft, left out`, or `358 lb-ft, one of 7 left out`. */
export function spikeMarkText({ meaning, spikes, furthest }: SpikeGroup, show: Showing): string {
  const figure = meaningDisplay(meaning, show).text(furthest.value);
  return spikes.length === 1 ? `${figure}, left out` : `${figure}, one of ${spikes.length} left out`;
}

/** Share of the expected value; for what is near zero, of the value itself. */
function offBy({ value, expected }: Spike): number {
  return Math.abs(value - expected) / Math.max(Math.abs(expected), Math.abs(value), Number.MIN_VALUE);
}

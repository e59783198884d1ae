import { type Channel, type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { fromInside, type QuantityKind, type Unit, unitFor } from '@pullbook/core/quantity';
import type { Showing } from './showing.ts';

/** How the figures of one channel are shown: name, unit and decimals as their readers know them. */
export interface ChannelDisplay {
  /** `Charge` */
  label: string;
  /** `°F`; `%` for what is a share of full, `λ` for the mixture. */
  unit: string;
  /** The number alone; '' for what is not finite. */
  number(value: number): string;
  /** `118 °F` */
  text(value: number): string;
  /** A bare number in the unit, for a chart. */
  plotted(value: number): number | null;
}

const SHARES: readonly ChannelMeaning[] = ['throttle', 'relativeHumidity'];

/** Display of a meaning; `kind` where a file gave another one, a volume flow of fuel say. */
export function meaningDisplay(
  meaning: ChannelMeaning,
  show: Showing,
  kind: QuantityKind = MEANINGS[meaning].kind,
): ChannelDisplay {
  const { label, decimals } = MEANINGS[meaning];
  const special = kind === 'ratio' ? specialUnit(meaning) : null;
  const style = {
    ...(kind === MEANINGS[meaning].kind ? { decimals: decimals[show.options.units] } : {}),
    ...(special ? { unit: special } : {}),
  };
  const number = (value: number) => show.number(value, kind, style);
  return {
    label,
    unit: special?.name ?? show.unit(kind),
    number,
    text: (value) => (meaning === 'lambda' ? number(value) : show.quantity(value, kind, style)),
    plotted: (value) =>
      special && Number.isFinite(value) ? fromInside(value, special) : show.plotted(value, kind),
  };
}

/** Display of a channel as recorded; one that is not understood keeps its name, its unit and its numbers. */
export function channelDisplay(channel: Channel, show: Showing): ChannelDisplay {
  if (channel.meaning !== 'other') return meaningDisplay(channel.meaning, show, channel.kind);
  const number = (value: number) => show.number(value, 'ratio');
  return {
    label: channel.name,
    unit: channel.unit,
    number,
    text: (value) => [number(value), channel.unit].filter(Boolean).join('\u00a0'),
    plotted: (value) => (Number.isFinite(value) ? value : null),
  };
}

function specialUnit(meaning: ChannelMeaning): Unit | null {
  if (meaning === 'lambda') return unitFor('λ', 'ratio');
  return SHARES.includes(meaning) ? unitFor('%', 'ratio') : null;
}

import { type DecimalMark, formatNumber } from '@pullbook/core/quantity';
import type { PullPage } from '@pullbook/views';
import { typedNumber } from './treatment-form.ts';

/** How a pull is read, in words a stranger understands. */
export function treatmentWords(
  {
    treatment,
    channelMeanings,
    shopBinWidthRpm,
  }: Pick<PullPage, 'treatment' | 'channelMeanings' | 'shopBinWidthRpm'>,
  decimalMark: DecimalMark,
): { label: string; value: string }[] {
  const { windowRpm, binWidthRpm, lagsS, addInertia } = treatment;
  const speed = (rpm: number) => formatNumber(rpm, 0, decimalMark, { thousands: true });
  const late = Object.entries(lagsS)
    .filter(([, lag]) => lag !== 0)
    .map(([meaning, lag]) => {
      const label = channelMeanings.find((one) => one.id === meaning)?.label ?? meaning;
      const seconds = typedNumber(lag, decimalMark).replace('-', '');
      return `${label} ${seconds} s ${lag > 0 ? 'earlier' : 'later'}`;
    });
  const widthWords = () => {
    if (binWidthRpm !== null) return `${speed(binWidthRpm)} rpm`;
    return shopBinWidthRpm === null
      ? 'a width adapted to the sampling'
      : `${speed(shopBinWidthRpm)} rpm, as the shop has it`;
  };
  return [
    {
      label: 'Counted',
      value:
        windowRpm === null
          ? 'the sweep as found'
          : `set by hand, ${speed(windowRpm[0])} to ${speed(windowRpm[1])} rpm`,
    },
    {
      label: 'Means over',
      value: widthWords(),
    },
    {
      label: 'Channels',
      value: late.length === 0 ? 'all as recorded' : `${late.join('; ')}; others as recorded`,
    },
    { label: 'Inertia torque', value: addInertia ? 'added to what the brake read' : 'not added' },
  ];
}

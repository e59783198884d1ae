import type { ChartDescription, DrawSize, ThemeName } from '@pullbook/charts';
import { PlainChart } from './PlainChart.tsx';

const smallSize = (_: ChartDescription, width: number, theme: ThemeName): DrawSize => ({
  width,
  height: 132,
  text: 12,
  theme,
  ground: false,
});

/** A chart as big as a stamp, beside the words that say the same. */
export function SmallPicture({ chart }: { chart: ChartDescription }) {
  return <PlainChart chart={chart} size={smallSize} />;
}

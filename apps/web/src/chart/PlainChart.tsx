import { type ChartDescription, type DrawSize, drawStack } from '@pullbook/charts';
import { useMemo } from 'react';
import { useTheme } from '../view/theme.ts';
import styles from './chart.module.css';
import { Stack } from './Stack.tsx';
import { stackSize } from './stack-size.ts';
import { useWidth } from './use-width.ts';

/** A chart without a cursor, as wide as its place. */
export function PlainChart({
  chart,
  size = stackSize,
}: {
  chart: ChartDescription;
  size?: (chart: ChartDescription, width: number, theme: DrawSize['theme']) => DrawSize;
}) {
  const [box, width] = useWidth<HTMLDivElement>();
  const theme = useTheme();
  const scene = useMemo(
    () => (width === 0 ? null : drawStack(chart, size(chart, width, theme), false).scene),
    [chart, width, theme, size],
  );
  return (
    <div className={styles.box} ref={box}>
      {scene !== null && <Stack scene={scene} />}
    </div>
  );
}

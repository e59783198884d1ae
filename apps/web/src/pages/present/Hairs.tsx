import { type ChartDescription, drawCursor, type StackGeometry, type ThemeName } from '@pullbook/charts';
import { SceneElements } from '../../chart/SceneElements.tsx';
import styles from './present.module.css';

/** A hair with its marks at every speed that is held or pointed at. */
export function Hairs({
  chart,
  stack: { geometry, text },
  places,
  picture,
  theme,
  roomAbove,
}: {
  chart: ChartDescription;
  stack: { geometry: StackGeometry; text: number };
  places: readonly number[];
  /** The picture that it is laid over, px of its own. */
  picture: { width: number; height: number };
  theme: ThemeName;
  /** What is not drawn over, px of the stage: the figures say the speeds there. */
  roomAbove: number;
}) {
  const size = { ...picture, text, theme, ground: false };
  return (
    <svg
      className={styles.hairs}
      viewBox={`0 0 ${picture.width} ${picture.height}`}
      preserveAspectRatio="none"
      style={{ clipPath: `inset(${roomAbove}px 0 0)` }}
      aria-hidden="true"
    >
      {places.map((at) => (
        <g key={at}>
          <SceneElements nodes={drawCursor(chart, geometry, at, size)} />
        </g>
      ))}
    </svg>
  );
}

import type { Scene } from '@pullbook/charts';
import { memo } from 'react';
import styles from './chart.module.css';
import { SceneElements } from './SceneElements.tsx';

/** A drawn scene on the page. Kept as it is while only the cursor over it moves. */
export const Stack = memo(function Stack({ scene }: { scene: Scene }) {
  return (
    <svg
      className={styles.drawing}
      width={scene.width}
      height={scene.height}
      viewBox={`0 0 ${scene.width} ${scene.height}`}
      role="img"
      aria-label={scene.alternative}
    >
      <SceneElements nodes={scene.nodes} />
    </svg>
  );
});

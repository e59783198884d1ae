import {
  type ClipDescription,
  clipFrameKey,
  clipSeconds,
  drawClipFrame,
  type StillSize,
} from '@pullbook/charts';
import type { ShownRunningOrder } from '@pullbook/views/publish';
import { useMemo } from 'react';
import { SceneElements } from '../../chart/SceneElements.tsx';
import { Button } from '../../parts/Button.tsx';
import styles from './clip.module.css';
import { startOfStep, stepAt } from './clip-steps.ts';
import { usePlaying } from './use-playing.ts';

/** A frame of 30 in a second. */
const FRAME = 1 / 30;

/** The clip as it will be: the very drawings of its frames, played, stood still and stepped through. */
export function ClipPlayer({
  clip,
  order,
  size,
}: {
  clip: ClipDescription;
  order: ShownRunningOrder;
  size: StillSize;
}) {
  const seconds = clipSeconds(clip);
  const frames = Math.round(seconds / FRAME);
  const { atSeconds, isPlaying, play, pause, goTo } = usePlaying(seconds);
  const { width, height, theme, ground } = size;
  // What stands is drawn once: equal keys are equal frames.
  const key = clipFrameKey(clip, atSeconds);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the moment
  const scene = useMemo(
    () => drawClipFrame(clip, atSeconds, { width, height, theme, ground }),
    [clip, key, width, height, theme, ground],
  );
  const step = stepAt(clip, atSeconds);
  const name = order.steps.find(({ id }) => id === clip.steps[step]?.id)?.name ?? '';

  return (
    <div className={styles.player}>
      <div className={styles.screen} data-tall={height > width}>
        <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={scene.alternative}>
          <SceneElements nodes={scene.nodes} />
        </svg>
      </div>
      <input
        className={styles.scrubber}
        type="range"
        min={0}
        // Whole frames: steps of a thirtieth of a second would not add up to the end.
        max={frames}
        step={1}
        value={Math.round(atSeconds / FRAME)}
        aria-label="Place in the clip"
        aria-valuetext={`${atSeconds.toFixed(1)} s of ${seconds.toFixed(1)} s, ${name}`}
        onChange={({ target: { valueAsNumber: frame } }) => goTo(frame >= frames ? seconds : frame * FRAME)}
      />
      <div className={styles.controls}>
        <Button onPress={isPlaying ? pause : play}>{isPlaying ? 'Pause' : 'Play'}</Button>
        <Button
          look="quiet"
          aria-label="Step back"
          isDisabled={atSeconds === 0}
          // Early in a step the one before is meant, later its own beginning.
          onPress={() => goTo(startOfStep(clip, stepAt(clip, Math.max(0, atSeconds - 0.5))))}
        >
          ‹ Step
        </Button>
        <Button
          look="quiet"
          aria-label="Step on"
          isDisabled={step >= clip.steps.length - 1}
          onPress={() => goTo(startOfStep(clip, step + 1))}
        >
          Step ›
        </Button>
        <Button
          look="quiet"
          aria-label="Frame back"
          isDisabled={atSeconds === 0}
          onPress={() => goTo(atSeconds - FRAME)}
        >
          ‹ Frame
        </Button>
        <Button
          look="quiet"
          aria-label="Frame on"
          isDisabled={atSeconds >= seconds}
          onPress={() => goTo(atSeconds + FRAME)}
        >
          Frame ›
        </Button>
        <p className={styles.place}>
          <strong>{name}</strong>
          <span>
            {atSeconds.toFixed(1)} s of {seconds.toFixed(1)} s
          </span>
        </p>
      </div>
    </div>
  );
}

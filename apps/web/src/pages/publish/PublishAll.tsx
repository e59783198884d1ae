import { Card } from '../../parts/Card.tsx';
import { useTheme } from '../../view/theme.ts';
import { MakeButton } from './MakeButton.tsx';
import type { Making } from './making.ts';
import styles from './publish.module.css';

/** Half of what a clip can have, in half the time. */
const FRAMES = 30;

/** All of it by one press: for the one minute between the last pull and the film. */
export function PublishAll(making: Making) {
  const { mayLeave, page } = making;
  const { stills, runningOrder, formats } = page;
  const theme = useTheme();
  const hasClip = formats.clip.includes('mp4') && runningOrder.seconds > 0;
  const parts = [
    stills.length === 1 ? 'one still' : `${stills.length} stills`,
    ...(hasClip ? [`a clip of ${Math.round(runningOrder.seconds)} s at ${FRAMES} frames a second`] : []),
    'the report',
  ];
  return (
    <Card title="All of it at once">
      <div className={styles.all}>
        <div>
          <p>
            {listed(parts)}, in one file to unpack: 1920 × 1080, {theme}.
          </p>
          {!mayLeave && (
            <p className={styles.soft}>
              Not everything in it is for everyone: say under “What will leave the shop” that it may leave.
            </p>
          )}
          {!hasClip && runningOrder.seconds > 0 && (
            <p className={styles.soft}>
              Without the clip: this machine has no ffmpeg. The page can make it, below.
            </p>
          )}
        </div>
        <MakeButton
          {...making}
          isMain
          ask={{ kinds: hasClip ? ['still', 'clip', 'report'] : ['still', 'report'], theme, fps: FRAMES }}
          text="Publish all"
        />
      </div>
    </Card>
  );
}

function listed(parts: readonly string[]): string {
  const text = `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
  return text.charAt(0).toUpperCase() + text.slice(1);
}

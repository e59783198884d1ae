import type { ClipDescription } from '@pullbook/charts';
import { useEffect, useState } from 'react';
import { Button } from '../parts/Button.tsx';
import { bytesText } from '../parts/bytes-text.ts';
import { Choice, Fields, SelectField } from '../parts/Field.tsx';
import { Trouble } from '../parts/Trouble.tsx';
import { useTheme } from '../view/theme.ts';
import { type ClipChoice, type ClipFormat, type ClipSize, framesOf } from './clip-choice.ts';
import styles from './clip-maker.module.css';
import { type ClipMaking, useClipMaker } from './use-clip-maker.ts';
import { type CanBeMade, whatCanBeMade } from './what-can-be-made.ts';

const FORMATS: readonly { value: ClipFormat; text: string; help: string; ending: string }[] = [
  { value: 'mp4', text: 'MP4 film', help: 'Plays everywhere', ending: 'mp4' },
  { value: 'webm', text: 'WebM film', help: 'Can be transparent', ending: 'webm' },
  { value: 'png', text: 'PNG pictures', help: 'Numbered, in a zip, for any video editor', ending: 'zip' },
];

const SIZES: { value: ClipSize; text: string }[] = [
  { value: '1080p', text: '1920 × 1080, wide' },
  { value: '4k', text: '3840 × 2160, wide' },
  { value: 'tall', text: '1080 × 1920, tall' },
  { value: 'square', text: '1080 × 1080, square' },
];

/**
 * Makes a clip in the page, of what `askClip` gives at the press: what is asked for, how far it is, and what came of it. The file goes where the browser saves, and what
 * it is goes to `onMade`, to be noted as a publication. `fileName` is without its ending.
 */
export function ClipMaker({
  askClip,
  fileName,
  isDisabled = false,
  onMade,
}: {
  askClip: () => Promise<ClipDescription>;
  fileName: string;
  isDisabled?: boolean;
  onMade: (file: { name: string; bytes: number; sha256: string }) => void;
}) {
  const theme = useTheme();
  const [choice, setChoice] = useState<ClipChoice>({
    format: 'mp4',
    size: '1080p',
    framesPerSecond: 60,
    theme,
    ground: true,
  });
  const { state, make, cancel } = useClipMaker((name, { file, sha256 }) =>
    onMade({ name, bytes: file.size, sha256 }),
  );
  const can = useCanBeMade(choice);
  const isMaking = state.kind === 'making';
  const change = (changed: Partial<ClipChoice>) => setChoice((before) => ({ ...before, ...changed }));
  const { ending, help } = FORMATS.find(({ value }) => value === choice.format)!;

  return (
    <div className={styles.maker}>
      <fieldset className={styles.choices}>
        <legend className="unseen">By this page</legend>
        <Fields>
          <SelectField
            label="Format"
            value={choice.format}
            disabled={isMaking}
            onChange={(event) => change({ format: event.target.value as ClipFormat })}
            help={help}
            options={FORMATS.map(({ value, text }) => ({ value, text }))}
          />
          <SelectField
            label="Size"
            value={choice.size}
            disabled={isMaking}
            onChange={(event) => change({ size: event.target.value as ClipSize })}
            options={SIZES}
          />
          <SelectField
            label="Frames a second"
            value={String(choice.framesPerSecond)}
            disabled={isMaking}
            onChange={(event) => change({ framesPerSecond: event.target.value === '30' ? 30 : 60 })}
            options={[
              { value: '60', text: '60, smooth' },
              { value: '30', text: '30, made in half the time' },
            ]}
          />
          <SelectField
            label="Theme"
            value={choice.theme}
            disabled={isMaking}
            onChange={(event) => change({ theme: event.target.value === 'dark' ? 'dark' : 'light' })}
            options={[
              { value: 'light', text: 'Light' },
              { value: 'dark', text: 'Dark, for video' },
            ]}
          />
        </Fields>
        {choice.format !== 'mp4' && (
          <Choice
            kind="checkbox"
            checked={!choice.ground}
            disabled={isMaking}
            onChange={(event) => change({ ground: !event.target.checked })}
            help="Nothing behind the drawing, to lay it over a film"
          >
            Transparent
          </Choice>
        )}
      </fieldset>
      {can.words !== '' && <p className={can.can ? styles.note : styles.cannot}>{can.words}</p>}
      <div className={styles.act}>
        {isMaking ? (
          <Button onPress={cancel}>Cancel the clip</Button>
        ) : (
          <Button
            look="main"
            isDisabled={isDisabled || !can.can}
            onPress={() => void make(askClip, framesOf(choice), `${fileName}.${ending}`)}
          >
            Make the clip
          </Button>
        )}
        {isMaking && (
          <progress
            className={styles.progress}
            {...(state.of > 0 && { value: state.done, max: state.of })}
            aria-label="The clip"
          />
        )}
        <p className={styles.news} role="status">
          <News of={state} />
        </p>
      </div>
      {state.kind === 'trouble' && <Trouble of={state.error} />}
    </div>
  );
}

/** What the browser can do of the choice, as soon as it has said so. */
function useCanBeMade(choice: ClipChoice): CanBeMade {
  const [can, setCan] = useState<CanBeMade>({ can: false, words: '' });
  useEffect(() => {
    let isHere = true;
    void whatCanBeMade(framesOf(choice)).then((answer) => isHere && setCan(answer));
    return () => {
      isHere = false;
    };
  }, [choice]);
  return can;
}

function News({ of: state }: { of: ClipMaking }) {
  if (state.kind === 'making') return <>{leftText(state.secondsLeft)}</>;
  if (state.kind === 'cancelled') return <>Cancelled. Nothing was kept.</>;
  if (state.kind !== 'made') return null;
  const { name, made, address } = state;
  return (
    <>
      Made and saved: {name}, {bytesText(made.file.size)}, {made.frames} frames.{' '}
      <a href={address} download={name}>
        Save it once more
      </a>
    </>
  );
}

/** Roughly, so that it is not read out anew every moment. */
function leftText(seconds: number | null): string {
  if (seconds === null) return 'Making it …';
  if (seconds <= 5) return 'Making it … a few seconds left';
  if (seconds <= 90) return `Making it … about ${5 * Math.ceil(seconds / 5)} s left`;
  return `Making it … about ${Math.ceil(seconds / 60)} min left`;
}

import type { ThemeName } from '@pullbook/charts';
import { useState } from 'react';
import { Choice, Fields, SelectField } from '../../parts/Field.tsx';
import { useTheme } from '../../view/theme.ts';
import { MakeButton } from './MakeButton.tsx';
import type { Making } from './making.ts';
import styles from './publish.module.css';
import { SIZES, THEMES } from './still-choices.ts';

const FORMATS: Record<string, { text: string; help: string }> = {
  mp4: { text: 'MP4 film', help: 'Plays everywhere' },
  webm: { text: 'WebM film', help: 'Can be transparent' },
  mov: { text: 'MOV film', help: 'Can be transparent, for a video editor' },
  png: { text: 'PNG pictures', help: 'Numbered, for any video editor' },
};

/** The same clip made by the program beside the page: also what a browser cannot write. */
export function ClipByProgram(making: Making) {
  const formats = making.page.formats.clip;
  const [format, setFormat] = useState(formats[0] ?? 'png');
  const [size, setSize] = useState('1080p');
  const [framesPerSecond, setFrames] = useState('60');
  const [theme, setTheme] = useState<ThemeName>(useTheme());
  const [isTransparent, setIsTransparent] = useState(false);
  const canBeTransparent = format !== 'mp4';
  return (
    <details>
      <summary className={styles.summary}>Have the program make it instead of this page</summary>
      <div className={styles.byProgram}>
        <p className={styles.soft}>
          {formats.includes('mp4')
            ? 'It uses ffmpeg of this machine, which writes MOV for video editors too.'
            : 'This machine has no ffmpeg, so the program writes numbered pictures, which any video editor takes.'}
        </p>
        <fieldset>
          <legend className="unseen">By the program</legend>
          <Fields>
            <SelectField
              label="Format"
              help={FORMATS[format]?.help}
              value={format}
              onChange={(event) => setFormat(event.target.value)}
              options={formats.map((value) => ({ value, text: FORMATS[value]?.text ?? value }))}
            />
            <SelectField
              label="Size"
              value={size}
              onChange={(event) => setSize(event.target.value)}
              options={SIZES.map(({ value, text, pixels }) => ({
                value,
                text: `${pixels}, ${text.toLowerCase()}`,
              }))}
            />
            <SelectField
              label="Frames a second"
              value={framesPerSecond}
              onChange={(event) => setFrames(event.target.value)}
              options={[
                { value: '60', text: '60, smooth' },
                { value: '30', text: '30, made in half the time' },
              ]}
            />
            <SelectField
              label="Theme"
              value={theme}
              onChange={(event) => setTheme(event.target.value === 'dark' ? 'dark' : 'light')}
              options={THEMES}
            />
            {canBeTransparent && (
              <Choice
                kind="checkbox"
                checked={isTransparent}
                onChange={(event) => setIsTransparent(event.target.checked)}
                help="To lay over a video."
              >
                Transparent ground
              </Choice>
            )}
          </Fields>
        </fieldset>
        <MakeButton
          {...making}
          ask={{
            kinds: ['clip'],
            formats: [format],
            sizes: [size],
            fps: framesPerSecond === '30' ? 30 : 60,
            theme,
            transparent: canBeTransparent && isTransparent,
          }}
          text="Have it made"
          name="Have it made by the program"
        />
      </div>
    </details>
  );
}

import type { TrialPage } from '@pullbook/views';
import { useState } from 'react';
import { figuresQuery } from '../../api/questions.ts';
import { apiAddress } from '../../api/request.ts';
import { Button, DownloadLink } from '../../parts/Button.tsx';
import { Dialog, DialogActions } from '../../parts/Dialog.tsx';
import { Choice, Fields, SelectField } from '../../parts/Field.tsx';
import type { TrialSearch } from '../../search.ts';
import { useTheme } from '../../view/theme.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './publish.module.css';

/** A still of the trial: what it will be, then the file. */
export function PublishDialog({
  page,
  look,
  onClose,
}: {
  page: TrialPage;
  look: TrialSearch;
  onClose: () => void;
}) {
  const view = useViewChoices();
  const [size, setSize] = useState('1080p');
  const [format, setFormat] = useState('png');
  const [theme, setTheme] = useState<string>(useTheme());
  const [transparent, setTransparent] = useState(false);
  const [failed, setFailed] = useState(false);
  const isHeldBack = page.heldBack.length > 0;
  const [privateToo, setPrivateToo] = useState(false);
  const mayLeave = !isHeldBack || privateToo;

  const address = (choice: { format: string; size: string; download?: 1 }) =>
    apiAddress(`/trials/${encodeURIComponent(page.id)}/still`, {
      ...choice,
      theme,
      ground: !transparent,
      ...(isHeldBack && { privateToo: true }),
      ...figuresQuery(view),
      correction: look.correction,
      from: look.from,
      to: look.to,
    });
  // The preview is always the raster: it carries its own fonts, which a vector file takes from the machine it is opened on.
  const preview = address({ format: 'png', size: '1080p' });

  return (
    <Dialog title="Publish a still" open onClose={onClose} wide>
      <div className={styles.preview} data-theme={theme} data-transparent={transparent}>
        {failed ? (
          <p role="alert">The still could not be drawn. Close this, reload the page and try again.</p>
        ) : (
          <img
            key={preview}
            src={preview}
            width={1920}
            height={1080}
            alt={`Preview of the still: ${page.chart?.alternative ?? page.question}`}
            onError={() => setFailed(true)}
          />
        )}
      </div>
      {isHeldBack && (
        <div className={styles.held}>
          <p>Not everything in it is for everyone. The still says “Not for publication” itself.</p>
          <ul>
            {page.heldBack.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <Choice
            kind="checkbox"
            checked={privateToo}
            onChange={(event) => setPrivateToo(event.target.checked)}
          >
            Let it leave the shop all the same
          </Choice>
        </div>
      )}
      <Fields>
        <SelectField
          label="Size"
          value={size}
          onChange={(event) => setSize(event.target.value)}
          options={[
            { value: '1080p', text: '1080p: 1920 × 1080' },
            { value: '4k', text: '4K: 3840 × 2160' },
          ]}
        />
        <SelectField
          label="Theme"
          value={theme}
          onChange={(event) => setTheme(event.target.value)}
          options={[
            { value: 'light', text: 'Light' },
            { value: 'dark', text: 'Dark, for video' },
          ]}
        />
        <SelectField
          label="Format"
          value={format}
          onChange={(event) => setFormat(event.target.value)}
          options={[
            { value: 'png', text: 'PNG, pixels' },
            { value: 'svg', text: 'SVG, to edit' },
          ]}
        />
        <Choice
          kind="checkbox"
          checked={transparent}
          onChange={(event) => setTransparent(event.target.checked)}
          help="To lay over a video."
        >
          Transparent ground
        </Choice>
      </Fields>
      <DialogActions>
        {mayLeave ? (
          <DownloadLink look="main" href={address({ format, size, download: 1 })}>
            Download the still
          </DownloadLink>
        ) : (
          <Button look="main" isDisabled>
            Download the still
          </Button>
        )}
        <Button onPress={onClose}>Close</Button>
      </DialogActions>
    </Dialog>
  );
}

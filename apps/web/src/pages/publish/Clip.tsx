import type { ThemeName } from '@pullbook/charts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { clipQuestion } from '../../api/publish.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Fields, SelectField } from '../../parts/Field.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useTheme } from '../../view/theme.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { ClipFile } from './ClipFile.tsx';
import { ClipPlayer } from './ClipPlayer.tsx';
import type { Making } from './making.ts';
import styles from './publish.module.css';
import { RunningOrderEditor } from './RunningOrderEditor.tsx';
import { SIZES, THEMES } from './still-choices.ts';

/** 4K shows nothing to the eye that the wide one does not. */
const SHAPES = SIZES.filter(({ value }) => value !== '4k');

/** How the trial is told step by step: what it looks like as it runs, the order, and the file of it. */
export function Clip(making: Making) {
  const { page, inShop } = making;
  const clip = useQuery(clipQuestion(page.id, inShop, useViewChoices()));
  const [shape, setShape] = useState<string>('1080p');
  const [theme, setTheme] = useState<ThemeName>(useTheme());
  const { width, height } = SHAPES.find(({ value }) => value === shape) ?? SHAPES[0]!;
  return (
    <Card
      title="Clip"
      beside={
        <ButtonLink small to="/trials/$id/present" params={{ id: page.id }}>
          Present it
        </ButtonLink>
      }
    >
      <div className={styles.parts}>
        <Trouble of={clip.error} />
        {clip.isPending && <Waiting />}
        {clip.data?.steps.length === 0 && (
          <p role="status">Nothing of it is shown. Tick a step in the running order.</p>
        )}
        {clip.data !== undefined && clip.data.steps.length > 0 && (
          <>
            <ClipPlayer
              clip={clip.data}
              order={page.runningOrder}
              size={{ width, height, theme, ground: true }}
            />
            <Fields>
              <SelectField
                label="Look at it as"
                value={shape}
                onChange={(event) => setShape(event.target.value)}
                options={SHAPES.map(({ value, text, pixels }) => ({ value, text: `${text}: ${pixels}` }))}
              />
              <SelectField
                label="Theme of the look"
                value={theme}
                onChange={(event) => setTheme(event.target.value === 'dark' ? 'dark' : 'light')}
                options={THEMES}
              />
            </Fields>
          </>
        )}
        <RunningOrderEditor id={page.id} order={page.runningOrder} stamp={page.stamp} />
        {clip.data !== undefined && clip.data.steps.length > 0 && <ClipFile {...making} />}
      </div>
    </Card>
  );
}

import { useState } from 'react';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Choice, Fields, SelectField } from '../../parts/Field.tsx';
import { useTheme } from '../../view/theme.ts';
import { MakeButton } from './MakeButton.tsx';
import type { Making } from './making.ts';
import styles from './publish.module.css';
import { StillFigure } from './StillFigure.tsx';
import { FORMATS, filesOf, pictureId, SIZES, type StillChoices, THEMES, withSize } from './still-choices.ts';

/** The pictures of the set as they will be; some or all of them, in one or several sizes. */
export function Stills(making: Making) {
  const { stills } = making.page;
  const [choices, setChoices] = useState<StillChoices>({
    sizes: ['1080p'],
    theme: useTheme(),
    isTransparent: false,
    format: 'png',
  });
  const [left, setLeft] = useState<readonly string[]>([]);
  const change = (changed: Partial<StillChoices>) => setChoices({ ...choices, ...changed });
  const chosen = stills.filter((still) => !left.includes(pictureId(still)));
  const { sizes, theme, isTransparent, format } = choices;
  const files = filesOf(chosen, sizes);

  return (
    <Card title="Stills">
      <div className={styles.parts}>
        <div className={styles.choices}>
          <fieldset>
            <legend className={styles.legend}>Sizes</legend>
            <div className={styles.sizes}>
              {SIZES.map(({ value, text, pixels }) => (
                <Choice
                  key={value}
                  kind="checkbox"
                  checked={sizes.includes(value)}
                  onChange={(event) => change({ sizes: withSize(sizes, value, event.target.checked) })}
                  help={pixels}
                >
                  {text}
                </Choice>
              ))}
            </div>
          </fieldset>
          <Fields>
            <SelectField
              label="Theme"
              value={theme}
              onChange={(event) => change({ theme: event.target.value === 'dark' ? 'dark' : 'light' })}
              options={THEMES}
            />
            <SelectField
              label="Format"
              value={format}
              onChange={(event) =>
                change({ format: FORMATS.find(({ value }) => value === event.target.value)!.value })
              }
              options={[...FORMATS]}
            />
            <Choice
              kind="checkbox"
              checked={isTransparent}
              onChange={(event) => change({ isTransparent: event.target.checked })}
              help="To lay over a video."
            >
              Transparent ground
            </Choice>
          </Fields>
        </div>
        <ul className={styles.gallery} data-shape={sizes[0]}>
          {stills.map((still) => (
            <StillFigure
              key={pictureId(still)}
              {...making}
              still={still}
              choices={choices}
              isChosen={chosen.includes(still)}
              onChoose={(isChosen) =>
                setLeft(
                  isChosen ? left.filter((one) => one !== pictureId(still)) : [...left, pictureId(still)],
                )
              }
            />
          ))}
        </ul>
        <div className={styles.acts}>
          <MakeButton
            {...making}
            ask={{
              kinds: ['still'],
              pictures: chosen.map(pictureId),
              sizes,
              theme,
              transparent: isTransparent,
              formats: [format],
            }}
            text={files === 1 ? 'Publish this still' : `Publish these ${files} stills`}
            isDisabled={files === 0}
          />
          <Button look="quiet" onPress={() => setLeft(chosen.length > 0 ? stills.map(pictureId) : [])}>
            {chosen.length > 0 ? 'Choose none' : 'Choose all'}
          </Button>
        </div>
      </div>
    </Card>
  );
}

import { drawStill } from '@pullbook/charts';
import { useMemo } from 'react';
import { type PublishPage, stillAddress } from '../../api/publish.ts';
import { SceneElements } from '../../chart/SceneElements.tsx';
import { Choice } from '../../parts/Field.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { CopyWords } from './CopyWords.tsx';
import { MakeButton } from './MakeButton.tsx';
import type { Making } from './making.ts';
import styles from './publish.module.css';
import { pictureId, SIZES, type StillChoices, THUMBNAIL } from './still-choices.ts';

/** One picture of the set: what it will be, whether it goes along, and the words for who cannot see it. */
export function StillFigure({
  still,
  choices: { sizes, theme, isTransparent, format },
  isChosen,
  onChoose,
  ...making
}: Making & {
  still: PublishPage['stills'][number];
  choices: StillChoices;
  isChosen: boolean;
  onChoose: (isChosen: boolean) => void;
}) {
  const { page, inShop } = making;
  const view = useViewChoices();
  const shape =
    still.name === 'thumbnail' ? THUMBNAIL : (SIZES.find(({ value }) => value === sizes[0]) ?? SIZES[0]);
  // Drawn here, the very drawing of the file; to look at, 4K shows nothing that the wide one does not.
  const { width, height } = shape.value === '4k' ? SIZES[0] : shape;
  const scene = useMemo(
    () => drawStill(still.still, { width, height, theme, ground: !isTransparent }),
    [still, width, height, theme, isTransparent],
  );
  const picture = { picture: still.name, key: still.key, size: shape.value, theme, ground: !isTransparent };
  return (
    <li className={styles.picture} data-chosen={isChosen}>
      <Choice kind="checkbox" checked={isChosen} onChange={(event) => onChoose(event.target.checked)}>
        {still.title}
      </Choice>
      <a
        className={styles.frame}
        href={stillAddress(page.id, picture, inShop, view)}
        target="_blank"
        rel="noreferrer"
        data-theme={theme}
        data-transparent={isTransparent}
      >
        <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={still.alternative}>
          <SceneElements nodes={scene.nodes} />
        </svg>
        <span className="unseen">Look at it in its full size</span>
      </a>
      <div className={styles.acts}>
        <MakeButton
          {...making}
          isSmall
          ask={{
            kinds: ['still'],
            pictures: [pictureId(still)],
            sizes,
            theme,
            transparent: isTransparent,
            formats: [format],
          }}
          text="Publish it alone"
          name={`Publish it alone: ${still.title}`}
        />
        <CopyWords words={still.alternative} of={still.title} />
      </div>
    </li>
  );
}

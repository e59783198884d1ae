import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import type { PublishPage } from '../../api/publish.ts';
import type { TrialLook } from '../../api/questions.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Sentence } from '../../parts/Sentence.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import { BegunBefore } from './BegunBefore.tsx';
import { Clip } from './Clip.tsx';
import { Data } from './Data.tsx';
import { Leaves } from './Leaves.tsx';
import { PublishAll } from './PublishAll.tsx';
import { Published } from './Published.tsx';
import styles from './publish.module.css';
import { Report } from './Report.tsx';
import { Stills } from './Stills.tsx';

export function PublishView({ page, look }: { page: PublishPage; look: TrialLook }) {
  const [privateToo, setPrivateToo] = useState(false);
  const isHeldBack = page.leaving.heldBack.length > 0;
  const isAnyHeld = isHeldBack || page.leaving.heldBackInBundle.length > 0;
  const shared = {
    page,
    look: { ...look, privateToo: isAnyHeld && privateToo },
    inShop: { ...look, privateToo: isHeldBack },
    mayLeave: !isHeldBack || privateToo,
  };
  return (
    <article>
      <PageHead title="Publish">
        <ButtonLink to="/trials/$id" params={{ id: page.id }} search={look}>
          Back to the trial
        </ButtonLink>
      </PageHead>
      <p className={styles.question}>
        <Link to="/trials/$id" params={{ id: page.id }} search={look}>
          {page.question}
        </Link>
      </p>
      <p className={styles.answer}>
        <Sentence parts={page.sentence} />
      </p>
      <TwoColumns
        parts={{
          begun: <BegunBefore id={page.id} />,
          all: <PublishAll {...shared} />,
          leaves: <Leaves leaving={page.leaving} privateToo={privateToo} onPrivateToo={setPrivateToo} />,
          stills: <Stills {...shared} />,
          clip: <Clip {...shared} />,
          report: <Report {...shared} />,
          data: <Data {...shared} />,
          published: <Published page={page} />,
        }}
        main={['begun', 'all', 'stills', 'clip', 'report']}
        side={['leaves', 'data', 'published']}
        narrow={['begun', 'leaves', 'all', 'stills', 'clip', 'report', 'data', 'published']}
      />
    </article>
  );
}

import { useState } from 'react';
import { reportAddress } from '../../api/publish.ts';
import buttonStyles from '../../parts/button.module.css';
import { Card } from '../../parts/Card.tsx';
import { Fields, SelectField } from '../../parts/Field.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import { MakeButton } from './MakeButton.tsx';
import type { Making } from './making.ts';
import styles from './publish.module.css';

/** The customer's report: to read before it leaves, then as a page with live charts or for paper. */
export function Report(making: Making) {
  const { page, inShop } = making;
  const view = useViewChoices();
  const [paper, setPaper] = useState<'a4' | 'letter'>(view.units === 'us' ? 'letter' : 'a4');
  const address = reportAddress(page.id, inShop, view);
  return (
    <Card title="Report">
      <div className={styles.parts}>
        <p>
          What was asked and the answer in a sentence, what was tested, curves with their bands, conditions,
          margins, what was not measured, cautions. The page has live charts and needs no other file; the PDF
          is for paper.
        </p>
        <Fields>
          <SelectField
            label="Paper of the PDF"
            value={paper}
            onChange={(event) => setPaper(event.target.value === 'letter' ? 'letter' : 'a4')}
            options={[
              { value: 'a4', text: 'A4' },
              { value: 'letter', text: 'Letter' },
            ]}
          />
        </Fields>
        <div className={styles.acts}>
          <a className={buttonStyles.button} href={address} target="_blank" rel="noreferrer">
            Read it first
          </a>
          <MakeButton {...making} ask={{ kinds: ['report'], formats: ['html'] }} text="Publish the page" />
          <MakeButton
            {...making}
            ask={{ kinds: ['report'], formats: ['pdf'], paper }}
            text="Publish the PDF"
          />
        </div>
      </div>
    </Card>
  );
}

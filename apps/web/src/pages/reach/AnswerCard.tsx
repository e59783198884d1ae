import type { KeptEnquiry, ReachPage } from '@pullbook/views/reach';
import { useState } from 'react';
import { type CardAsk, cardAddress, useLeaveCard } from '../../api/reach.ts';
import { Button } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { Choice, Fields, SelectField } from '../../parts/Field.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { useTheme } from '../../view/theme.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { FORMATS, SIZES, THEMES } from '../publish/still-choices.ts';
import styles from './reach.module.css';

/** The answer as a picture for people outside, as the file will be; noted when it leaves. */
export function AnswerCard({ kept, page }: { kept: KeptEnquiry; page: ReachPage }) {
  const view = useViewChoices();
  const { id } = kept.enquiry;
  const [theme, setTheme] = useState(useTheme());
  const [size, setSize] = useState<string>(SIZES[0].value);
  const [format, setFormat] = useState<CardAsk['format']>('png');
  const [shows, setShows] = useState<CardAsk['shows']>('words');
  const [isOfRung, setOfRung] = useState(false);
  const rungId = isOfRung && page.chosen !== null ? page.chosen.rung.id : null;
  // To look at, 4K shows nothing that the wide one does not.
  const shown = size === '4k' ? SIZES[0].value : size;
  const { width, height } = SIZES.find(({ value }) => value === shown) ?? SIZES[0];
  const ask: CardAsk = {
    size,
    theme,
    shows,
    ground: true,
    format,
    ...(rungId !== null && { rung: rungId }),
  };
  const leave = useLeaveCard(id, view);
  const publish = () =>
    leave.mutate(ask, { onSuccess: ({ name }) => save(cardAddress(id, ask, view, '1'), name) });
  return (
    <Card title="Answer card">
      <a
        className={styles.still}
        href={cardAddress(id, { ...ask, format: 'png' }, view)}
        target="_blank"
        rel="noreferrer"
      >
        <img
          src={cardAddress(id, { ...ask, size: shown, format: 'png' }, view)}
          width={width}
          height={height}
          alt={`The card: ${page.title}`}
        />
        <span className="unseen">Look at it in its full size</span>
      </a>
      <Fields>
        <SelectField
          label="It shows"
          value={shows}
          options={[
            { value: 'words', text: 'The answer in words' },
            { value: 'curves', text: 'The curves of one way' },
          ]}
          onChange={(event) => setShows(event.target.value === 'curves' ? 'curves' : 'words')}
        />
        <SelectField
          label="Size"
          value={size}
          options={SIZES.map(({ value, text }) => ({ value, text }))}
          onChange={(event) => setSize(event.target.value)}
        />
        <SelectField
          label="Theme"
          value={theme}
          options={THEMES}
          onChange={(event) => setTheme(event.target.value === 'dark' ? 'dark' : 'light')}
        />
        <SelectField
          label="File"
          value={format}
          options={[...FORMATS]}
          onChange={(event) => setFormat(event.target.value as CardAsk['format'])}
        />
      </Fields>
      <Choice kind="checkbox" checked={isOfRung} onChange={(event) => setOfRung(event.target.checked)}>
        Of the chosen way, not of the whole answer
      </Choice>
      <Trouble of={leave.error} />
      <Remarks remarks={leave.data?.remarks ?? []} />
      <div className={styles.ways}>
        <Button isDisabled={leave.isPending} onPress={publish}>
          {leave.isPending ? 'Making …' : 'Publish the card'}
        </Button>
      </div>
      <p className={styles.from}>It is noted on this answer that the card left.</p>
    </Card>
  );
}

/** The browser puts it where it puts what it saves. */
function save(address: string, name: string): void {
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
}

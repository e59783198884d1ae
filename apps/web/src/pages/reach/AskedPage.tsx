import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { enquiriesQuestion } from '../../api/reach.ts';
import { FindField } from '../../parts/FindField.tsx';
import linked from '../../parts/linked-cards.module.css';
import { Column, PageHead } from '../../parts/PageHead.tsx';
import { Pages } from '../../parts/Pages.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useFindText } from '../../parts/use-find-text.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { AskForm } from './AskForm.tsx';
import styles from './asked.module.css';
import { EnquiryCardView } from './EnquiryCardView.tsx';

/** A power is asked of a combination here; below it what was asked before, with its answers. */
export default function AskedPage() {
  const search = useSearch({ from: '/reach' });
  const navigate = useNavigate({ from: '/reach' });
  const asked = useQuery(enquiriesQuestion(search, useViewChoices()));
  const { rows = [], total = 0, all = 0, page = 1, pages = 1 } = asked.data ?? {};
  const [text, onText] = useFindText(
    search.find,
    (find) =>
      void navigate({ search: { ...search, page: undefined, find }, replace: true, resetScroll: false }),
  );
  return (
    <>
      <PageHead title="How does it make the power you want?" />
      <AskForm first={search.combination} />
      <section className={styles.before}>
        <h2>Asked before</h2>
        <Column>
          <Trouble of={asked.error} />
          {asked.isPending && <Waiting />}
          {asked.data !== undefined && all === 0 && (
            <p>
              No answer was kept yet. Ask, and keep what comes of it: it is found here again, with what became
              of it.
            </p>
          )}
          {all > 0 && <FindField what="questions" text={text} onText={onText} shown={total} all={all} />}
          {all > 0 && total === 0 && <p>Nothing was asked like that. Take a word away.</p>}
          {rows.length > 0 && (
            <ul className={linked.list}>
              {rows.map((card) => (
                <EnquiryCardView key={card.id} card={card} />
              ))}
            </ul>
          )}
          <Pages
            page={page}
            pages={pages}
            onPage={(to) => void navigate({ search: { ...search, page: to === 1 ? undefined : to } })}
          />
        </Column>
      </section>
    </>
  );
}

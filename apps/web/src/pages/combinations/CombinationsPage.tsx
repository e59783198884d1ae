import { useQuery } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { combinationsQuestion, enginesQuestion } from '../../api/questions.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { engineChoices } from '../../parts/engine-choices.ts';
import { SelectField } from '../../parts/Field.tsx';
import { FindField, holdsAllWords } from '../../parts/FindField.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Pages } from '../../parts/Pages.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { useFindText } from '../../parts/use-find-text.ts';
import type { CombinationsSearch } from '../../search.ts';
import { CombinationRows } from './CombinationRows.tsx';
import styles from './combinations.module.css';
import { Engines } from './Engines.tsx';

const ROWS_A_PAGE = 100;

/** The hardware as built, one readable sheet each. What was asked for stands in the address. */
export default function CombinationsPage() {
  const search = useSearch({ from: '/combinations' });
  const navigate = useNavigate({ from: '/combinations' });
  const combinations = useQuery(combinationsQuestion());
  const ask = (change: CombinationsSearch) =>
    void navigate({ search: { ...search, page: undefined, ...change }, replace: true, resetScroll: false });
  const [text, onText] = useFindText(search.find, (find) => ask({ find }));

  const all = combinations.data ?? [];
  const engines = useQuery(enginesQuestion()).data ?? [];
  const found = all.filter(
    (one) =>
      (search.engine === undefined || one.engineId === search.engine) &&
      holdsAllWords([one.name, one.engineName, ...one.chips.map((chip) => chip.text)], search.find ?? ''),
  );
  const pages = Math.max(1, Math.ceil(found.length / ROWS_A_PAGE));
  const page = Math.min(search.page ?? 1, pages);
  const rows = found.slice((page - 1) * ROWS_A_PAGE, page * ROWS_A_PAGE);
  return (
    <>
      <PageHead title="Combinations">
        <ButtonLink to="/combinations/new" look="main">
          A new combination
        </ButtonLink>
        <ButtonLink to="/maps">Compressor maps</ButtonLink>
      </PageHead>
      <Trouble of={combinations.error} />
      {combinations.isPending && <Waiting />}
      {combinations.data !== undefined && all.length === 0 && (
        <p>None yet. A combination is the hardware as built for a pull: write what is on the engine, once.</p>
      )}
      {(combinations.data === undefined || all.length > 0) && (
        <div className={styles.head}>
          <FindField what="combinations" text={text} onText={onText} shown={found.length} all={all.length} />
          {engines.length > 1 && (
            <div className={styles.engine}>
              <SelectField
                label="Engine"
                value={search.engine ?? ''}
                onChange={(event) => ask({ engine: event.target.value || undefined })}
                options={[{ value: '', text: 'All' }, ...engineChoices(engines)]}
              />
            </div>
          )}
        </div>
      )}
      {all.length > 0 && rows.length === 0 && (
        <p>No combination is like that. Take a word or the engine away.</p>
      )}
      {rows.length > 0 && <CombinationRows rows={rows} />}
      <Pages
        page={page}
        pages={pages}
        onPage={(to) => void navigate({ search: { ...search, page: to === 1 ? undefined : to } })}
      />
      <Engines />
    </>
  );
}

import type { CombinationPage as Page } from '@pullbook/views';
import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { combinationQuestion } from '../../api/questions.ts';
import { useKey } from '../../keys/use-key.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { Card } from '../../parts/Card.tsx';
import { ChangeLines } from '../../parts/ChangeLines.tsx';
import { Chips } from '../../parts/Chips.tsx';
import { FindingsCard } from '../../parts/Findings.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { Remarks } from '../../parts/Remarks.tsx';
import { ShownTable } from '../../parts/ShownTable.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { TwoColumns } from '../../parts/TwoColumns.tsx';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './combination.module.css';

/** One combination as a readable sheet. */
export default function CombinationPage() {
  const { id } = useParams({ from: '/combinations/$id' });
  const combination = useQuery(combinationQuestion(id, useViewChoices()));
  if (combination.data === undefined)
    return combination.isPending ? <Waiting /> : <Trouble of={combination.error} />;
  return <CombinationView page={combination.data} />;
}

function CombinationView({ page }: { page: Page }) {
  const navigate = useNavigate();
  useKey('match', () => {
    if (page.isSupercharged) void navigate({ to: '/combinations/$id/match', params: { id: page.id } });
  });
  useKey('askPower', () => void navigate({ to: '/combinations/$id/reach', params: { id: page.id } }));
  return (
    <article>
      <div className={styles.head}>
        <p className={styles.engine}>{page.engineName}</p>
        <PageHead title={page.name}>
          <ButtonLink look="main" to="/combinations/new" search={{ from: page.id }}>
            Same as this, but …
          </ButtonLink>
          <ButtonLink to="/combinations/$id/amend" params={{ id: page.id }}>
            Amend
          </ButtonLink>
          {page.isSupercharged && (
            <ButtonLink to="/combinations/$id/match" params={{ id: page.id }} shortcut="match">
              Match
            </ButtonLink>
          )}
          <ButtonLink to="/combinations/$id/reach" params={{ id: page.id }} shortcut="askPower">
            Ask for a power
          </ButtonLink>
        </PageHead>
        <Chips chips={page.chips}>{page.revision > 1 && <span>Revision {page.revision}</span>}</Chips>
      </div>
      <TwoColumns
        parts={{
          sections: (
            <div className={styles.sections}>
              {page.sections.map(({ title, rows }) => (
                <Card key={title} title={title}>
                  <dl className={styles.rows}>
                    {rows.map(({ label, text, origin, unknown, table, details }) => (
                      <div key={label} className={table === undefined ? undefined : styles.wide}>
                        <dt>{label}</dt>
                        <dd className={unknown ? styles.unknown : undefined}>
                          {text}
                          {!unknown && origin !== '' && <span className={styles.origin}>{origin}</span>}
                          {details !== undefined && details.length > 0 && (
                            <span className={styles.origin}>
                              {details.map((one) => `${one.label}: ${one.text}`).join(' · ')}
                            </span>
                          )}
                          {table !== undefined && <ShownTable table={table} />}
                        </dd>
                      </div>
                    ))}
                  </dl>
                </Card>
              ))}
            </div>
          ),
          facts: (
            <>
              <Pulls page={page} />
              {page.map !== null && (
                <Card title="Compressor map">
                  {page.map.id === null ? (
                    <p>
                      The book has no map “{page.map.name}”. <Link to="/maps">Add it</Link>
                    </p>
                  ) : (
                    <Link to="/maps/$id" params={{ id: page.map.id }}>
                      {page.map.name}
                    </Link>
                  )}
                </Card>
              )}
              {page.madeFrom !== null && (
                <Card title="Made from">
                  <div className={styles.links}>
                    <Link to="/combinations/$id" params={{ id: page.madeFrom.id }}>
                      {page.madeFrom.name}
                    </Link>
                    <ChangeLines lines={page.changes} />
                  </div>
                </Card>
              )}
              {page.derived.length > 0 && (
                <Card title="Derived">
                  <dl className={styles.rows}>
                    {page.derived.map(({ label, value, from }) => (
                      <div key={label}>
                        <dt>{label}</dt>
                        <dd>
                          {value}
                          <span className={styles.origin}>{from}</span>
                        </dd>
                      </div>
                    ))}
                  </dl>
                </Card>
              )}
              {page.packages.length > 0 && (
                <Card title="Packages">
                  <ul>
                    {page.packages.map((name) => (
                      <li key={name}>{name}</li>
                    ))}
                  </ul>
                </Card>
              )}
              <FindingsCard findings={page.findings} />
              {page.remarks.length > 0 && (
                <Card title="Remarks">
                  <Remarks remarks={page.remarks} />
                </Card>
              )}
              <Card title="The sheet as text">
                <details>
                  <summary>To copy into a file</summary>
                  {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long text is scrolled by keys too */}
                  <pre className={styles.source} tabIndex={0}>
                    {page.sheetText}
                  </pre>
                </details>
              </Card>
            </>
          ),
        }}
        main={['sections']}
        side={['facts']}
        narrow={['sections', 'facts']}
      />
    </article>
  );
}

function Pulls({ page }: { page: Page }) {
  return (
    <Card title="Its pulls">
      <div className={styles.links}>
        {page.pulls.length === 0 && <p>None yet.</p>}
        {page.pulls.map((pull) => (
          <div key={pull.id}>
            <Link to="/pulls/$id" params={{ id: pull.id }}>
              {pull.name}
            </Link>
            <span className={styles.origin}>
              {[pull.recordedAt, pull.peakPower].filter((text) => text !== '').join(' · ')}
            </span>
          </div>
        ))}
        <div>
          <ButtonLink to="/add" search={{ combination: page.id }} small>
            Add pulls of it
          </ButtonLink>
        </div>
      </div>
    </Card>
  );
}

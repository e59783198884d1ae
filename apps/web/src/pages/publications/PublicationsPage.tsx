import { useQuery } from '@tanstack/react-query';
import { publicationsQuestion } from '../../api/publish.ts';
import { PageHead } from '../../parts/PageHead.tsx';
import { Trouble, Waiting } from '../../parts/Trouble.tsx';
import { dayHere } from '../../view/moment-here.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import styles from './publications.module.css';
import { SaidAlikeView } from './SaidAlikeView.tsx';
import { saidAlike } from './said-alike.ts';

/** All that left the shop: first what is no longer so, then the newest first. */
export default function PublicationsPage() {
  const asked = useQuery(publicationsQuestion(useViewChoices()));
  const all = asked.data ?? [];
  const errata = all.filter(({ stale }) => stale.length > 0);
  const groups = [
    { title: errata.length === 1 ? 'One erratum' : `${errata.length} errata`, of: errata },
    {
      title: errata.length === 0 ? 'Published' : 'What still holds',
      of: all.filter(({ stale }) => stale.length === 0),
    },
  ].filter(({ of }) => of.length > 0);
  return (
    <>
      <PageHead title="Publications" />
      <p className={styles.intro}>
        What left the shop, with the figures that were said. Where pulls, sheets or their reading were amended
        since, and a figure is another now, it stands here as an erratum with the places where it appeared.
      </p>
      <Trouble of={asked.error} />
      {asked.isPending && <Waiting />}
      {asked.data?.length === 0 && (
        <p>
          Nothing was published yet. Open a trial and press Publish: pictures, clip, report and data are made
          there.
        </p>
      )}
      {groups.map(({ title, of }) => (
        <section key={title} className={styles.group}>
          <h2>{title}</h2>
          <ol>
            {saidAlike(of, dayHere).map((group) => (
              <li key={group.first.id} className={styles.card}>
                <SaidAlikeView group={group} withQuestion />
              </li>
            ))}
          </ol>
        </section>
      ))}
    </>
  );
}

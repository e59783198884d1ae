import type { PublicationLink } from '@pullbook/core/publication';
import { momentText } from '@pullbook/views';
import { useState } from 'react';
import { useChangeLinks } from '../../api/publish.ts';
import { Button } from '../../parts/Button.tsx';
import { Trouble } from '../../parts/Trouble.tsx';
import { LinkDialog } from './LinkDialog.tsx';
import styles from './publications.module.css';

const isAddress = (where: string) => /^https?:\/\//i.test(where);

/** Where a publication appeared: so that it can be mended there. */
export function Links({ id, links }: { id: string; links: PublicationLink[] }) {
  const change = useChangeLinks(id);
  const [adding, setAdding] = useState(false);
  return (
    <div className={styles.links}>
      {links.length > 0 && (
        <ul aria-label="Where it appeared">
          {links.map((link, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one place may stand here twice, and the order is kept
            <li key={`${link.where} ${place}`}>
              <span>
                {isAddress(link.where) ? (
                  <a href={link.where} target="_blank" rel="noreferrer">
                    {link.where}
                  </a>
                ) : (
                  link.where
                )}
                {[momentText(link.day), link.note].filter(Boolean).map((text) => (
                  <span key={text} className={styles.soft}>
                    {' '}
                    · {text}
                  </span>
                ))}
              </span>
              <Button
                small
                look="quiet"
                isDisabled={change.isPending}
                aria-label={`Take out ${link.where}`}
                onPress={() => change.mutate(links.toSpliced(place, 1))}
              >
                Take out
              </Button>
            </li>
          ))}
        </ul>
      )}
      <div>
        <Button small onPress={() => setAdding(true)}>
          It appeared …
        </Button>
      </div>
      <Trouble of={change.error} />
      {adding && <LinkDialog id={id} links={links} onClose={() => setAdding(false)} />}
    </div>
  );
}

import { useQuery } from '@tanstack/react-query';
import { Link, useRouterState } from '@tanstack/react-router';
import { useState } from 'react';
import { bookQuestion } from '../api/questions.ts';
import { Button } from '../parts/Button.tsx';
import styles from './frame.module.css';
import { ViewMenu } from './ViewMenu.tsx';

const PLACES = [
  { to: '/', text: 'Trials', holds: /^\/($|trials\/)/ },
  { to: '/pulls', text: 'Pulls', holds: /^\/pulls/ },
  { to: '/combinations', text: 'Combinations', holds: /^\/(combinations(?!\/[^/]+\/reach)|maps)/ },
  { to: '/reach', text: 'Reach', holds: /^\/(reach|combinations\/[^/]+\/reach)/ },
  { to: '/shop', text: 'Shop', holds: /^\/shop/ },
  { to: '/history', text: 'History', holds: /^\/history/ },
] as const;

export function Bar({ onFind, onKeys }: { onFind: () => void; onKeys: () => void }) {
  const book = useQuery(bookQuestion());
  const path = useRouterState({ select: (state) => state.location.pathname });
  const [open, setOpen] = useState(false);
  return (
    <header className={styles.bar}>
      <Link to="/" className={styles.name} aria-label="Pullbook, to the trials">
        Pullbook
      </Link>
      <span className={styles.menuButton}>
        <Button look="quiet" onPress={() => setOpen(!open)} aria-expanded={open} aria-controls="places">
          Menu
        </Button>
      </span>
      <nav id="places" className={styles.places} data-open={open} aria-label="Places">
        {PLACES.map(({ to, text, holds }) => (
          <Link
            key={to}
            to={to}
            className={styles.place}
            data-here={holds.test(path)}
            activeOptions={{ exact: true }}
            onClick={() => setOpen(false)}
          >
            {text}
          </Link>
        ))}
      </nav>
      <div className={styles.right}>
        {book.data !== undefined && (
          <span className={styles.book}>
            {book.data.name}
            {book.data.invented && ' · invented data'}
          </span>
        )}
        <span className={styles.find}>
          <Button look="quiet" small onPress={onFind} shortcut="find">
            Find
          </Button>
        </span>
        <ViewMenu />
        <span className={styles.keysButton}>
          <Button look="quiet" small onPress={onKeys} shortcut="keys">
            Keys
          </Button>
        </span>
      </div>
    </header>
  );
}

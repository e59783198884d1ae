import { Outlet, useNavigate, useRouterState } from '@tanstack/react-router';
import { useEffect, useRef, useState } from 'react';
import { useKey } from '../keys/use-key.ts';
import { themeShown } from '../view/theme.ts';
import { chooseForShop, useShopSettings } from '../view/use-shop-settings.ts';
import { chooseTheme, viewChoices } from '../view/view-choices.ts';
import { Bar } from './Bar.tsx';
import { ClockNotice } from './ClockNotice.tsx';
import { focusFind } from './find-focus.ts';
import styles from './frame.module.css';
import { KeysOverlay } from './KeysOverlay.tsx';
import { LastAct } from './LastAct.tsx';
import { PageDrop } from './PageDrop.tsx';
import { RescueNotice } from './RescueNotice.tsx';

/** The list that a page belongs to: where `/` looks. */
function listOf(path: string): '/' | '/pulls' | '/combinations' | '/rules' | '/reach' {
  if (path.startsWith('/pulls')) return '/pulls';
  if (path.startsWith('/reach')) return '/reach';
  if (path.startsWith('/combinations')) return '/combinations';
  if (path.startsWith('/rules')) return '/rules';
  return '/';
}

/** What is round every page: the bar, the keys, the drop of files. */
export function Frame() {
  useShopSettings();
  const [keysOpen, setKeysOpen] = useState(false);
  const navigate = useNavigate();
  const path = useRouterState({ select: (state) => state.location.pathname });
  const main = useRef<HTMLElement>(null);
  const earlierPath = useRef(path);

  // A new page: its reader starts at its beginning, by eye and by ear.
  useEffect(() => {
    if (earlierPath.current === path) return;
    earlierPath.current = path;
    main.current?.focus({ preventScroll: true });
  }, [path]);

  async function find() {
    const list = listOf(path);
    if (path !== list) await navigate({ to: list });
    focusFind();
  }

  useKey('startTrial', () => void navigate({ to: '/trials/new' }));
  useKey('addPulls', () => void navigate({ to: '/add' }));
  useKey('trials', () => void navigate({ to: '/' }));
  useKey('pulls', () => void navigate({ to: '/pulls' }));
  useKey('combinations', () => void navigate({ to: '/combinations' }));
  useKey('shop', () => void navigate({ to: '/shop' }));
  useKey('reach', () => void navigate({ to: '/reach' }));
  useKey('history', () => void navigate({ to: '/history' }));
  useKey('find', () => void find());
  useKey('keys', () => setKeysOpen(true));
  useKey('theme', () => chooseTheme(themeShown() === 'dark' ? 'light' : 'dark'));
  useKey('units', () => chooseForShop({ units: viewChoices().units === 'us' ? 'si' : 'us' }));

  return (
    <>
      <a className={styles.skip} href="#content">
        Skip to the page
      </a>
      <Bar onFind={() => void find()} onKeys={() => setKeysOpen(true)} />
      <ClockNotice />
      <RescueNotice />
      <main id="content" className={styles.main} tabIndex={-1} ref={main}>
        <Outlet />
      </main>
      <LastAct />
      <footer className={styles.caution}>
        A planning and recording aid, not protection: it guards neither engine nor person. Makers’ limits,
        local codes and qualified people come first; nobody in the cell during a pull.
      </footer>
      <KeysOverlay open={keysOpen} onClose={() => setKeysOpen(false)} />
      <PageDrop />
    </>
  );
}

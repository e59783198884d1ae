import { Outlet, useRouterState } from '@tanstack/react-router';
import { Frame } from './Frame.tsx';

/** Whether a page has the whole window to itself, its keys too: what is shown to an audience has no bar round it. */
const standsAlone = (path: string): boolean => /^\/trials\/[^/]+\/present$/.test(path);

/** The frame round every page but those that stand alone. */
export function Around() {
  const isAlone = useRouterState({
    select: ({ matches, location }) => standsAlone(matches.at(-1)?.pathname ?? location.pathname),
  });
  return isAlone ? <Outlet /> : <Frame />;
}

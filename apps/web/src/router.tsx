import { createRootRoute, createRoute, createRouter, lazyRouteComponent } from '@tanstack/react-router';
import { Frame } from './frame/Frame.tsx';
import { NoSuchPage, PageTrouble } from './frame/PageTrouble.tsx';
import { readAddSearch, readPullSearch, readStartSearch, readTrialSearch } from './search.ts';

const root = createRootRoute({
  component: Frame,
  notFoundComponent: NoSuchPage,
  errorComponent: PageTrouble,
});
const at = () => root;

const trials = createRoute({
  getParentRoute: at,
  path: '/',
  component: lazyRouteComponent(() => import('./pages/trials/TrialsPage.tsx')),
});
const startTrial = createRoute({
  getParentRoute: at,
  path: '/trials/new',
  validateSearch: readStartSearch,
  component: lazyRouteComponent(() => import('./pages/start-trial/StartTrialPage.tsx')),
});
const trial = createRoute({
  getParentRoute: at,
  path: '/trials/$id',
  validateSearch: readTrialSearch,
  component: lazyRouteComponent(() => import('./pages/trial/TrialPage.tsx')),
});
const addPulls = createRoute({
  getParentRoute: at,
  path: '/add',
  validateSearch: readAddSearch,
  component: lazyRouteComponent(() => import('./pages/add-pulls/AddPullsPage.tsx')),
});
const pulls = createRoute({
  getParentRoute: at,
  path: '/pulls',
  component: lazyRouteComponent(() => import('./pages/pulls/PullsPage.tsx')),
});
const pull = createRoute({
  getParentRoute: at,
  path: '/pulls/$id',
  validateSearch: readPullSearch,
  component: lazyRouteComponent(() => import('./pages/pull/PullPage.tsx')),
});
const combinations = createRoute({
  getParentRoute: at,
  path: '/combinations',
  component: lazyRouteComponent(() => import('./pages/combinations/CombinationsPage.tsx')),
});
const newCombination = createRoute({
  getParentRoute: at,
  path: '/combinations/new',
  validateSearch: (search: Record<string, unknown>): { from?: string } =>
    typeof search.from === 'string' ? { from: search.from } : {},
  component: lazyRouteComponent(() => import('./pages/combination/NewCombinationPage.tsx')),
});
const combination = createRoute({
  getParentRoute: at,
  path: '/combinations/$id',
  component: lazyRouteComponent(() => import('./pages/combination/CombinationPage.tsx')),
});
const amendCombination = createRoute({
  getParentRoute: at,
  path: '/combinations/$id/amend',
  component: lazyRouteComponent(() => import('./pages/combination/AmendCombinationPage.tsx')),
});

export const router = createRouter({
  routeTree: root.addChildren([
    trials,
    startTrial,
    trial,
    addPulls,
    pulls,
    pull,
    combinations,
    newCombination,
    combination,
    amendCombination,
  ]),
  defaultPreload: 'intent',
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}

import { createRootRoute, createRoute, createRouter } from '@tanstack/react-router';
import { Around } from './frame/Around.tsx';
import { NoSuchPage, PageTrouble } from './frame/PageTrouble.tsx';
import { screen } from './frame/screen.ts';
import {
  readAddSearch,
  readAskedSearch,
  readCombinationsSearch,
  readHistorySearch,
  readKeptReachSearch,
  readLookSearch,
  readMatchSearch,
  readPresentSearch,
  readPullSearch,
  readPullsSearch,
  readReachSearch,
  readStartSearch,
  readTrialSearch,
  readTrialsSearch,
} from './search.ts';

const root = createRootRoute({
  component: Around,
  notFoundComponent: NoSuchPage,
  errorComponent: PageTrouble,
});
const at = () => root;

const trials = createRoute({
  getParentRoute: at,
  path: '/',
  validateSearch: readTrialsSearch,
  component: screen(() => import('./pages/trials/TrialsPage.tsx')),
});
const startTrial = createRoute({
  getParentRoute: at,
  path: '/trials/new',
  validateSearch: readStartSearch,
  component: screen(() => import('./pages/start-trial/StartTrialPage.tsx')),
});
const trial = createRoute({
  getParentRoute: at,
  path: '/trials/$id',
  validateSearch: readTrialSearch,
  component: screen(() => import('./pages/trial/TrialPage.tsx')),
});
const present = createRoute({
  getParentRoute: at,
  path: '/trials/$id/present',
  validateSearch: readPresentSearch,
  component: screen(() => import('./pages/present/PresentPage.tsx')),
});
const plan = createRoute({
  getParentRoute: at,
  path: '/trials/$id/plan',
  component: screen(() => import('./pages/plan/PlanPage.tsx')),
});
const trialMatch = createRoute({
  getParentRoute: at,
  path: '/trials/$id/match',
  validateSearch: readMatchSearch,
  component: screen(() => import('./pages/match/TrialMatchPage.tsx')),
});
const publish = createRoute({
  getParentRoute: at,
  path: '/trials/$id/publish',
  validateSearch: readLookSearch,
  component: screen(() => import('./pages/publish/PublishPage.tsx')),
});
const openBundle = createRoute({
  getParentRoute: at,
  path: '/open',
  component: screen(() => import('./pages/open-bundle/OpenBundlePage.tsx')),
});
const publications = createRoute({
  getParentRoute: at,
  path: '/publications',
  component: screen(() => import('./pages/publications/PublicationsPage.tsx')),
});
const addPulls = createRoute({
  getParentRoute: at,
  path: '/add',
  validateSearch: readAddSearch,
  component: screen(() => import('./pages/add-pulls/AddPullsPage.tsx')),
});
const pulls = createRoute({
  getParentRoute: at,
  path: '/pulls',
  validateSearch: readPullsSearch,
  component: screen(() => import('./pages/pulls/PullsPage.tsx')),
});
const pull = createRoute({
  getParentRoute: at,
  path: '/pulls/$id',
  validateSearch: readPullSearch,
  component: screen(() => import('./pages/pull/PullPage.tsx')),
});
const combinations = createRoute({
  getParentRoute: at,
  path: '/combinations',
  validateSearch: readCombinationsSearch,
  component: screen(() => import('./pages/combinations/CombinationsPage.tsx')),
});
const newCombination = createRoute({
  getParentRoute: at,
  path: '/combinations/new',
  validateSearch: (search: Record<string, unknown>): { from?: string } =>
    typeof search.from === 'string' ? { from: search.from } : {},
  component: screen(() => import('./pages/combination/NewCombinationPage.tsx')),
});
const combination = createRoute({
  getParentRoute: at,
  path: '/combinations/$id',
  component: screen(() => import('./pages/combination/CombinationPage.tsx')),
});
const amendCombination = createRoute({
  getParentRoute: at,
  path: '/combinations/$id/amend',
  component: screen(() => import('./pages/combination/AmendCombinationPage.tsx')),
});
const combinationMatch = createRoute({
  getParentRoute: at,
  path: '/combinations/$id/match',
  validateSearch: readMatchSearch,
  component: screen(() => import('./pages/match/CombinationMatchPage.tsx')),
});
const maps = createRoute({
  getParentRoute: at,
  path: '/maps',
  component: screen(() => import('./pages/maps/MapsPage.tsx')),
});
const map = createRoute({
  getParentRoute: at,
  path: '/maps/$id',
  component: screen(() => import('./pages/maps/MapPage.tsx')),
});

const combinationReach = createRoute({
  getParentRoute: at,
  path: '/combinations/$id/reach',
  validateSearch: readReachSearch,
  component: screen(() => import('./pages/reach/ReachOfCombinationPage.tsx')),
});
const reach = createRoute({
  getParentRoute: at,
  path: '/reach',
  validateSearch: readAskedSearch,
  component: screen(() => import('./pages/reach/AskedPage.tsx')),
});
const keptReach = createRoute({
  getParentRoute: at,
  path: '/reach/$id',
  validateSearch: readKeptReachSearch,
  component: screen(() => import('./pages/reach/KeptReachPage.tsx')),
});

const history = createRoute({
  getParentRoute: at,
  path: '/history',
  validateSearch: readHistorySearch,
  component: screen(() => import('./pages/history/HistoryPage.tsx')),
});

const shop = createRoute({
  getParentRoute: at,
  path: '/shop',
  component: screen(() => import('./pages/shop/ShopPage.tsx')),
});

const parts = createRoute({
  getParentRoute: at,
  path: '/shop/parts',
  component: screen(() => import('./pages/parts/PartsPage.tsx')),
});

const shopFigures = createRoute({
  getParentRoute: at,
  path: '/shop/figures',
  component: screen(() => import('./pages/figures/FiguresPage.tsx')),
});

const rules = createRoute({
  getParentRoute: at,
  path: '/rules',
  component: screen(() => import('./pages/rules/RulesPage.tsx')),
});

export const router = createRouter({
  routeTree: root.addChildren([
    trials,
    history,
    shop,
    rules,
    shopFigures,
    startTrial,
    trial,
    present,
    plan,
    publish,
    publications,
    openBundle,
    trialMatch,
    addPulls,
    pulls,
    pull,
    combinations,
    newCombination,
    combination,
    amendCombination,
    combinationMatch,
    combinationReach,
    reach,
    keptReach,
    parts,
    maps,
    map,
  ]),
  defaultPreload: 'intent',
  // Inside the frame: from a page that broke the others can still be reached.
  defaultErrorComponent: PageTrouble,
  scrollRestoration: true,
});

declare module '@tanstack/react-router' {
  interface Register {
    router: typeof router;
  }
}

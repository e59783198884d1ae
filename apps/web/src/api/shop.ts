/** What is the shop's: settings, cells, layouts met before, backups; and who may see a thing. */
import type {
  BackupState,
  CellsReport,
  FiguresPage,
  LayoutRow,
  ScatterPriorForm,
  SettingsReport,
} from '@pullbook/workshop';
import { queryOptions, useMutation } from '@tanstack/react-query';
import type { ViewChoices } from '../view/view-choices.ts';
import { bookChanged, queryClient } from './query-client.ts';
import { figuresQuery } from './questions.ts';
import { getJson, sendJson } from './request.ts';

export const settingsQuestion = () =>
  queryOptions({
    queryKey: ['settings'],
    queryFn: ({ signal }) => getJson<SettingsReport>('/settings', {}, signal),
  });

export const cellsQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['cells', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<CellsReport>('/cells', figuresQuery(view), signal),
  });

/** The shop's own figures; what the server still reads is there a moment later. */
export const shopFiguresQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['figures', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<FiguresPage>('/figures', figuresQuery(view), signal),
    refetchInterval: ({ state }) => ((state.data?.pullsNotRead ?? 0) > 0 ? 2000 : false),
  });

/** The shop's guess of its scatter, each figure with the built-in one beside it. */
export const scatterPriorQuestion = (view: ViewChoices) =>
  queryOptions({
    queryKey: ['scatter-prior', figuresQuery(view)],
    queryFn: ({ signal }) => getJson<ScatterPriorForm>('/scatter-prior', figuresQuery(view), signal),
  });

export const layoutsQuestion = () =>
  queryOptions({
    queryKey: ['layouts'],
    queryFn: ({ signal }) => getJson<LayoutRow[]>('/layouts', {}, signal),
  });

export const backupQuestion = () =>
  queryOptions({
    queryKey: ['backup'],
    queryFn: ({ signal }) => getJson<BackupState>('/backup', {}, signal),
  });

/** Some settings to keep; a mark is sent as its data. */
export type SettingsChange = Partial<
  Omit<SettingsReport, 'schemaVersion' | 'mark' | 'binWidthRpm' | 'scatterPrior' | 'worthwhileGain'>
> & {
  /** With its unit, or `adapted`. */
  binWidthRpm?: string;
  /** As typed, by path: `{ pull: { injected: '0.3 %' } }`; what is kept already as a bare number. */
  scatterPrior?: PriorChange;
  /** `1 %` */
  worthwhileGain?: string;
  mark?: { base64: string } | null;
};

/** A shop's guess of its scatter as it is sent. */
export interface PriorChange {
  [name: string]: string | number | PriorChange;
}

export const sendSettings = (change: SettingsChange) =>
  sendJson<SettingsReport>('PATCH', '/settings', change);

/** Shows settings as if the book had them already. An answer on its way, of how they stood before, is not waited for. */
export function showSettings(change: Partial<SettingsReport>): void {
  const { queryKey } = settingsQuestion();
  void queryClient.cancelQueries({ queryKey });
  queryClient.setQueryData(queryKey, (before) => before && { ...before, ...change });
}

export function useKeepSettings() {
  const { queryKey } = settingsQuestion();
  return useMutation({
    mutationFn: sendSettings,
    // What was chosen shows at once; the book's answer then stands in its place, and so it does where it refused.
    onMutate: ({
      mark: _,
      binWidthRpm: __,
      stamp: ___,
      scatterPrior: ____,
      worthwhileGain: _____,
      ...plain
    }) => showSettings(plain),
    onSuccess: bookChanged,
    onError: () => queryClient.invalidateQueries({ queryKey }),
  });
}

interface CellAct {
  method?: 'POST' | 'PATCH';
  path: string;
  body: object;
  /** What was looked at. */
  stamp?: string | undefined;
}

/** Any act on the cells: where it is sent, and what. */
export function useCellAct() {
  return useMutation({
    mutationFn: ({ method = 'POST', path, body, stamp }: CellAct) =>
      sendJson<unknown>(method, path, stamp === undefined ? body : { ...body, stamp }),
    onSuccess: bookChanged,
  });
}

export function useSetAudience(id: string) {
  return useMutation({
    mutationFn: (audience: { who: string; notBefore: string | null; stamp?: string | undefined }) =>
      sendJson<unknown>('PATCH', `/audience/${encodeURIComponent(id)}`, audience),
    onSuccess: bookChanged,
  });
}

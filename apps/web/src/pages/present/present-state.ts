import type { CursorTable } from '@pullbook/views';
import type { PresentedStep } from '@pullbook/views/publish';
import { nearest } from '../../chart/nearest.ts';

/** What is on the screen, alike in both windows. */
export interface PresentState {
  step: number;
  /** Another number: the step is drawn from its beginning. */
  drawing: number;
  isDark: boolean;
  /** Where on the axis somebody points. */
  pointer: number | null;
  /** Speeds that are held, the earlier first; at most two. */
  held: number[];
}

export type PresentAct =
  | { kind: 'go'; to: number }
  | { kind: 'step'; by: 1 | -1 }
  | { kind: 'again' }
  | { kind: 'dark' }
  | { kind: 'point'; at: number | null }
  | { kind: 'node'; by: 1 | -1 }
  | { kind: 'hold' };

const MOST_HELD = 2;

export const startAt = (step: number): PresentState => ({
  step,
  drawing: 0,
  isDark: false,
  pointer: null,
  held: [],
});

/** The next state; the same object where an act changes nothing. */
export function presented(
  state: PresentState,
  act: PresentAct,
  steps: readonly PresentedStep[],
): PresentState {
  switch (act.kind) {
    case 'go':
      return goTo(state, act.to, steps.length);
    case 'step':
      // Out of the dark first: nobody sees a step that changes behind it.
      return state.isDark ? { ...state, isDark: false } : goTo(state, state.step + act.by, steps.length);
    case 'again':
      return { ...state, drawing: state.drawing + 1, isDark: false };
    case 'dark':
      return { ...state, isDark: !state.isDark };
    case 'point':
      return state.pointer === act.at ? state : { ...state, pointer: act.at };
    case 'node':
      return { ...state, pointer: nodeBeside(state, act.by, steps[state.step]?.cursor ?? null) };
    case 'hold':
      return { ...state, held: heldWith(state) };
  }
}

function goTo(state: PresentState, wanted: number, count: number): PresentState {
  const step = Math.max(0, Math.min(count - 1, wanted));
  if (step === state.step) return state;
  return { ...state, step, drawing: state.drawing + 1, isDark: false, pointer: null };
}

/** The node next to where the cursor stands; it starts where the table has it start. */
function nodeBeside(state: PresentState, by: 1 | -1, table: CursorTable | null): number | null {
  if (table === null || table.at.length === 0) return null;
  const last = table.at.length - 1;
  if (state.pointer === null) return table.at[Math.min(table.start, last)]!;
  return table.at[Math.max(0, Math.min(last, nearest(table.at, state.pointer) + by))]!;
}

/** The earlier of two makes room; the one that is held already is let go; without a pointer all are. */
function heldWith({ pointer, held }: PresentState): number[] {
  if (pointer === null) return [];
  if (held.includes(pointer)) return held.filter((at) => at !== pointer);
  return [...held, pointer].slice(-MOST_HELD);
}

import type { PresentedStep } from '@pullbook/views/publish';
import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { themeShown } from '../../view/theme.ts';
import { chooseTheme } from '../../view/view-choices.ts';
import { type PresentAct, type PresentState, presented, startAt } from './present-state.ts';

/** What the windows of one trial say to one another. */
type Word =
  | { kind: 'here'; isFollower: boolean }
  | { kind: 'gone'; isFollower: boolean }
  | { kind: 'state'; state: PresentState; theme: 'light' | 'dark' };

/**
 * The state of the presentation, one in all windows of this trial: what is done in one is done in the others. Nothing of it
 * goes over the server.
 */
export function usePresented(
  trialId: string,
  steps: readonly PresentedStep[],
  firstStep: number,
  isFollower: boolean,
): { state: PresentState; act: (act: PresentAct) => void; isFollowed: boolean; changeTheme: () => void } {
  const [state, setState] = useState(() => startAt(firstStep));
  const [isFollowed, setFollowed] = useState(false);
  const current = useRef(state);
  const channel = useRef<BroadcastChannel | null>(null);
  const say = (word: Word) => channel.current?.postMessage(word);
  const tell = () => say({ kind: 'state', state: current.current, theme: themeShown() });

  const take = (next: PresentState) => {
    current.current = next;
    setState(next);
  };

  const hear = useEffectEvent((word: Word) => {
    if (word.kind === 'state') {
      take(word.state);
      if (word.theme !== themeShown()) chooseTheme(word.theme);
    } else if (word.isFollower && !isFollower) {
      setFollowed(word.kind === 'here');
      if (word.kind === 'here') tell();
    } else if (word.kind === 'here' && isFollower) say({ kind: 'here', isFollower });
  });

  useEffect(() => {
    const opened = new BroadcastChannel(`pullbook-present-${trialId}`);
    channel.current = opened;
    opened.onmessage = ({ data }: MessageEvent<Word>) => hear(data);
    opened.postMessage({ kind: 'here', isFollower } satisfies Word);
    const leave = () => opened.postMessage({ kind: 'gone', isFollower } satisfies Word);
    addEventListener('pagehide', leave);
    return () => {
      removeEventListener('pagehide', leave);
      leave();
      opened.close();
      channel.current = null;
    };
  }, [trialId, isFollower]);

  return {
    state: { ...state, step: Math.min(state.step, steps.length - 1) },
    isFollowed,
    act: (act) => {
      const next = presented(current.current, act, steps);
      if (next === current.current) return;
      take(next);
      tell();
    },
    changeTheme: () => {
      chooseTheme(themeShown() === 'dark' ? 'light' : 'dark');
      tell();
    },
  };
}

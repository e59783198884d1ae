import type { PresentedStep } from '@pullbook/views/publish';
import { useNavigate } from '@tanstack/react-router';
import { useEffect, useEffectEvent, useMemo, useRef, useState } from 'react';
import { facesReady } from '../../canvas/faces.ts';
import { markPictures } from '../../canvas/marks.ts';
import type { Pictures } from '../../canvas/paint-scene.ts';
import { cursorText } from '../../chart/cursor-text.ts';
import { nearest } from '../../chart/nearest.ts';
import { type PresentKeyId, presentKey } from '../../keys/present-keys.ts';
import { useTabName } from '../../parts/PageHead.tsx';
import { useTheme } from '../../view/theme.ts';
import { viewChoices } from '../../view/view-choices.ts';
import { Controls } from './Controls.tsx';
import { chartOf } from './chart-of.ts';
import { KeysCard } from './KeysCard.tsx';
import styles from './present.module.css';
import { Speaker } from './Speaker.tsx';
import { Stage } from './Stage.tsx';
import { openSecondWindow } from './second-window.ts';
import { usePresented } from './use-presented.ts';
import { useRest } from './use-rest.ts';
import { useWakeLock } from './use-wake-lock.ts';

const HELD_BACK =
  'The browser held the second window back. Allow windows of this page (at the end of the address line), then press 2 again.';

const KEYS_OF_BUTTONS = [' ', 'Enter'];

/** Steps of a trial, one a key, over the whole window. */
export function Presentation({
  id,
  steps,
  firstStep,
  isFollower,
}: {
  id: string;
  steps: readonly PresentedStep[];
  firstStep: number;
  isFollower: boolean;
}) {
  const navigate = useNavigate({ from: '/trials/$id/present' });
  const { state, act, isFollowed, changeTheme } = usePresented(id, steps, firstStep, isFollower);
  const theme = useTheme();
  const { isResting, isNear } = useRest();
  const main = useRef<HTMLElement>(null);
  const [areKeysOpen, setKeysOpen] = useState(false);
  const [said, setSaid] = useState('');
  const [begunAt] = useState(() => performance.now());
  const pictures = usePictures(steps);
  const step = steps[state.step]!;
  useTabName(step.still.headline);
  useWakeLock();

  useEffect(() => main.current?.focus({ preventScroll: true }), []);
  // In the address, so that a page loaded again stands where it stood.
  const stepId = step.id;
  useEffect(() => {
    void navigate({ search: (before) => ({ ...before, step: stepId }), replace: true, resetScroll: false });
  }, [stepId, navigate]);

  async function goWhole() {
    if (document.fullscreenElement !== null) await document.exitFullscreen();
    else
      await document.documentElement
        .requestFullscreen()
        .catch(() => setSaid('The browser allows no full screen here.'));
  }

  async function leave() {
    if (document.fullscreenElement !== null) await document.exitFullscreen();
    // A window that nobody opened cannot close itself.
    if (isFollower && window.opener !== null) window.close();
    else await navigate({ to: '/trials/$id', params: { id } });
  }

  function does(key: PresentKeyId) {
    setSaid('');
    if (key === 'next') act({ kind: 'step', by: 1 });
    else if (key === 'back') act({ kind: 'step', by: -1 });
    else if (key === 'first') act({ kind: 'go', to: 0 });
    else if (key === 'last') act({ kind: 'go', to: steps.length - 1 });
    else if (key === 'again') act({ kind: 'again' });
    else if (key === 'dark') act({ kind: 'dark' });
    else if (key === 'hold') act({ kind: 'hold' });
    else if (key === 'cursorBack') act({ kind: 'node', by: -1 });
    else if (key === 'cursorOn') act({ kind: 'node', by: 1 });
    else if (key === 'theme') changeTheme();
    else if (key === 'keys') setKeysOpen(true);
    else if (key === 'whole') void goWhole();
    else if (key === 'leave') void leave();
    else if (!isFollower) void openSecondWindow(id).then((isOpen) => !isOpen && setSaid(HELD_BACK));
  }

  const hear = useEffectEvent((event: KeyboardEvent) => {
    if (areKeysOpen || event.defaultPrevented) return;
    const isOnButton = event.target instanceof Element && event.target.closest('button') !== null;
    if (isOnButton && KEYS_OF_BUTTONS.includes(event.key)) return;
    const isLetter = event.key.length === 1 && event.key !== ' ';
    const key = isLetter && !viewChoices().letterKeys ? null : presentKey(event);
    if (key === null) return;
    event.preventDefault();
    if (!event.repeat || key === 'cursorBack' || key === 'cursorOn') does(key);
  });
  useEffect(() => {
    addEventListener('keydown', hear);
    return () => removeEventListener('keydown', hear);
  }, []);

  const of = `${state.step + 1} / ${steps.length}`;
  const pointed = state.pointer;
  const table = step.cursor;
  return (
    <main
      ref={main}
      tabIndex={-1}
      className={styles.present}
      data-rest={isResting}
      data-followed={isFollowed}
      data-step={step.id}
    >
      <h1 className="unseen">{step.still.headline}</h1>
      <Stage step={step} state={state} theme={theme} pictures={pictures} act={act} />
      {isFollowed && <Speaker next={steps[state.step + 1]} of={of} begunAt={begunAt} theme={theme} />}
      {state.isDark && <div className={styles.dark} />}
      <p className="unseen" role="status">
        {`Step ${of}`}
        {pointed !== null &&
          table !== null &&
          `: ${cursorText(table, nearest(table.at, pointed), chartOf(step.still)?.xUnit ?? '')}`}
      </p>
      {said !== '' && (
        <p className={styles.said} role="alert">
          {said}
        </p>
      )}
      <Controls isShown={isNear && !isResting} of={of} onAct={does} leftOut={isFollower ? ['second'] : []} />
      <KeysCard open={areKeysOpen} onClose={() => setKeysOpen(false)} />
    </main>
  );
}

/** What the steps need to be painted, fetched once at the start; `null`: not there yet. */
function usePictures(steps: readonly PresentedStep[]): Pictures | null {
  const stills = useMemo(() => steps.map(({ still }) => still), [steps]);
  const [pictures, setPictures] = useState<Pictures | null>(null);
  useEffect(() => {
    let isHere = true;
    void Promise.all([markPictures(stills), facesReady(document.fonts, true)]).then(
      ([read]) => isHere && setPictures(read),
    );
    return () => {
      isHere = false;
    };
  }, [stills]);
  return pictures;
}

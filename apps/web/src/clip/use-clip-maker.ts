import type { ClipDescription } from '@pullbook/charts';
import { useEffect, useRef, useState } from 'react';
import type { ClipFrames } from './clip-choice.ts';
import { type MadeClip, makeClip } from './make-clip.ts';

export type ClipMaking =
  | { kind: 'idle' }
  | { kind: 'making'; done: number; of: number; secondsLeft: number | null }
  | { kind: 'cancelled' }
  | { kind: 'made'; name: string; made: MadeClip; address: string }
  | { kind: 'trouble'; error: Error };

/** Before so many frames are done nobody can say how long it takes. */
const TELLING = 15;

/** Makes one clip at a time and keeps what came of it; leaving the page cancels. */
export function useClipMaker(onMade: (name: string, made: MadeClip) => void) {
  const [state, setState] = useState<ClipMaking>({ kind: 'idle' });
  const running = useRef<AbortController | null>(null);
  const isMaking = state.kind === 'making';

  useEffect(() => () => running.current?.abort(), []);
  const address = state.kind === 'made' ? state.address : null;
  useEffect(
    () => () => {
      if (address !== null) URL.revokeObjectURL(address);
    },
    [address],
  );
  useEffect(() => {
    if (!isMaking) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener('beforeunload', warn);
    return () => removeEventListener('beforeunload', warn);
  }, [isMaking]);

  async function make(
    askClip: () => Promise<ClipDescription>,
    frames: ClipFrames,
    name: string,
  ): Promise<void> {
    const control = new AbortController();
    running.current = control;
    const begun = performance.now();
    setState({ kind: 'making', done: 0, of: 0, secondsLeft: null });
    try {
      const clip = await askClip();
      control.signal.throwIfAborted();
      const made = await makeClip(clip, frames, {
        signal: control.signal,
        onProgress: (done, of) => {
          const each = (performance.now() - begun) / 1000 / done;
          const secondsLeft = done < TELLING ? null : Math.ceil((of - done) * each);
          if (!control.signal.aborted) setState({ kind: 'making', done, of, secondsLeft });
        },
      });
      const address = URL.createObjectURL(made.file);
      setState({ kind: 'made', name, made, address });
      save(address, name);
      onMade(name, made);
    } catch (reason) {
      if (control.signal.aborted) setState({ kind: 'cancelled' });
      else setState({ kind: 'trouble', error: reason instanceof Error ? reason : new Error(String(reason)) });
    }
  }

  return { state, make, cancel: () => running.current?.abort() };
}

/** The browser puts it where it puts what it saves. */
function save(address: string, name: string): void {
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
}

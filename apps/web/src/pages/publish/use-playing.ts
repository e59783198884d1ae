import { useEffect, useEffectEvent, useState } from 'react';

/** A place in something that runs for `seconds`, and what moves it. */
interface Playing {
  atSeconds: number;
  isPlaying: boolean;
  /** Runs on from here; from the beginning where the end is reached. */
  play: () => void;
  pause: () => void;
  /** Goes there and stands. */
  goTo: (atSeconds: number) => void;
}

/** Time that runs with the screen's own frames while it plays. */
export function usePlaying(seconds: number): Playing {
  const [atSeconds, setAt] = useState(0);
  const [isPlaying, setIsPlaying] = useState(false);
  const within = Math.min(atSeconds, seconds);

  const step = useEffectEvent((elapsed: number) => {
    const next = within + elapsed;
    setAt(Math.min(next, seconds));
    if (next >= seconds) setIsPlaying(false);
  });

  useEffect(() => {
    if (!isPlaying) return;
    let last = performance.now();
    let frame = requestAnimationFrame(function run(now) {
      step(Math.max(0, (now - last) / 1000));
      last = now;
      frame = requestAnimationFrame(run);
    });
    return () => cancelAnimationFrame(frame);
  }, [isPlaying]);

  return {
    atSeconds: within,
    isPlaying,
    play: () => {
      if (within >= seconds) setAt(0);
      setIsPlaying(true);
    },
    pause: () => setIsPlaying(false),
    goTo: (at) => {
      setIsPlaying(false);
      setAt(Math.max(0, Math.min(at, seconds)));
    },
  };
}

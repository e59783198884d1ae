import { useEffect } from 'react';

/** Keeps the screen from going to sleep while the page is looked at; where the browser cannot, the machine's own setting holds. */
export function useWakeLock(): void {
  useEffect(() => {
    let isHere = true;
    let lock: WakeLockSentinel | null = null;
    const ask = async () => {
      if (!('wakeLock' in navigator) || document.visibilityState !== 'visible') return;
      // Refused on a low battery: nothing to be done about it.
      const given = await navigator.wakeLock.request('screen').catch(() => null);
      if (isHere) lock = given;
      else await given?.release();
    };
    const seen = () => void ask();
    seen();
    // The browser takes it back whenever the page is hidden.
    document.addEventListener('visibilitychange', seen);
    return () => {
      isHere = false;
      document.removeEventListener('visibilitychange', seen);
      void lock?.release();
    };
  }, []);
}

import { useEffect, useState } from 'react';

/** How long nothing was typed before it is looked at, ms. */
const PAUSE = 250;

/** A value once it has not changed for a moment, so that typing does not ask at every key. */
export function useSettled<T>(value: T): T {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), PAUSE);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}

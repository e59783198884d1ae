import { useEffect, useState } from 'react';

/** After this without a move of the pointer, ms, it is hidden with what belongs to it. */
const REST_MS = 2500;
/** Height over the lower edge that calls the buttons, px. */
export const NEAR_PX = 110;

/** Whether the pointer rests: then nothing but the step is on the screen. And whether it is where the buttons come. */
export function useRest(): { isResting: boolean; isNear: boolean } {
  const [isResting, setResting] = useState(true);
  const [isNear, setNear] = useState(false);
  useEffect(() => {
    let timer = 0;
    const woken = (event: PointerEvent) => {
      setResting(false);
      setNear(event.clientY > innerHeight - NEAR_PX);
      clearTimeout(timer);
      timer = window.setTimeout(() => setResting(true), REST_MS);
    };
    addEventListener('pointermove', woken);
    addEventListener('pointerdown', woken);
    return () => {
      clearTimeout(timer);
      removeEventListener('pointermove', woken);
      removeEventListener('pointerdown', woken);
    };
  }, []);
  return { isResting, isNear };
}

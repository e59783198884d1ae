import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Size of an element in whole pixels, kept as it changes; 0 before it is laid out. */
export function useSize<T extends HTMLElement>(): [RefObject<T | null>, { width: number; height: number }] {
  const box = useRef<T>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const measure = () =>
      setSize((before) => {
        const [width, height] = [element.clientWidth, element.clientHeight];
        return before.width === width && before.height === height ? before : { width, height };
      });
    const watcher = new ResizeObserver(measure);
    measure();
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  return [box, size];
}

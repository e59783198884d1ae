import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Width of an element in whole pixels, kept as it changes; 0 before it is laid out. */
export function useWidth<T extends HTMLElement>(): [RefObject<T | null>, number] {
  const box = useRef<T>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    const watcher = new ResizeObserver(([entry]) => {
      if (entry !== undefined) setWidth(Math.floor(entry.contentRect.width));
    });
    setWidth(Math.floor(element.clientWidth));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  return [box, width];
}

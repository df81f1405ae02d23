// The size of an element, as it changes.
import { type RefObject, useLayoutEffect, useState } from 'react';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Whole pixels; null until measured. */
export function useSize(element: RefObject<HTMLElement | null>): Size | null {
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const target = element.current;
    if (!target) return undefined;
    const measure = (): void => {
      const now = { width: Math.round(target.clientWidth), height: Math.round(target.clientHeight) };
      setSize((before) => (before?.width === now.width && before.height === now.height ? before : now));
    };
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(target);
    return () => watcher.disconnect();
  }, [element]);
  return size;
}

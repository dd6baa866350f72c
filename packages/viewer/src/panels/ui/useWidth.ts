/** The width of an element in pixels, 0 until it is on the page; followed as it changes. */
import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

export function useWidth(frame: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = frame.current;
    if (element === null) return undefined;
    setWidth(element.clientWidth);
    const observer = new ResizeObserver(() => setWidth(element.clientWidth));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return width;
}

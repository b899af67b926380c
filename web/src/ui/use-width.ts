import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/**
 * The width that a drawing has, in CSS pixels, so that its text keeps its size on a phone. `standard`
 * is used until it is known, and where nothing can be measured.
 */
export function useWidth(standard: number): [RefObject<HTMLDivElement | null>, number] {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(standard);
  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return undefined;
    const measure = (): void => {
      if (element.clientWidth > 0) setWidth(element.clientWidth);
    };
    measure();
    if (typeof ResizeObserver === 'undefined') return undefined;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [box, width];
}

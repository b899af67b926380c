import { useEffect, useRef } from 'react';
import { useAnnounce } from './announcer.js';

/** Long enough that a burst of taps is over. */
const QUIET = 1200;

/**
 * Says a text that changes with every tap, once it has rested: a screen reader hears where the count
 * has come to, not each bird. What it says at first is not said.
 */
export function useQuietAnnounce(text: string | null): void {
  const announce = useAnnounce();
  const said = useRef(text);
  useEffect(() => {
    if (text === null || text === said.current) return undefined;
    const timer = setTimeout(() => {
      said.current = text;
      announce(text);
    }, QUIET);
    return () => clearTimeout(timer);
  }, [text, announce]);
}

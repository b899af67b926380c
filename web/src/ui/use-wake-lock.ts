import { useEffect, useState } from 'react';

/**
 * Keeps the screen on while it is asked to, where the browser can (W3C Screen Wake Lock). It lets go
 * of the lock whenever the page is hidden, so it is asked for again when the page is back.
 *
 * @returns whether the screen stays on now; false too where the browser cannot or will not
 */
export function useWakeLock(isWanted: boolean): boolean {
  const [isHeld, setHeld] = useState(false);
  useEffect(() => {
    if (!isWanted || !('wakeLock' in navigator)) return undefined;
    let lock: WakeLockSentinel | null = null;
    let isOver = false;
    async function hold(): Promise<void> {
      if (document.visibilityState !== 'visible' || lock !== null) return;
      try {
        const got = await navigator.wakeLock.request('screen');
        if (isOver) {
          await got.release();
          return;
        }
        lock = got;
        setHeld(true);
        got.addEventListener('release', () => {
          lock = null;
          setHeld(false);
        });
      } catch {
        // A low battery or the browser's settings forbid it: counting goes on without.
      }
    }
    const again = (): void => void hold();
    again();
    document.addEventListener('visibilitychange', again);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', again);
      void lock?.release();
    };
  }, [isWanted]);
  return isHeld;
}

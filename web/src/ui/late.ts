import { useEffect, useState } from 'react';

/** So long somebody waits for a server before the page makes do with what it has, milliseconds. */
const patience = 700;

/** Whether something has been waited for longer than anybody should. */
export function useLate(isWaiting: boolean): boolean {
  const [isLate, setLate] = useState(false);
  useEffect(() => {
    if (!isWaiting) return undefined;
    const timer = setTimeout(() => setLate(true), patience);
    return () => {
      clearTimeout(timer);
      setLate(false);
    };
  }, [isWaiting]);
  return isWaiting && isLate;
}

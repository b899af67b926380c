import { useEffect, useState } from 'react';

let isAsked = false;

/**
 * Asks the browser, once, not to clear what it keeps when the phone runs out of room. Browsers
 * decide by themselves or ask; from the first tap on there is something worth keeping.
 */
export async function askForPersistence(): Promise<void> {
  if (isAsked || !('storage' in navigator)) return;
  isAsked = true;
  try {
    await navigator.storage.persist();
  } catch {
    // An old browser or a private window: what is kept is kept as well as it can be.
  }
}

/** Whether the browser has promised to clear nothing by itself; `null` until it is known. */
export function usePersistence(): boolean | null {
  const [isPromised, setPromised] = useState<boolean | null>(null);
  useEffect(() => {
    async function look(): Promise<void> {
      if (!('storage' in navigator)) return;
      try {
        setPromised(await navigator.storage.persisted());
      } catch {
        setPromised(false);
      }
    }
    void look();
  }, []);
  return isPromised;
}

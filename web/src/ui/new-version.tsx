import { useEffect, useState, type ReactNode } from 'react';
import { Notice } from './notice.js';

/**
 * Keeps the pages themselves on the phone, so that they open without a connection, and says when a
 * newer version of them lies ready. It is taken on the observer's word: never in the middle of a flock.
 */
export function NewVersion(): ReactNode {
  const [ready, setReady] = useState<ServiceWorker | null>(null);
  useEffect(() => {
    if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
    void keepPages(setReady);
  }, []);
  if (ready === null) return null;
  return (
    <Notice kind="plain" title="A newer version of these pages is ready.">
      <p>
        <button
          type="button"
          className="button"
          onClick={() => {
            navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), {
              once: true,
            });
            ready.postMessage('use-the-new-version');
          }}
        >
          Use it now
        </button>
      </p>
    </Notice>
  );
}

async function keepPages(onReady: (worker: ServiceWorker) => void): Promise<void> {
  let registration: ServiceWorkerRegistration;
  try {
    registration = await navigator.serviceWorker.register('/keep-pages.js');
  } catch {
    // A private window or a full phone: the pages still work while there is a connection.
    return;
  }
  // The first version of all looks after its page at once; only a later one waits.
  const look = (worker: ServiceWorker | null): void => {
    if (worker?.state === 'installed' && registration.active !== null) onReady(worker);
  };
  look(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const worker = registration.installing;
    worker?.addEventListener('statechange', () => look(worker));
  });
}

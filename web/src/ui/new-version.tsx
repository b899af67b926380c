import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
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
    <Notice kind="plain" title={t`A newer version of these pages is ready.`}>
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
          <Trans>Use it now</Trans>
        </button>
      </p>
    </Notice>
  );
}

async function keepPages(onReady: (worker: ServiceWorker) => void): Promise<void> {
  let registration: ServiceWorkerRegistration | undefined;
  try {
    await navigator.serviceWorker.register('/keep-pages.js');
    registration = await navigator.serviceWorker.getRegistration('/');
  } catch {
    // A private window or a full phone: the pages still work while there is a connection.
    return;
  }
  // Some browsers say yes where they keep nothing.
  if (registration === undefined) return;
  const kept = registration;
  // The first version of all looks after its page at once; only a later one waits.
  const look = (worker: ServiceWorker | null): void => {
    if (worker?.state === 'installed' && kept.active !== null) onReady(worker);
  };
  look(kept.waiting);
  kept.addEventListener('updatefound', () => {
    const worker = kept.installing;
    worker?.addEventListener('statechange', () => look(worker));
  });
}

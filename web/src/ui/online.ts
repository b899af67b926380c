import { useSyncExternalStore } from 'react';
import { untilPainted } from './first-paint.js';

/** The first and the longest pause between looks whether the server is in reach again, milliseconds. */
const firstPause = 3_000;
const longestPause = 60_000;

/**
 * Whether the last request reached anything. Browsers often believe in a connection where there is
 * none: a phone with one bar at the shore, or a network that wants a password first.
 */
let isReached = true;
let pause = firstPause;
let timer: ReturnType<typeof setTimeout> | undefined;
const listeners = new Set<() => void>();

/** What the browser believes, unless the last request says otherwise. */
export function isOnline(): boolean {
  return navigator.onLine && isReached;
}

/** Hears when `isOnline` may have changed. */
export function onOnlineChange(changed: () => void): () => void {
  if (listeners.size === 0) {
    window.addEventListener('online', browserSaysOnline);
    window.addEventListener('offline', tellListeners);
  }
  listeners.add(changed);
  return () => {
    listeners.delete(changed);
    if (listeners.size > 0) return;
    window.removeEventListener('online', browserSaysOnline);
    window.removeEventListener('offline', tellListeners);
  };
}

export function useOnline(): boolean {
  return useSyncExternalStore(onOnlineChange, isOnline);
}

function tellListeners(): void {
  for (const listener of listeners) listener();
}

function browserSaysOnline(): void {
  isReached = true;
  tellListeners();
}

/** `fetch`, which also learns from each request whether there is a connection. */
export async function watchedFetch(...request: Parameters<typeof fetch>): Promise<Response> {
  try {
    await untilPainted();
    const response = await fetch(...request);
    found(true);
    return response;
  } catch (error) {
    // Given up by the page itself: that says nothing of the network.
    if (!(error instanceof DOMException && error.name === 'AbortError')) found(false);
    throw error;
  }
}

function found(reached: boolean): void {
  clearTimeout(timer);
  if (reached) pause = firstPause;
  else {
    timer = setTimeout(() => void lookAgain(), pause);
    pause = Math.min(longestPause, pause * 2);
  }
  if (reached === isReached) return;
  isReached = reached;
  tellListeners();
}

/** Asks the server for next to nothing; nobody has to press a button to be back in range. */
async function lookAgain(): Promise<void> {
  if (isReached) return;
  try {
    await watchedFetch('/health', { cache: 'no-store' });
  } catch {
    // Not yet.
  }
}

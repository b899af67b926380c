import { cleanup, configure, render } from '@testing-library/react';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeAll, beforeEach, vi } from 'vitest';
import { App } from '../../web/src/app.js';
import { reopenKept } from '../../web/src/tallies/kept-database.js';
import { loadAllLater } from '../../web/src/ui/later.js';

// Pages of the desk are loaded when first opened, which takes a busy machine a while.
configure({ asyncUtilTimeout: 15_000 });

/** A clean browser before each test, and nothing left after it. */
export function useCleanBrowser(): void {
  // What a page loads after itself is there, as it is on a phone that was used before.
  beforeAll(loadAllLater);
  beforeEach(() => {
    localStorage.clear();
    vi.stubGlobal('indexedDB', new IDBFactory());
    reopenKept();
    setOnline(true);
    window.scrollTo = () => undefined;
    Element.prototype.scrollIntoView = () => undefined;
  });
  afterEach(() => {
    cleanup();
    vi.unstubAllGlobals();
  });
}

/** Opens the app at a path, as a browser does; again after a reload. */
export function openApp(path: string): void {
  window.history.replaceState(null, '', path);
  render(<App />);
}

/** Closes the page and opens it anew: only what the browser keeps is left. */
export function reloadApp(): void {
  window.dispatchEvent(new Event('pagehide'));
  cleanup();
  reopenKept();
  render(<App />);
}

export function setOnline(isOnline: boolean): void {
  Object.defineProperty(navigator, 'onLine', { value: isOnline, configurable: true });
  window.dispatchEvent(new Event(isOnline ? 'online' : 'offline'));
}

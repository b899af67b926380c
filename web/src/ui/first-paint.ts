import { useSyncExternalStore } from 'react';
import { nextPicture } from './next-picture.js';

/** For how long the first picture is waited for: none is drawn of a page that is out of sight, ms. */
const PATIENCE = 500;

let isPainted = true;
const waiting = new Set<() => void>();

/**
 * From here to the first picture of the page on the screen, what is not needed to begin is put off:
 * dates and numbers in the reader's way of writing, parts below, requests.
 */
export function beginUnpainted(): void {
  isPainted = false;
}

/** To be called when the first page has been put together. */
export function paintSoon(): void {
  if (!isPainted) void nextPicture(PATIENCE).then(tellPainted);
}

function tellPainted(): void {
  isPainted = true;
  for (const tell of waiting) tell();
}

function onPainted(tell: () => void): () => void {
  waiting.add(tell);
  return () => {
    waiting.delete(tell);
  };
}

/** Whether the page is on the screen already. */
export function usePainted(): boolean {
  return useSyncExternalStore(onPainted, () => isPainted);
}

/** Once the page is on the screen. */
export async function untilPainted(): Promise<void> {
  if (isPainted) return;
  await new Promise<void>((resolve) => {
    waiting.add(resolve);
  });
}

/// <reference lib="webworker" />
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';

// Keeps the app's own files on the device, so that its pages open on a shore without a connection.
// Data is never kept here: the pages keep plan, drafts and outbox themselves, the server the rest.

declare const self: ServiceWorkerGlobalScope & {
  /** The build puts the list of files and their hashes here. */
  readonly __WB_MANIFEST: { readonly url: string; readonly revision: string | null }[];
};

precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();

/** What the server answers itself, and documents that open in a page of their own. */
const noPages = [/^\/(graphql|health|assets|sheets?|field-sheets?)(\/|$)/u, /\.(pdf|json|csv)$/u];
registerRoute(new NavigationRoute(createHandlerBoundToURL('/index.html'), { denylist: noPages }));

// The first visit's page is looked after from then on; later versions wait for the observer's word,
// so that no page finds the files of another version under its feet.
self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim());
});
self.addEventListener('message', (event) => {
  if (event.data === 'use-the-new-version') void self.skipWaiting();
});

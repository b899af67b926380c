// Keeps this site's own pages on the device, so that they open on a shore without a connection.
// Data is never kept here: the pages keep drafts themselves, and the server keeps the rest.
const shelf = 'pages-1';

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(shelf)
      .then((pages) => pages.add('/'))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(self.clients.claim());
});

/** From the network if it answers, else what was kept. */
async function freshOrKept(request, keptAs) {
  const pages = await caches.open(shelf);
  try {
    const answer = await fetch(request);
    if (answer.ok) await pages.put(keptAs, answer.clone());
    return answer;
  } catch (error) {
    const kept = await pages.match(keptAs);
    if (kept) return kept;
    throw error;
  }
}

/** Built files carry a hash in their names: what is kept under a name never changes. */
async function keptOrFresh(request) {
  const pages = await caches.open(shelf);
  const kept = await pages.match(request);
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await pages.put(request, answer.clone());
  return answer;
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== 'GET' || address.origin !== self.location.origin) return;
  if (request.mode === 'navigate') event.respondWith(freshOrKept(request, '/'));
  else if (address.pathname.startsWith('/assets/')) event.respondWith(keptOrFresh(request));
});

import { cacheExchange, Client, fetchExchange, type ClientOptions } from 'urql';
import { language } from '../ui/language.js';
import { watchedFetch } from '../ui/online.js';

/**
 * How the server is reached. Queries go as POST: the server refuses GET, so that no other site can
 * make a signed-in browser ask.
 */
const connection = {
  url: '/graphql',
  fetch: watchedFetch,
  preferGetMethod: false,
  // What the server says to the reader is said in the language of the pages.
  fetchOptions: () => ({
    credentials: 'same-origin',
    headers: { 'Accept-Language': language() },
  }),
  requestPolicy: 'cache-and-network',
} as const satisfies Partial<ClientOptions>;

/** What pages ask and do; an act makes whatever it may have changed be asked for anew. */
export function makeClient(): Client {
  return new Client({ ...connection, exchanges: [cacheExchange, fetchExchange] });
}

/** For acts that come in numbers: no page asks anew after each of them. */
export function makeQuietClient(): Client {
  return new Client({ ...connection, exchanges: [fetchExchange] });
}

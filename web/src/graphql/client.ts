import { cacheExchange, Client, fetchExchange } from 'urql';
import { language } from '../ui/language.js';
import { watchedFetch } from '../ui/online.js';

/**
 * The one connection to the server. Queries go as POST: the server refuses GET, so that no other
 * site can make a signed-in browser ask.
 */
export function makeClient(): Client {
  return new Client({
    url: '/graphql',
    fetch: watchedFetch,
    preferGetMethod: false,
    // What the server says to the reader is said in the language of the pages.
    fetchOptions: () => ({
      credentials: 'same-origin',
      headers: { 'Accept-Language': language() },
    }),
    requestPolicy: 'cache-and-network',
    exchanges: [cacheExchange, fetchExchange],
  });
}

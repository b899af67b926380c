import { cacheExchange, Client, fetchExchange } from 'urql';
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
    fetchOptions: { credentials: 'same-origin' },
    requestPolicy: 'cache-and-network',
    exchanges: [cacheExchange, fetchExchange],
  });
}

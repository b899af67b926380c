import type { CombinedError } from 'urql';
import type { Fault } from '../../../server/core/model/fault.js';

/**
 * Why something did not work, as pages tell it apart: the network is gone (nothing was decided),
 * the server refused (with a code, a sentence and perhaps faults), or the server itself failed.
 */
export type Trouble =
  | { readonly kind: 'offline' }
  | {
      readonly kind: 'refused';
      readonly code: string;
      readonly message: string;
      readonly faults: readonly Fault<string>[];
    }
  | { readonly kind: 'failed'; readonly message: string };

/** Reads what urql reports; pages branch on the code and never on the message. */
export function readTrouble(error: CombinedError): Trouble {
  const first = error.graphQLErrors[0];
  if (first === undefined) {
    // An answer that is not GraphQL (a proxy's page, say) is as good as no answer.
    return error.networkError ? { kind: 'offline' } : { kind: 'failed', message: error.message };
  }
  const code = first.extensions['code'];
  if (typeof code !== 'string' || code === 'INTERNAL_SERVER_ERROR') {
    return { kind: 'failed', message: first.message };
  }
  return {
    kind: 'refused',
    code,
    message: headline(first.message),
    faults: readFaults(first.extensions['faults']),
  };
}

/** What was looked at has changed since: the page must be loaded anew before the act is tried again. */
export function isStale(trouble: Trouble): boolean {
  return trouble.kind === 'refused' && trouble.code === 'STALE';
}

/** A refusal of bad input repeats its faults below the first line; pages show those themselves. */
function headline(message: string): string {
  return message.split('\n', 1)[0] ?? message;
}

function readFaults(value: unknown): readonly Fault<string>[] {
  if (!Array.isArray(value)) return [];
  return value.filter(isFault);
}

function isFault(value: unknown): value is Fault<string> {
  return (
    typeof value === 'object' &&
    value !== null &&
    'problem' in value &&
    typeof value.problem === 'string' &&
    'expected' in value &&
    typeof value.expected === 'string'
  );
}

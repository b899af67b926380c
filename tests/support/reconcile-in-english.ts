import type { Result } from '../../server/core/model/result.js';
import { ENGLISH } from '../../server/core/model/saying.js';
import { wordedResult } from '../../server/core/model/worded-result.js';
import { reconcile } from '../../server/core/reconcile.js';

/** The engine's answer as the command line and files have it, for tests that read its sentences. */
export function reconcileInEnglish(...input: Parameters<typeof reconcile>): Result<string> {
  return wordedResult(reconcile(...input), ENGLISH);
}

import { t } from '@lingui/core/macro';

/** Clauses that each could be a sentence, as parts of one: `a; b; c`. */
export function clauses(parts: readonly string[]): string {
  return parts.reduce((said, clause) => t`${said}; ${clause}`);
}

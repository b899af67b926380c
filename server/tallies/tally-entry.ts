import { countChain, type NewEntry } from '../database/audit-log.js';
import type { TallyVersion } from '../database/tally-rows.js';

/** The audit entry of a submission or correction: its hash, never its numbers or reasons. */
export function tallyEntry(countId: string, by: string, version: TallyVersion): NewEntry {
  return {
    chain: countChain(countId),
    by,
    act: version.replaces === null ? 'tally.submit' : 'tally.correct',
    details: {
      tally: version.id,
      observer: version.observer,
      sections: version.sections,
      window: version.window,
      version: version.version,
      replaces: version.replaces,
      contentHash: version.contentHash,
    },
  };
}

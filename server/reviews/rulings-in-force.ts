import type { RulingRecord } from '../database/ruling-rows.js';

/** Nothing but a missing second keeps it out: given alone by someone who counted there. */
export function awaitsSecond(record: RulingRecord): boolean {
  return record.needsSecond && record.second === null;
}

/**
 * The ids of rulings whose place another took. The other must have held at some time: one that never
 * got its second leaves the earlier in force. Taking it back later does not bring the earlier back.
 */
export function replacedRulings(records: readonly RulingRecord[]): ReadonlySet<string> {
  return new Set(
    records
      .filter((record) => record.replaces !== null && !awaitsSecond(record))
      .map((record) => record.replaces ?? ''),
  );
}

/** Not taken back and not replaced: in force, or in force as soon as it is seconded. */
export function standingRulings(records: readonly RulingRecord[]): readonly RulingRecord[] {
  const replaced = replacedRulings(records);
  return records.filter(
    ({ ruling, withdrawal }) => withdrawal === null && !replaced.has(ruling.id),
  );
}

/** What `reconcile` is given. */
export function rulingsInForce(records: readonly RulingRecord[]): readonly RulingRecord[] {
  return standingRulings(records).filter((record) => !awaitsSecond(record));
}

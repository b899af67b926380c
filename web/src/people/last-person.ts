import { forgetKept, readKept, writeKept } from '../ui/kept.js';

export interface SignedInPerson {
  readonly id: string;
  readonly name: string;
}

/** Kept so that an observer out of range can still open the form and their drafts. */
const key = 'countersign.last-person';

/** Whoever was here last; `null` where nobody was, or signed out. */
export function lastPerson(): SignedInPerson | null {
  return readKept(key, isPerson);
}

export function keepLastPerson({ id, name }: SignedInPerson): void {
  writeKept(key, { id, name });
}

export function forgetLastPerson(): void {
  forgetKept(key);
}

function isPerson(value: unknown): value is SignedInPerson {
  return (
    typeof value === 'object' &&
    value !== null &&
    'id' in value &&
    typeof value.id === 'string' &&
    'name' in value &&
    typeof value.name === 'string'
  );
}

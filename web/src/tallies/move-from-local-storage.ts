import { v7 } from 'uuid';
import type { TallyInput } from '../graphql/generated/graphql.js';
import { forgetKept, readKept } from '../ui/kept.js';
import { asDraft } from './as-draft.js';
import { asOwnPart } from './as-own-part.js';
import { changedDraft } from './draft-change.js';
import type { KeptDatabase, TallyRefusal } from './kept-tables.js';
import { leftBehindAt, type LeftBehind } from './left-behind.js';

const draftPrefix = 'countersign.draft.';
const ownPartPrefix = 'countersign.own-part.';
const ownCountsPrefix = 'countersign.own-counts.';
const outboxKey = 'countersign.outbox';

/**
 * Earlier versions kept drafts, the outbox and the observer's part of the count in the browser's
 * plain storage, and a page that is closed leaves its last change there. They are moved in one
 * transaction, and taken away there only when the database has them. What the database has already
 * is never written over.
 */
export async function moveFromLocalStorage(database: KeptDatabase): Promise<void> {
  const keys = keptKeys().filter(
    (key) =>
      key === outboxKey ||
      leftBehindAt(key) !== null ||
      [draftPrefix, ownPartPrefix, ownCountsPrefix].some((prefix) => key.startsWith(prefix)),
  );
  if (keys.length === 0) return;
  await database.transaction(
    'rw',
    database.drafts,
    database.outbox,
    database.ownParts,
    async () => {
      for (const key of keys) {
        const left = leftBehindAt(key);
        if (left !== null) await putInPlace(database, left);
        else if (key.startsWith(draftPrefix)) await moveDraft(database, key);
        else if (key.startsWith(ownPartPrefix)) await moveOwnPart(database, key);
        else if (key === outboxKey) await moveOutbox(database);
      }
    },
  );
  for (const key of keys) forgetKept(key);
}

function keptKeys(): readonly string[] {
  try {
    return Array.from({ length: localStorage.length }, (_, index) => localStorage.key(index) ?? '');
  } catch {
    // Plain storage is switched off: nothing was kept there.
    return [];
  }
}

function isAnything(value: unknown): value is unknown {
  return value !== undefined;
}

/** The person's id is what stands before the assignment's, which the draft itself knows. */
function personIn(key: string, prefix: string, last: string): string {
  return key.slice(prefix.length, -(last.length + 1));
}

async function putInPlace(database: KeptDatabase, left: LeftBehind): Promise<void> {
  const { personId, draft } = left;
  const row = await database.drafts.get([personId, draft.assignmentId]);
  await database.drafts.put(changedDraft(row, personId, left, Date.now()));
}

async function moveDraft(database: KeptDatabase, key: string): Promise<void> {
  const draft = asDraft(readKept(key, isAnything));
  if (draft === null) return;
  const personId = personIn(key, draftPrefix, draft.assignmentId);
  if ((await database.drafts.get([personId, draft.assignmentId])) !== undefined) return;
  await database.drafts.add({
    personId,
    assignmentId: draft.assignmentId,
    draft,
    edit: v7(),
    keptAt: Date.now(),
    rivals: [],
  });
}

async function moveOwnPart(database: KeptDatabase, key: string): Promise<void> {
  const part = asOwnPart(readKept(key, isAnything));
  if (part === null) return;
  const personId = personIn(key, ownPartPrefix, part.id);
  if ((await database.ownParts.get([personId, part.id])) !== undefined) return;
  await database.ownParts.add({ personId, countId: part.id, part });
}

/** An item as earlier versions wrote it. */
interface EarlierItem {
  readonly personId: string;
  readonly assignmentId: string;
  readonly input: TallyInput;
  readonly since: number;
  readonly refusal: TallyRefusal | null;
}

function isEarlierOutbox(value: unknown): value is readonly EarlierItem[] {
  return (
    Array.isArray(value) &&
    value.every(
      (item: unknown) =>
        typeof item === 'object' &&
        item !== null &&
        'personId' in item &&
        'input' in item &&
        'assignmentId' in item,
    )
  );
}

async function moveOutbox(database: KeptDatabase): Promise<void> {
  for (const item of readKept(outboxKey, isEarlierOutbox) ?? []) {
    const { personId, assignmentId, input, since, refusal } = item;
    const id = String(input.id);
    if ((await database.outbox.get(id)) !== undefined) continue;
    await database.outbox.add({
      id,
      personId,
      assignmentId,
      countId: String(input.countId),
      input,
      draft: null,
      edit: null,
      since,
      state:
        refusal === null ? { kind: 'waiting', because: null } : { kind: 'refused', ...refusal },
    });
  }
}

import type { Dexie, Table } from 'dexie';
import type { Fault } from '../../../server/core/model/fault.js';
import type { MyAssignmentsQuery, TallyInput } from '../graphql/generated/graphql.js';
import type { Draft } from './draft.js';

/** What an observer's work keeps in this browser. */
export type KeptDatabase = Dexie & {
  readonly drafts: Table<KeptDraft, [personId: string, assignmentId: string]>;
  readonly outbox: Table<OutboxItem, string>;
  readonly ownParts: Table<KeptOwnPart, [personId: string, countId: string]>;
  readonly leases: Table<Lease, string>;
};

/** The keys that Dexie is told; the first one of each table is its own. */
export const keptTables = {
  drafts: '[personId+assignmentId], personId',
  outbox: 'id, personId',
  ownParts: '[personId+countId], personId',
  leases: 'name',
} as const;

/** A draft, per person and assignment: several observers may share a phone. */
export interface KeptDraft extends DraftVersion {
  readonly personId: string;
  readonly assignmentId: string;
  /** Changes that were made elsewhere on another version, until the observer chooses. */
  readonly rivals: readonly DraftVersion[];
}

/** A state of a draft. */
export interface DraftVersion {
  /** As some version of the app wrote it; `asDraft` reads it. */
  readonly draft: Draft;
  /** Names this state: whoever changes it says which state they saw. */
  readonly edit: string;
  /** Milliseconds since 1970. */
  readonly keptAt: number;
}

/** A tally that was handed over to be sent, and what has become of it. */
export interface OutboxItem {
  /** The tally's own id, made on the phone. */
  readonly id: string;
  readonly personId: string;
  readonly countId: string;
  readonly assignmentId: string;
  readonly input: TallyInput;
  /** The draft that it was made of, to go on from if it is taken back; `null` where it is not known. */
  readonly draft: Draft | null;
  /** The state of that draft; `null` where it is not known. */
  readonly edit: string | null;
  /** When it was handed over, milliseconds since 1970. */
  readonly since: number;
  readonly state: SendState;
}

export type SendState =
  | {
      readonly kind: 'waiting';
      /** What the last try came to; `null` before the first. */
      readonly because: WaitingFor | null;
    }
  | { readonly kind: 'sending' }
  | {
      readonly kind: 'received';
      /** The server's time, RFC 3339. */
      readonly at: string;
      readonly total: number;
      readonly version: number;
    }
  | ({ readonly kind: 'refused' } & TallyRefusal);

/** A connection; its observer, since nobody or somebody else is signed in; or the server to be well again. */
export type WaitingFor = 'connection' | 'sign-in' | 'server';

/** Why the server would not take a tally. */
export interface TallyRefusal {
  readonly code: string;
  readonly message: string;
  readonly faults: readonly Fault<string>[];
}

/** An observer's own part of a count. */
export type OwnPart = MyAssignmentsQuery['count'];

export interface KeptOwnPart {
  readonly personId: string;
  readonly countId: string;
  readonly part: OwnPart;
}

/** Who sends, in browsers that cannot lock across tabs. */
export interface Lease {
  readonly name: string;
  readonly holder: string;
  /** Milliseconds since 1970; after it the lease is anybody's. */
  readonly until: number;
}

import { v7 } from 'uuid';
import { nextPicture } from '../ui/next-picture.js';
import { forgetDraft, keepDraft, readDraft, settleDraft } from './draft-store.js';
import type { Draft } from './draft.js';
import { keptAtStart } from './kept-at-start.js';
import { holdsInMemory, keptDatabase, watchKept } from './kept-database.js';
import { forgetLeftBehind, leaveBehind } from './left-behind.js';
import type { DraftVersion, KeptDraft } from './kept-tables.js';

/** For how long a change is kept in memory alone, at most, ms. */
const PATIENCE = 100;

/** What a page shows of a draft. */
export interface DraftState {
  readonly isLoading: boolean;
  readonly draft: Draft | null;
  /** When it was last changed, milliseconds since 1970. */
  readonly keptAt: number;
  /** How often another tab's change took the place of the draft in hand. */
  readonly arrivals: number;
  /** Changes made elsewhere at the same time; the observer has to choose. */
  readonly rivals: readonly DraftVersion[];
  /** False if the browser would not keep the last change: the observer must be told. */
  readonly isKept: boolean;
}

interface Unwritten {
  readonly draft: Draft;
  readonly edit: string;
}

/**
 * A draft in the observer's hands. Every change is shown at once and written through to the
 * browser's database; what another tab writes appears here.
 */
export class OpenDraft {
  #state: DraftState = {
    isLoading: true,
    draft: null,
    keptAt: 0,
    arrivals: 0,
    rivals: [],
    isKept: true,
  };
  /** The state of the kept draft that the one in hand stands on. */
  #edit: string | null = null;
  /** Every state that was in hand: a late report of an older one is not news. */
  readonly #known = new Set<string>();
  #latest: KeptDraft | null | undefined = undefined;
  #unwritten: Unwritten | null = null;
  #writing: Promise<void> | null = null;
  /** The change that the database was asked to keep last. */
  #written: Unwritten | null = null;
  readonly #leftBehind = new Set<string>();
  readonly #listeners = new Set<() => void>();
  #stop: (() => void) | null = null;

  constructor(
    private readonly personId: string,
    private readonly assignmentId: string,
  ) {
    const atStart = keptAtStart(personId);
    if (atStart === null) return;
    this.#latest = atStart.drafts.find((kept) => kept.assignmentId === assignmentId) ?? null;
    this.#takeIn();
  }

  get state(): DraftState {
    return this.#state;
  }

  /** The name of the state in hand, as it is kept; `null` where none is. */
  get edit(): string | null {
    return this.#edit;
  }

  /** Hears of every change, and keeps the draft up to date while anybody does. */
  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    this.#stop ??= watchKept(
      (database) => readDraft(database, this.personId, this.assignmentId, this.#known),
      (kept) => {
        this.#latest = kept;
        this.#takeIn();
      },
      () => this.#show({ isLoading: false }),
    );
    return () => {
      this.#listeners.delete(listener);
      if (this.#listeners.size > 0) return;
      this.#stop?.();
      this.#stop = null;
    };
  }

  change(draft: Draft): void {
    this.#show({ draft, keptAt: Date.now() });
    this.#unwritten = { draft, edit: v7() };
    this.#writing ??= this.#write();
  }

  /** Once everything that was changed so far is written, or the browser has refused to. */
  async written(): Promise<void> {
    await this.#writing;
  }

  /** Takes one of several versions of the draft to go on with; the others shown are dropped. */
  async settle(chosen: Draft): Promise<void> {
    await this.written();
    const seen = [this.#edit ?? '', ...this.#state.rivals.map(({ edit }) => edit)];
    await settleDraft(this.personId, chosen, seen);
  }

  async forget(): Promise<void> {
    this.#unwritten = null;
    await this.written();
    await forgetDraft(this.personId, this.assignmentId);
    this.#edit = null;
    this.#show({ draft: null, rivals: [], arrivals: this.#state.arrivals + 1 });
  }

  /** What is not written yet is let go, as when the page is closed. */
  drop(): void {
    this.#unwritten = null;
    this.#leftBehind.clear();
  }

  /** The page may be closed: what the database does not have yet is written where it takes no time. */
  leaveBehind(): void {
    const newest = this.#unwritten ?? this.#written;
    if (newest === null || (this.#writing === null && this.#state.isKept)) return;
    leaveBehind({ personId: this.personId, ...newest, seen: this.#seen() });
    this.#leftBehind.add(newest.edit);
  }

  /** The kept states that a change now stands on: what was in hand, and what is being written. */
  #seen(): readonly string[] {
    return [this.#edit, this.#written?.edit].filter((edit) => typeof edit === 'string');
  }

  /** Writes the newest change, until there is none that came meanwhile. */
  async #write(): Promise<void> {
    // What was reported before this change says nothing about the draft after it.
    this.#latest = undefined;
    // What was tapped is shown first: to write it down takes as long as to draw it.
    await nextPicture(PATIENCE);
    while (this.#unwritten !== null) {
      const change = this.#unwritten;
      this.#unwritten = null;
      const seen = this.#seen();
      this.#written = change;
      this.#known.add(change.edit);
      const outcome = await keepDraft(this.personId, { ...change, seen });
      const isKept = outcome !== 'not-kept';
      if (isKept) this.#edit = change.edit;
      if (this.#state.isKept !== isKept) this.#show({ isKept });
    }
    this.#writing = null;
    if (this.#state.isKept) {
      for (const edit of this.#leftBehind) forgetLeftBehind(edit);
      this.#leftBehind.clear();
    }
    this.#takeIn();
  }

  /** Takes in what the database holds, unless a change of our own is still on its way there. */
  #takeIn(): void {
    if (this.#writing !== null || this.#latest === undefined) return;
    const kept = this.#latest;
    if (kept === null) {
      if (this.#edit !== null) void this.#lookWhetherGone(this.#edit);
    } else if (kept.edit !== this.#edit && !this.#known.has(kept.edit)) {
      this.#edit = kept.edit;
      this.#known.add(kept.edit);
      this.#adopt(kept);
    } else if (kept.edit === this.#edit && kept.rivals.length + this.#state.rivals.length > 0) {
      this.#show({ rivals: kept.rivals });
    }
    if (this.#state.isLoading) this.#show({ isLoading: false });
  }

  #adopt({ draft, keptAt, rivals }: KeptDraft): void {
    this.#show({ draft, keptAt, rivals, arrivals: this.#state.arrivals + 1 });
  }

  /** A draft that was in hand and is no longer kept was sent or given up in another tab. */
  async #lookWhetherGone(edit: string): Promise<void> {
    const kept = await readDraft(
      await keptDatabase(),
      this.personId,
      this.assignmentId,
      this.#known,
    );
    if (kept !== null || this.#writing !== null || this.#edit !== edit) return;
    this.#edit = null;
    this.#show({ draft: null, rivals: [], arrivals: this.#state.arrivals + 1 });
  }

  #show(change: Partial<DraftState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of this.#listeners) listener();
  }
}

/** One for each draft, so that what the browser would not keep outlives a change of the page. */
const openDrafts = new Map<string, OpenDraft>();
holdsInMemory(() => {
  for (const open of openDrafts.values()) open.drop();
  openDrafts.clear();
});

/** The one open draft of a person for an assignment. */
export function openDraft(personId: string, assignmentId: string): OpenDraft {
  const key = JSON.stringify([personId, assignmentId]);
  let open = openDrafts.get(key);
  if (open === undefined) {
    open = new OpenDraft(personId, assignmentId);
    openDrafts.set(key, open);
  }
  return open;
}

function leaveAllBehind(): void {
  for (const open of openDrafts.values()) open.leaveBehind();
}
// Phones kill a page that is out of sight without another word.
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState === 'hidden') leaveAllBehind();
});
window.addEventListener('pagehide', leaveAllBehind);

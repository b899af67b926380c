import { t } from '@lingui/core/macro';
import { clock, dayAndClock, listed, span } from '../ui/words.js';
import { runningTotal, type Draft } from './draft.js';
import type { KeptDraft, OutboxItem, OwnPart, SendState } from './kept-tables.js';
import { countedBirds, countedLines } from '../ui/counted.js';

/** One tally that the phone keeps, in words. */
export interface PhoneTally {
  readonly key: string;
  readonly kind: 'draft' | SendState['kind'];
  readonly countId: string;
  readonly assignmentId: string;
  /** Section and window, with the count where it is another one's. */
  readonly place: string;
  /** `12 lines, 1,240 birds`. */
  readonly content: string;
  /** `Received at 10:42.` */
  readonly state: string;
  readonly isReceived: boolean;
}

/**
 * All tallies that a phone keeps of one observer, in the order in which they were begun or handed
 * over: what is still on the phone first.
 */
export function talliesOnPhone(
  drafts: readonly KeptDraft[],
  outbox: readonly OutboxItem[],
  parts: readonly OwnPart[],
): readonly PhoneTally[] {
  const handedOver = new Set(outbox.map(({ id }) => id));
  const begun = drafts
    .filter(({ draft }) => !handedOver.has(draft.id))
    .map((kept) => draftInWords(kept, parts));
  const sent = outbox.map((item) => itemInWords(item, parts));
  return [
    ...begun,
    ...sent.filter(({ isReceived }) => !isReceived),
    ...sent.filter(({ isReceived }) => isReceived).reverse(),
  ];
}

function draftInWords(kept: KeptDraft, parts: readonly OwnPart[]): PhoneTally {
  const { draft, assignmentId, keptAt } = kept;
  const part = parts.find(({ id }) => id === draft.countId);
  const when = whenIn(part, new Date(keptAt).toISOString());
  return {
    key: draft.id,
    kind: 'draft',
    countId: draft.countId,
    assignmentId,
    place: placeIn(part, assignmentId),
    content: contentOf(draft),
    state:
      draft.replaces === null
        ? t`Begun on this phone, last changed ${when}.`
        : t`A correction, begun on this phone, last changed ${when}.`,
    isReceived: false,
  };
}

function itemInWords(item: OutboxItem, parts: readonly OwnPart[]): PhoneTally {
  const part = parts.find(({ id }) => id === item.countId);
  const { state } = item;
  const birds =
    state.kind === 'received'
      ? state.total
      : item.input.lines.reduce((sum, { number }) => sum + (number ?? 0), 0);
  return {
    key: item.id,
    kind: state.kind,
    countId: item.countId,
    assignmentId: item.assignmentId,
    place: placeIn(part, item.assignmentId),
    content: `${countedLines(item.input.lines.length)}, ${countedBirds(birds)}`,
    state: stateInWords(state, part),
    isReceived: state.kind === 'received',
  };
}

/** What has become of a tally, as a sentence. */
export function stateInWords(state: SendState, part: OwnPart | undefined): string {
  switch (state.kind) {
    case 'sending':
      return t`Sending …`;
    case 'received':
      return receivedAt(whenIn(part, state.at));
    case 'refused':
      return refusedBecause(state.message);
    case 'waiting':
      if (state.because === 'sign-in')
        return t`On this phone; it goes when you are signed in again.`;
      if (state.because === 'server') {
        return t`On this phone; the server could not take it just now and is asked again.`;
      }
      return t`On this phone; it goes by itself when there is a connection.`;
  }
}

/** The clock at the waterbody, with the day if it is not today there. */
function whenIn(part: OwnPart | undefined, instant: string): string {
  const timeZone = part?.timeZone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  const day = (at: Date): string => at.toLocaleDateString('en-CA', { timeZone });
  return day(new Date(instant)) === day(new Date())
    ? clock(instant, timeZone)
    : dayAndClock(instant, timeZone);
}

function placeIn(part: OwnPart | undefined, assignmentId: string): string {
  const assignment = part?.assignments.find(({ id }) => id === assignmentId);
  if (part === undefined || assignment === undefined) return t`An assignment of another count`;
  const { sections, window } = assignment;
  return `${listed(sections.map(({ name }) => name))}, ${span(window.start, window.end, part.timeZone)}`;
}

function contentOf(draft: Draft): string {
  const { using, flyingThrough } = runningTotal(draft);
  return `${countedLines(draft.lines.length)}, ${countedBirds(using + flyingThrough)}`;
}

function receivedAt(time: string): string {
  return t`Received at ${time}.`;
}

function refusedBecause(reason: string): string {
  return t`Refused: ${reason}`;
}

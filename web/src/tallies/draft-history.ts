import type { Draft, DraftLine } from './draft.js';

/** What a step sets: fields of the draft, and lines to put in, change or (`null`) take out. */
export interface Patch {
  readonly fields: Partial<Omit<Draft, 'lines'>>;
  readonly lines: readonly LinePatch[];
}

export interface LinePatch {
  readonly id: string;
  /** Its place in the list. */
  readonly at: number;
  readonly line: DraftLine | null;
}

/** One thing that was done to a draft, both ways. */
export interface Step {
  readonly back: Patch;
  readonly forth: Patch;
  /** Typing goes on in the same step as long as this stays the same; `null` for what stands alone. */
  readonly by: string | null;
}

/** A draft with what was done to it. Plain values, so that the steps can be kept beside the draft. */
export interface DraftHistory {
  readonly draft: Draft;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

/** Enough for a raft tapped bird by bird; older steps are forgotten. */
const MOST_STEPS = 200;

export function beginHistory(draft: Draft): DraftHistory {
  return { draft, past: [], future: [] };
}

/**
 * The draft after one more change.
 *
 * @param by what is being typed into, such as a line's id and a field: characters that follow one
 *   another there are one step
 */
export function changed(history: DraftHistory, draft: Draft, by: string | null): DraftHistory {
  if (draft === history.draft) return history;
  const step: Step = {
    back: patchBetween(draft, history.draft),
    forth: patchBetween(history.draft, draft),
    by,
  };
  const last = history.past.at(-1);
  const past =
    by !== null && last?.by === by && history.future.length === 0
      ? [...history.past.slice(0, -1), joined(last, step)]
      : [...history.past, step].slice(-MOST_STEPS);
  return { draft, past, future: [] };
}

/** The draft without its last change; the same history where there is none. */
export function undone(history: DraftHistory): DraftHistory {
  const step = history.past.at(-1);
  if (step === undefined) return history;
  return {
    draft: applied(history.draft, step.back),
    past: history.past.slice(0, -1),
    future: [...history.future, step],
  };
}

/** The draft with the last undone change in it again. */
export function redone(history: DraftHistory): DraftHistory {
  const step = history.future.at(-1);
  if (step === undefined) return history;
  return {
    draft: applied(history.draft, step.forth),
    past: [...history.past, step],
    future: history.future.slice(0, -1),
  };
}

/** Lines are never moved, so that it is enough to look at each by its id. */
function patchBetween(from: Draft, to: Draft): Patch {
  const { lines: linesBefore, ...before } = from;
  const { lines: linesAfter, ...after } = to;
  const fields = Object.fromEntries(
    Object.entries(after).filter(([key, value]) => before[key as keyof typeof before] !== value),
  );
  const known = new Map(linesBefore.map((line) => [line.id, line]));
  const lines: LinePatch[] = [];
  linesAfter.forEach((line, at) => {
    if (known.get(line.id) !== line) lines.push({ id: line.id, at, line });
    known.delete(line.id);
  });
  for (const id of known.keys()) lines.push({ id, at: 0, line: null });
  return { fields, lines };
}

function applied(draft: Draft, { fields, lines }: Patch): Draft {
  const patches = new Map(lines.map((patch) => [patch.id, patch]));
  const next = draft.lines.flatMap((line): DraftLine[] => {
    const patch = patches.get(line.id);
    if (patch === undefined) return [line];
    patches.delete(line.id);
    return patch.line === null ? [] : [patch.line];
  });
  for (const { at, line } of [...patches.values()].sort((one, other) => one.at - other.at)) {
    if (line !== null) next.splice(at, 0, line);
  }
  return { ...draft, ...fields, lines: next };
}

/** Two steps as one: back to before the first, forth to after the second. */
function joined(first: Step, second: Step): Step {
  return {
    by: second.by,
    back: merged(second.back, first.back),
    forth: merged(first.forth, second.forth),
  };
}

function merged(one: Patch, over: Patch): Patch {
  const lines = new Map([...one.lines, ...over.lines].map((patch) => [patch.id, patch]));
  return { fields: { ...one.fields, ...over.fields }, lines: [...lines.values()] };
}

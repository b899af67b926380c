import type { ReactNode } from 'react';

/** Observers get a letter and a line style, in the order of their ids: never a colour that ranks them. */
export interface ObserverLetter {
  readonly id: string;
  readonly name: string;
  readonly letter: string;
  readonly lineStyle: number;
}

/** Letters for the observers of one cell; the same order on every page of it. */
export function letterObservers(
  observers: readonly { readonly id: string; readonly name: string }[],
): ReadonlyMap<string, ObserverLetter> {
  const sorted = [...observers].sort((one, other) =>
    one.id < other.id ? -1 : one.id > other.id ? 1 : 0,
  );
  const letters = new Map<string, ObserverLetter>();
  for (const { id, name } of sorted) {
    if (letters.has(id)) continue;
    const index = letters.size;
    letters.set(id, { id, name, letter: letterAt(index), lineStyle: index % 4 });
  }
  return letters;
}

/** A … Z, then AA, AB, as spreadsheet columns go. */
function letterAt(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : letterAt(Math.floor(index / 26) - 1) + letter;
}

export function ObserverMark(props: { readonly observer: ObserverLetter }): ReactNode {
  return (
    <span className="observer-mark" data-line={props.observer.lineStyle}>
      {props.observer.letter}
    </span>
  );
}

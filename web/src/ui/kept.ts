import { useCallback, useState } from 'react';

/**
 * Values kept in this browser. Storage can be full, switched off or hold another version's text:
 * none of that may stop somebody from counting, so reading falls back and writing says if it worked.
 */
export function readKept<Value>(
  key: string,
  isValue: (value: unknown) => value is Value,
): Value | null {
  try {
    const text = localStorage.getItem(key);
    if (text === null) return null;
    const value: unknown = JSON.parse(text);
    return isValue(value) ? value : null;
  } catch {
    return null;
  }
}

/** False if the browser would not keep it. */
export function writeKept(key: string, value: unknown): boolean {
  try {
    localStorage.setItem(key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

export function forgetKept(key: string): void {
  try {
    localStorage.removeItem(key);
  } catch {
    // Nothing was kept, then.
  }
}

/** A setting of one of a few words, kept in this browser. */
export function useKeptChoice<Choice extends string>(
  key: string,
  choices: readonly Choice[],
  standard: Choice,
): [Choice, (choice: Choice) => void] {
  const [choice, setChoice] = useState<Choice>(
    () =>
      readKept(key, (value): value is Choice => choices.some((one) => one === value)) ?? standard,
  );
  const choose = useCallback(
    (next: Choice) => {
      setChoice(next);
      writeKept(key, next);
    },
    [key],
  );
  return [choice, choose];
}

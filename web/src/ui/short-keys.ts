import { useEffect } from 'react';
import { useKeptChoice } from './kept.js';

/** Single-key shortcuts can be switched off (WCAG 2.1.4): speech input would trip over them. */
export function useShortKeysSetting(): ['on' | 'off', (setting: 'on' | 'off') => void] {
  return useKeptChoice('countersign.short-keys', ['on', 'off'], 'on');
}

function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName))
  );
}

/** Acts on single keys anywhere on the page, except while somebody types. */
export function useShortKeys(
  isOn: boolean,
  keys: Readonly<Record<string, (() => void) | undefined>>,
): void {
  useEffect(() => {
    if (!isOn) return undefined;
    const listen = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey || isTyping(event.target)) return;
      const act = keys[event.key];
      if (act === undefined) return;
      event.preventDefault();
      act();
    };
    window.addEventListener('keydown', listen);
    return () => window.removeEventListener('keydown', listen);
  });
}

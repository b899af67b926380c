import type { Ruling, RulingTarget } from '../model/ruling.js';
import { Refusal } from '../refusal.js';

/**
 * Two rulings on one thing cannot both hold. A later ruling has to take the place of the earlier
 * one; two that stand side by side are refused, both named.
 *
 * @throws Refusal CONTRADICTION
 */
export function checkContradictions(rulings: readonly Ruling[]): void {
  const byTarget = new Map<string, Ruling>();
  for (const ruling of rulings) {
    const key = targetKey(ruling.target);
    const earlier = byTarget.get(key);
    if (earlier !== undefined) {
      throw new Refusal(
        'CONTRADICTION',
        `Rulings ${earlier.id} (by ${earlier.by}: ${earlier.decision.kind}) and ${ruling.id} ` +
          `(by ${ruling.by}: ${ruling.decision.kind}) are both about ${describeTarget(ruling.target)}. ` +
          'Withdraw one of them, or let the later one take the place of the earlier.',
      );
    }
    byTarget.set(key, ruling);
  }
}

/** Equal for two rulings on the same thing. */
export function targetKey(target: RulingTarget): string {
  switch (target.kind) {
    case 'group':
      return `group ${target.cell} ${[...target.group].sort().join(' + ')}`;
    case 'link':
      return `link ${target.link}`;
    case 'tally':
      return `tally ${target.tally}`;
    case 'line':
      return `line ${target.line}`;
  }
}

export function describeTarget(target: RulingTarget): string {
  switch (target.kind) {
    case 'group':
      return `${[...target.group].sort().join(', ')} in ${target.cell}`;
    case 'link':
      return `the link ${target.link}`;
    case 'tally':
      return `tally ${target.tally}`;
    case 'line':
      return `tally line ${target.line}`;
  }
}

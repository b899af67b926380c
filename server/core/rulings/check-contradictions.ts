import type { Ruling, RulingTarget } from '../model/ruling.js';
import { Refusal } from '../refusal.js';
import { type Saying, joined, say } from '../model/saying.js';

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
        say(
          'Rulings {id} (by {by}: {kind}) and {laterId} (by {laterBy}: {laterKind}) are both about {target}. Withdraw one of them, or let the later one take the place of the earlier.',
          {
            id: earlier.id,
            by: earlier.by,
            kind: earlier.decision.kind,
            laterId: ruling.id,
            laterBy: ruling.by,
            laterKind: ruling.decision.kind,
            target: targetSaying(ruling.target),
          },
        ),
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

/** What a ruling is about, in words. */
export function targetSaying(target: RulingTarget): Saying {
  switch (target.kind) {
    case 'group': {
      const group = joined([...target.group].sort(), ', ');
      return say('{group} in {cell}', { group, cell: target.cell });
    }
    case 'link':
      return say('the link {link}', { link: target.link });
    case 'tally':
      return say('tally {tally}', { tally: target.tally });
    case 'line':
      return say('tally line {line}', { line: target.line });
  }
}

import type { Protocol } from '../model/protocol.js';
import type { Link, RulingOutcome } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import type { Snapshot } from '../model/snapshot.js';
import { Refusal } from '../refusal.js';
import type { ReconciledCell } from './reconciled-cell.js';
import { basisOfLines, sameBasis } from './basis.js';
import { targetSaying } from './check-contradictions.js';
import { changeByRulings } from './sighting-as-ruled.js';
import { say } from '../model/saying.js';
import { applied, talliesChanged } from './outcome-words.js';

/** A link as the tallies alone give it. */
type FoundLink = Omit<Link, 'ruling' | 'deducted' | 'deduction'>;
/** A link that is decided on, before it is known which compiled lines its birds are on. */
type RuledLink = Omit<Link, 'deduction'>;

/**
 * Applies the rulings on links. A confirmed link is deducted, a rejected one is not; without a
 * ruling the protocol decides (by default nothing is deducted before a compiler rules).
 *
 * @param cells as ruled, so that a link takes off birds as its groups now stand.
 */
export function ruleOnLinks(
  found: readonly FoundLink[],
  rulings: readonly Ruling[],
  cells: readonly ReconciledCell[],
  snapshot: Snapshot,
  protocol: Protocol,
): { links: RuledLink[]; outcomes: RulingOutcome[] } {
  const outcomes: RulingOutcome[] = [];
  const decided = new Map<string, 'confirmed' | 'rejected'>();
  const lines = new Map(
    snapshot.tallies.flatMap((tally) => tally.lines.map((line) => [line.id, line] as const)),
  );
  for (const ruling of rulings) {
    const { target, decision } = ruling;
    if (target.kind !== 'link') continue;
    if (decision.kind !== 'confirm-link' && decision.kind !== 'reject-link') {
      throw new Refusal(
        'BAD_INPUT',
        say(
          'Ruling {id} decides "{kind}", which does not fit {target}. A link takes confirm-link or reject-link.',
          { id: ruling.id, kind: decision.kind, target: targetSaying(target) },
        ),
      );
    }
    const link = found.find((each) => each.id === target.link);
    if (link === undefined) {
      const text = say('{target} is not found in the tallies any more', {
        target: targetSaying(target),
      });
      outcomes.push({ id: ruling.id, state: 'without-target', text });
      continue;
    }
    const now = basisOfLines(link.lines.flatMap((id) => lines.get(id) ?? []));
    if (ruling.basis !== null && !sameBasis(ruling.basis, now)) {
      outcomes.push({ id: ruling.id, state: 'stale', text: talliesChanged(target) });
      continue;
    }
    decided.set(link.id, decision.kind === 'confirm-link' ? 'confirmed' : 'rejected');
    outcomes.push({ id: ruling.id, state: 'applied', text: applied(ruling) });
  }
  const links = found.map((link): RuledLink => {
    const ruling = decided.get(link.id) ?? null;
    const deducted =
      ruling === 'confirmed' ||
      (ruling === null && link.proposed && protocol.deductLinks === 'proposed');
    return { ...link, birds: birdsAsRuled(link, cells), ruling, deducted };
  });
  return { links, outcomes };
}

/**
 * Birds of the flock as the groups of its two sightings now stand. A flock that is all of a sighting
 * is as large as the smaller of the two then is; of one that is a part of both, only that part
 * changes with them.
 */
function birdsAsRuled(
  { first, second, birds }: Pick<Link, 'first' | 'second' | 'birds'>,
  cells: readonly ReconciledCell[],
): number {
  const isWhole = birds >= Math.min(first.number, second.number);
  const sizeOf = (sighting: Link['first']): number =>
    (isWhole ? sighting.number : birds) * changeByRulings(sighting, cells);
  return Math.round(Math.min(sizeOf(first), sizeOf(second)));
}

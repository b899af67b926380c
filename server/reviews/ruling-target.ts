import type * as Api from '../api/generated/schema.js';
import type { Disagreement } from '../core/model/result.js';
import type { RulingTarget } from '../core/model/ruling.js';
import type { Snapshot } from '../core/model/snapshot.js';
import { Refusal } from '../core/refusal.js';
import { applyToTallies } from '../core/rulings/apply-to-tallies.js';
import { basisOfLines } from '../core/rulings/basis.js';
import { targetKey, targetSaying } from '../core/rulings/check-contradictions.js';
import { lookAlikesFrom } from '../core/taxa/candidate-set.js';
import { talliesOfCells, type LoadedReview } from './loaded-review.js';
import { say } from '../core/model/saying.js';

/** What a ruling stands on. */
export interface TargetFacts {
  readonly target: RulingTarget;
  /** What its lines say now: the ruling goes stale when they say something else. */
  readonly basis: readonly string[];
  /** All tallies of the cells that it touches. */
  readonly tallies: readonly string[];
}

/**
 * What a ruling is to be about: the given target, or that of the disagreement which it settles.
 *
 * @throws Refusal BAD_INPUT, NOT_FOUND
 */
export function targetOf(review: LoadedReview, input: Api.RulingInput): RulingTarget {
  if (input.target) return givenTarget(input.target);
  const disagreement = review.result.disagreements.find(({ id }) => id === input.disagreementId);
  if (disagreement === undefined) {
    throw new Refusal(
      input.disagreementId ? 'NOT_FOUND' : 'BAD_INPUT',
      input.disagreementId
        ? say(
            'There is no disagreement {disagreementId} in this review any more. Load the review again.',
            { disagreementId: input.disagreementId },
          )
        : say('A ruling needs a disagreement or a target of its own.'),
    );
  }
  const target =
    disagreement.proposals.find(({ decision }) => decision.kind === input.decision.kind)?.target ??
    targetOfDisagreement(disagreement);
  if (target !== null) return target;
  throw new Refusal(
    'BAD_INPUT',
    say(
      'The disagreement {id} is about a whole cell. Say which group, tally or line the ruling is about.',
      { id: disagreement.id },
    ),
  );
}

/** What settles a disagreement, whatever is decided. */
export function targetOfDisagreement(disagreement: Disagreement): RulingTarget | null {
  const { cell, group, link } = disagreement;
  if (link !== null) return { kind: 'link', link };
  if (cell !== null && group !== null) return { kind: 'group', cell, group };
  return null;
}

function givenTarget(input: Api.RulingTargetInput): RulingTarget {
  const { kind, cell, group, link, tally, line } = input;
  if (kind === 'group' && cell && group && group.length > 0) {
    return { kind, cell, group: [...group].sort() };
  }
  if (kind === 'link' && link) return { kind, link };
  if (kind === 'tally' && tally) return { kind, tally };
  if (kind === 'line' && line) return { kind, line };
  throw new Refusal(
    'BAD_INPUT',
    say(
      'The target of a ruling is a group with its cell, or a link, a tally or a line; kind says which of them.',
    ),
  );
}

/**
 * Gathers what a ruling on this target would stand on.
 *
 * @throws Refusal NOT_FOUND if the review has no such thing
 */
export function factsOf(review: LoadedReview, target: RulingTarget): TargetFacts {
  const { result, input } = review;
  switch (target.kind) {
    case 'group': {
      const basis = basisOfGroupTarget(review, target);
      if (basis === null) throw notThere(target);
      return { target, basis, tallies: talliesOfCells(review, [target.cell]) };
    }
    case 'link': {
      const link = result.links.find(({ id }) => id === target.link);
      if (link === undefined) throw notThere(target);
      const lines = asRuled(review).tallies.flatMap((tally) => tally.lines);
      const basis = basisOfLines(lines.filter(({ id }) => link.lines.includes(id)));
      const cells = [link.first.cell, link.second.cell];
      return { target, basis, tallies: talliesOfCells(review, cells) };
    }
    case 'tally':
    case 'line': {
      const tally = input.snapshot.tallies.find(({ id, lines }) =>
        target.kind === 'tally'
          ? id === target.tally
          : lines.some((line) => line.id === target.line),
      );
      if (tally === undefined) throw notThere(target);
      const lines = tally.lines.filter(({ id }) => target.kind === 'tally' || id === target.line);
      const cells = result.cells.filter(({ tallies }) =>
        tallies.some((one) => one.tally.split('+').includes(tally.id)),
      );
      const around = talliesOfCells(
        review,
        cells.map(({ id }) => id),
      );
      const tallies = [...new Set([...around, tally.id])].sort();
      return { target, basis: basisOfLines(lines), tallies };
    }
  }
}

/** The tallies as rulings on single tallies and lines have them read: what links rest on. */
function asRuled({ input }: LoadedReview): Snapshot {
  const lookAlikes = lookAlikesFrom(input.protocol.lookAlikes);
  return applyToTallies(input.snapshot, input.rulings, lookAlikes).snapshot;
}

function basisOfGroupTarget(
  { result }: LoadedReview,
  target: RulingTarget & { readonly kind: 'group' },
): readonly string[] | null {
  const key = targetKey(target);
  const cell = result.cells.find(({ id }) => id === target.cell);
  const group = cell?.groups.find(({ taxa }) => targetKey({ ...target, group: taxa }) === key);
  return group?.basis ?? null;
}

function notThere(target: RulingTarget): Refusal {
  return new Refusal(
    'NOT_FOUND',
    say(
      'There is nothing like {target} in this review. Load the review again: a tally may have changed.',
      { target: targetSaying(target) },
    ),
  );
}

import type { Protocol } from '../model/protocol.js';
import type { Result } from '../model/result.js';
import type { Snapshot } from '../model/snapshot.js';
import { scoreCompiled, type CompiledScore } from './compiled-score.js';
import { coverageOf, scoreGroups, type Coverage, type GroupScore } from './group-score.js';
import { judgeLinks } from './judge-links.js';
import { scoreLinks, type LinkScore } from './link-score.js';
import { scorePlanted, type PlantedScore } from './planted-score.js';
import { scoreTotals, type TotalScore } from './total-score.js';
import type { Truth } from './truth.js';

/** A reconciled count held against what was truly there. */
export interface Score {
  readonly count: string;
  /** The compiled count: totals, and taxa that can be told apart in it. */
  readonly compiled: CompiledScore;
  /** Every group of every cell of birds using the water, by cell. */
  readonly groups: readonly GroupScore[];
  readonly coverage: readonly Coverage[];
  readonly links: LinkScore;
  /** `null` where it was not asked what the proposals would come to. */
  readonly totals: TotalScore | null;
  /** By kind of error; `null` where the truth does not say what was planted. */
  readonly planted: readonly PlantedScore[] | null;
}

/**
 * Holds a result against the truth.
 *
 * @param result of `reconcile` on the same snapshot and protocol, without rulings
 * @param proposalsDeducted the same with links deducted as proposed, for totals
 */
export function scoreCount(
  snapshot: Snapshot,
  protocol: Protocol,
  result: Result,
  truth: Truth,
  proposalsDeducted: Result | null = null,
): Score {
  const groups = scoreGroups(snapshot, protocol, truth);
  return {
    count: snapshot.id,
    compiled: scoreCompiled(result, truth),
    groups,
    coverage: coverageOf(groups),
    links: scoreLinks(judgeLinks(result.links, truth, snapshot)),
    totals: proposalsDeducted === null ? null : scoreTotals(proposalsDeducted, truth),
    planted: truth.planted === null ? null : scorePlanted(result, truth.planted, protocol),
  };
}

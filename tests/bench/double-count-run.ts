import { alignCells } from '../../server/core/align/cells.js';
import { withSampleErrors } from '../../server/core/compare/sample-error.js';
import { findLinks } from '../../server/core/link/find-links.js';
import { sightingsOf } from '../../server/core/link/sightings.js';
import type { Snapshot, Tally } from '../../server/core/model/snapshot.js';
import { reconcile } from '../../server/core/reconcile.js';
import { judgeLinks, type JudgedLinks } from '../../server/core/score/judge-links.js';
import { scoreTotals } from '../../server/core/score/total-score.js';
import { simulate } from '../../server/core/simulate/simulate.js';
import { optionsFor, protocol, type Setting } from './double-count-settings.js';
import { lossesOf, type Loss } from './double-count-losses.js';
import { greedyLinks } from './greedy-links.js';

/** Totals of one count, birds. */
export interface Totals {
  /** Birds in a section when one of its observers looked, and birds that somebody wrote down. */
  readonly inSight: number;
  readonly recorded: number;
  /** Compiled with every link left alone. */
  readonly raw: number;
  /** Compiled after the engine's proposals. */
  readonly after: number;
  /** The raw total less the birds of the greedy way's links. */
  readonly afterGreedy: number;
}

/** One count of a setting. */
export interface OneCount {
  readonly sightings: number;
  readonly engine: JudgedLinks;
  readonly greedy: JudgedLinks;
  readonly losses: readonly Loss[];
  /** Seconds for finding links. */
  readonly linking: number;
  /** Seconds for the whole of `reconcile`; `null`, as the totals, where it was not asked for. */
  readonly reconciling: number | null;
  readonly totals: Totals | null;
}

/** @param withTotals reconciles as well, which takes several times as long */
export function runCount(setting: Setting, seed: number, withTotals: boolean): OneCount {
  const { snapshot: asCounted, truth } = simulate(optionsFor(setting, seed), protocol);
  const snapshot = withSampleErrors(asCounted, protocol);
  const cellOf = cellsOf(snapshot);
  const [links, linking] = timed(() => findLinks(snapshot, cellOf, protocol));
  const sightings = sightingsOf(snapshot, cellOf, protocol);
  const greedy = greedyLinks(sightings, protocol);
  const judged = {
    sightings: sightings.length,
    engine: judgeLinks(links, truth, snapshot),
    greedy: judgeLinks(greedy, truth, snapshot),
    linking,
  };
  const losses = lossesOf(judged.engine.trueLinks, links, sightings);
  if (!withTotals) return { ...judged, losses, reconciling: null, totals: null };
  const [result, reconciling] = timed(() => reconcile(asCounted, [], protocol));
  const { raw, afterProposals, inSight, recorded } = scoreTotals(result, truth);
  const taken = greedy.reduce((sum, { birds }) => sum + birds, 0);
  return {
    ...judged,
    losses,
    reconciling,
    totals: {
      inSight: inSight ?? 0,
      recorded: recorded ?? 0,
      raw,
      after: afterProposals,
      afterGreedy: raw - taken,
    },
  };
}

/** The cell of each tally, as `reconcile` has it. */
export function cellsOf(snapshot: Snapshot): (tally: Tally) => string {
  const byTally = new Map(
    alignCells(snapshot)
      .filter(({ layer }) => layer === 'using')
      .flatMap(({ id, looks }) =>
        looks.flatMap(({ tallies }) => tallies.map((tally) => [tally.id, id] as const)),
      ),
  );
  return (tally) => byTally.get(tally.id) ?? '';
}

function timed<Answer>(work: () => Answer): [Answer, seconds: number] {
  const started = performance.now();
  const answer = work();
  return [answer, (performance.now() - started) / 1000];
}

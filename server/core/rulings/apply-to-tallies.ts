import type { RulingOutcome } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import type { Snapshot, Species, Tally, TallyLine } from '../model/snapshot.js';
import { Refusal } from '../refusal.js';
import type { LookAlikes } from '../taxa/candidate-set.js';
import { taxonName } from '../taxa/taxon-name.js';
import { withoutSpecies } from '../taxa/scope.js';
import { basisOfLines, sameBasis } from './basis.js';
import { targetSaying } from './check-contradictions.js';
import { say, type Saying } from '../model/saying.js';

/**
 * Reads the tallies as rulings on single tallies and lines say: left out, or identified otherwise.
 * The snapshot itself is not changed; what was submitted stays on record.
 *
 * Leaving a line out is not a zero: its tally then makes no claim about those species, nor about
 * those they are confused with, unless another of its lines names them.
 */
export function applyToTallies(
  snapshot: Snapshot,
  rulings: readonly Ruling[],
  lookAlikes: LookAlikes,
): { snapshot: Snapshot; outcomes: RulingOutcome[] } {
  let tallies = snapshot.tallies;
  const outcomes: RulingOutcome[] = [];
  for (const ruling of rulings) {
    const { target } = ruling;
    if (target.kind !== 'tally' && target.kind !== 'line') continue;
    const concerned = snapshot.tallies.flatMap((tally) =>
      tally.lines.filter((line) =>
        target.kind === 'tally' ? tally.id === target.tally : line.id === target.line,
      ),
    );
    const exists =
      target.kind === 'tally'
        ? snapshot.tallies.some((tally) => tally.id === target.tally)
        : concerned.length > 0;
    if (!exists) {
      const text = say('{target} is not there any more', { target: targetSaying(target) });
      outcomes.push({ id: ruling.id, state: 'without-target', text });
      continue;
    }
    if (ruling.basis !== null && !sameBasis(ruling.basis, basisOfLines(concerned))) {
      const text = say('{target} has changed since the ruling', { target: targetSaying(target) });
      outcomes.push({ id: ruling.id, state: 'stale', text });
      continue;
    }
    tallies = tallies.flatMap((tally) => applyTo(tally, ruling, lookAlikes));
    outcomes.push({ id: ruling.id, state: 'applied', text: asRead(ruling) });
  }
  return { snapshot: { ...snapshot, tallies }, outcomes };
}

function applyTo(tally: Tally, ruling: Ruling, lookAlikes: LookAlikes): Tally[] {
  const { target, decision } = ruling;
  if (target.kind === 'tally') {
    if (decision.kind !== 'exclude') throw unfit(ruling);
    return tally.id === target.tally ? [] : [tally];
  }
  if (target.kind !== 'line') return [tally];
  const concerned = tally.lines.find((line) => line.id === target.line);
  if (concerned === undefined) return [tally];
  const others = tally.lines.filter((line) => line !== concerned);
  switch (decision.kind) {
    case 'exclude':
      return [
        {
          ...tally,
          lines: others,
          scope: withoutSpecies(tally.scope, silent(concerned, others, lookAlikes)),
        },
      ];
    case 'identify-line':
      return [
        {
          ...tally,
          lines: tally.lines.map((line) =>
            line === concerned ? { ...line, candidates: [...decision.to].sort() } : line,
          ),
        },
      ];
    default:
      throw unfit(ruling);
  }
}

/** Species of the line left out and their look-alikes that the tally says nothing else about. */
function silent(line: TallyLine, others: readonly TallyLine[], lookAlikes: LookAlikes): Species[] {
  const concerned = line.candidates.flatMap((species) => [
    species,
    ...(lookAlikes.get(species) ?? []),
  ]);
  return concerned.filter((species) => !others.some((other) => other.candidates.includes(species)));
}

function unfit(ruling: Ruling): Refusal {
  return new Refusal(
    'BAD_INPUT',
    say(
      'Ruling {id} decides "{kind}", which does not fit {target}. A tally can be excluded; a line can be excluded or identified otherwise (identify-line).',
      { id: ruling.id, kind: ruling.decision.kind, target: targetSaying(ruling.target) },
    ),
  );
}

function asRead({ target: about, decision }: Ruling): Saying {
  const target = targetSaying(about);
  return decision.kind === 'identify-line'
    ? say('{target} is read as {taxon}', { target, taxon: taxonName(decision.to) })
    : say('{target} is left out', { target });
}

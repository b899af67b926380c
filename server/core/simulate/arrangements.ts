import type { Chance } from './chance.js';
import { SHARE_SEEN } from './model.js';
import type { SimulationOptions } from './options.js';
import type { SeenPart, Turn } from './turn.js';

type Shares = Pick<SimulationOptions, 'partial' | 'merged' | 'parties'>;

/**
 * The planned turns as they were carried out: some neighbouring sections tallied as one, some teams
 * counting together, some turns with only part of the place in sight. With shares of 0 nothing is
 * changed.
 */
export function arranged(planned: readonly Turn[], shares: Shares, chance: Chance): Turn[] {
  const merged = withMerged(planned, shares.merged, chance.split());
  const together = withParties(merged, shares.parties, chance.split());
  return withParts(together, shares.partial, chance.split());
}

/**
 * The last of a section's team tallies the section east of it as well, in the place of the last of
 * that team, who has the time off. Only where both sections are counted at the same time.
 */
function withMerged(turns: readonly Turn[], share: number, chance: Chance): Turn[] {
  const last = Math.max(...turns.flatMap(({ sections }) => sections));
  let all = [...turns];
  for (let west = 0; west < last; west += 1) {
    const wanted = chance.happens(share);
    const own = all.filter(({ sections }) => sections.includes(west)).at(-1);
    const next = all.filter(({ sections }) => sections.includes(west + 1)).at(-1);
    if (!wanted || own === undefined || next === undefined) continue;
    const atOnce = own.start < next.end && next.start < own.end;
    if (!atOnce || own.observer === next.observer) continue;
    all = all
      .filter((turn) => turn !== next)
      .map((turn) => (turn === own ? { ...own, sections: [west, west + 1] } : turn));
    // Three sections in a row are never joined.
    west += 1;
  }
  return all;
}

/** The first two of a section's team count together, where both tally that section alone. */
function withParties(turns: readonly Turn[], share: number, chance: Chance): Turn[] {
  const last = Math.max(...turns.flatMap(({ sections }) => sections));
  let all = [...turns];
  for (let section = 0; section <= last; section += 1) {
    const wanted = chance.happens(share);
    const team = all.filter(({ sections }) => sections.join() === String(section));
    const [one, other] = team;
    if (!wanted || one === undefined || other === undefined) continue;
    const party = { first: one.observer, second: other.observer };
    all = all.map((turn) => (turn === one || turn === other ? { ...turn, party } : turn));
  }
  return all;
}

/** Fog, reeds or a point of land hide one end of the place. Who count together see the same part. */
function withParts(turns: readonly Turn[], share: number, chance: Chance): Turn[] {
  const parts = turns.map((): SeenPart | null => {
    const own = chance.split();
    if (!own.happens(share)) return null;
    const seen = Math.round(20 * own.between(...SHARE_SEEN)) / 20;
    return { share: seen, from: own.happens(0.5) ? 'west' : 'east' };
  });
  return turns.map((turn, index) => {
    const first = turns.findIndex(
      ({ observer, sections }) =>
        observer === turn.party?.first && sections.join() === turn.sections.join(),
    );
    return { ...turn, part: parts[first < 0 ? index : first] ?? null };
  });
}

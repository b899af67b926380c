import type { Chance } from './chance.js';
import type { Flock, Part } from './population.js';
import type { Turn } from './turn.js';

/** The moment at which an observer comes to a flock, or to several that lie together as one. */
export interface Look {
  /** With the birds of all members. */
  readonly flock: Flock;
  readonly members: readonly Flock[];
  /** Hours from the start of the window. */
  readonly hour: number;
  /** What else of it is up to chance. */
  readonly chance: Chance;
}

/**
 * When an observer looks at each flock: once a turn, at any time of it. A flock that came out of
 * another, or is to join it, is looked at when that one is: as one with it, or beside it.
 */
export function looksAt(flocks: readonly Flock[], turn: Turn, chance: Chance): Look[] {
  const alone = flocks.map((flock): Look => {
    const own = chance.split();
    const hour = own.between(turn.start, turn.end) / 60;
    return { flock, members: [flock], hour, chance: own };
  });
  const hourOf = new Map(alone.map(({ flock, hour }) => [flock.number, hour]));
  const looks = alone.map((look) => {
    const { company } = look.flock;
    return { ...look, hour: hourOf.get(company?.flock ?? look.flock.number) ?? look.hour };
  });
  const isWithin = ({ flock: { company }, hour }: Look): boolean =>
    company !== null && hour >= company.from && hour <= company.until;
  return looks
    .filter((look) => !isWithin(look))
    .map((look) => {
      const { number } = look.flock;
      const others = looks
        .filter((each) => each.flock.company?.flock === number && isWithin(each))
        .map(({ flock }) => flock);
      return others.length === 0 ? look : together(look, others);
    });
}

function together(look: Look, others: readonly Flock[]): Look {
  const members = [look.flock, ...others];
  return { ...look, members, flock: { ...look.flock, parts: addedUp(members) } };
}

function addedUp(flocks: readonly Flock[]): Part[] {
  const bySpecies = new Map<string, Part>();
  for (const { species, birds, males } of flocks.flatMap(({ parts }) => parts)) {
    const known = bySpecies.get(species);
    bySpecies.set(species, {
      species,
      birds: birds + (known?.birds ?? 0),
      males: males === null ? null : males + (known?.males ?? 0),
    });
  }
  return [...bySpecies.values()];
}

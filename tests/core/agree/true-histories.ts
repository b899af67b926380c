import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import { chanceFrom } from '../../../server/core/simulate/chance.js';
import { Lake } from '../../../server/core/simulate/lake.js';
import { observersFor } from '../../../server/core/simulate/observer.js';
import type { SimulationOptions } from '../../../server/core/simulate/options.js';
import { flocksFor } from '../../../server/core/simulate/population.js';
import { turnsFor } from '../../../server/core/simulate/schedule.js';
import { sightingsOf } from '../../../server/core/simulate/sightings.js';
import { FLOCK_AT_LEAST } from '../../../server/core/link/flock.js';

export interface TrueHistories {
  /** Flocks of ten birds or more that were there. */
  readonly flocks: number;
  /** Who recorded at least ten birds of which flock, for flocks that somebody did. */
  readonly histories: readonly (readonly boolean[])[];
}

/**
 * What the simulator does not tell: which flock each observer of its only section saw. The same chances in
 * the same order as in `simulate`, without parties, merged sections or partial coverage.
 */
export function trueHistories(options: SimulationOptions): TrueHistories {
  const chance = chanceFrom(options.seed);
  const forBirds = chance.split();
  chance.split();
  const [forPeople, forTurns, forSightings] = [chance.split(), chance.split(), chance.split()];
  const lake = new Lake(options.sections);
  const flocks = flocksFor(options.birds, options.moving, lake, forBirds);
  const observers = observersFor(options, forPeople, chance.split());
  const setting = { lake, options, protocol: defaultProtocol };
  const seenBy = new Map<number, boolean[]>();
  turnsFor(options.sections, options.observers, options.perSection, forTurns).forEach(
    (turn, place) => {
      const observer = observers[turn.observer];
      if (observer === undefined) return;
      for (const { flock, lines } of sightingsOf(
        turn,
        observer,
        flocks,
        setting,
        forSightings.split(),
      )) {
        const written = lines.reduce((total, line) => total + line.written.number, 0);
        if (written < FLOCK_AT_LEAST) continue;
        const history = seenBy.get(flock.number) ?? observers.map(() => false);
        history[place] = true;
        seenBy.set(flock.number, history);
      }
    },
  );
  const birds = flocks.map(({ parts }) => parts.reduce((total, part) => total + part.birds, 0));
  return {
    flocks: birds.filter((each) => each >= FLOCK_AT_LEAST).length,
    histories: [...seenBy.values()],
  };
}

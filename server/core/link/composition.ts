import { areLookAlikes, overlaps, type LookAlikes } from '../taxa/candidate-set.js';
import type { Part } from './flock.js';

/**
 * How readily a bird recorded as one identification is recorded as another when it is seen again
 * (common practice, no source): under the same candidate set; at another resolution; as a
 * look-alike; as something else altogether (a slip, or a bird that joined).
 */
const SAME_SET = 1;
const SHARED_SPECIES = 0.5;
const LOOK_ALIKE = 0.1;
const APART = 0.01;

/** Fewest birds of two flocks, as a share, that must be able to be the same kinds. */
const SAME_KIND_AT_LEAST = 0.5;

/** How readily birds of one candidate set are recorded as another, each worked out once. */
export class SetFits {
  readonly #lookAlikes: LookAlikes;
  readonly #kept = new Map<string, Map<string, number>>();

  constructor(lookAlikes: LookAlikes) {
    this.#lookAlikes = lookAlikes;
  }

  of(one: Part, other: Part): number {
    let byOther = this.#kept.get(one.key);
    if (byOther === undefined) this.#kept.set(one.key, (byOther = new Map<string, number>()));
    let fit = byOther.get(other.key);
    if (fit === undefined) byOther.set(other.key, (fit = this.#work(one, other)));
    return fit;
  }

  #work(one: Part, other: Part): number {
    if (one.key === other.key) return SAME_SET;
    if (overlaps(one.candidates, other.candidates)) return SHARED_SPECIES;
    return areLookAlikes(one.candidates, other.candidates, this.#lookAlikes) ? LOOK_ALIKE : APART;
  }
}

/**
 * How well two compositions fit one flock, from 0.01 to 1: the average over birds of how readily
 * the one record follows from the other. Birds are paired kind by kind, those of the same set first,
 * then those that share a species, then look-alikes. `null` where fewer than half of the birds can be
 * the same kinds: not one flock.
 */
export function kindFit(a: readonly Part[], b: readonly Part[], setFits: SetFits): number | null {
  const [ours, theirs] = [sharesOf(a), sharesOf(b)];
  let [paired, sum] = [0, 0];
  for (const level of [SAME_SET, SHARED_SPECIES, LOOK_ALIKE]) {
    a.forEach((one, index) => {
      b.forEach((other, column) => {
        if (setFits.of(one, other) !== level) return;
        const birds = Math.min(ours[index] ?? 0, theirs[column] ?? 0);
        ours[index] = (ours[index] ?? 0) - birds;
        theirs[column] = (theirs[column] ?? 0) - birds;
        paired += birds;
        sum += birds * level;
      });
    });
  }
  return paired < SAME_KIND_AT_LEAST ? null : sum + (1 - paired) * APART;
}

function sharesOf(parts: readonly Part[]): number[] {
  const total = parts.reduce((sum, part) => sum + part.number, 0);
  return parts.map((part) => part.number / total);
}

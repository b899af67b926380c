import { normalQuantile } from '../../server/core/math/normal.js';
import { seededRandom, type SeededRandom } from '../../server/core/math/seeded-random.js';

/** About normal: twelve uniform numbers are too slow for a million, one quantile is enough. */
function normal(random: SeededRandom): number {
  return normalQuantile((random.bits() + 0.5) / 4294967296);
}

/** Counts of n things by two observers: log-normal flocks, each count a fifth off. */
export function twoCounts(n: number): { x: number[]; y: number[] } {
  const random = seededRandom(1);
  const x: number[] = [];
  const y: number[] = [];
  for (let thing = 0; thing < n; thing += 1) {
    const level = 4 + 1.2 * normal(random);
    x.push(Math.max(1, Math.round(Math.exp(level + 0.2 * normal(random)))));
    y.push(Math.max(1, Math.round(Math.exp(level + 0.2 * normal(random)))));
  }
  return { x, y };
}

/** ln counts of n / observers things by the same observers. */
export function ratings(n: number, observers: number): number[][] {
  const random = seededRandom(2);
  const bias = Array.from({ length: observers }, () => 0.1 * normal(random));
  return Array.from({ length: Math.floor(n / observers) }, () => {
    const level = 4 + normal(random);
    return bias.map((each) => level + each + 0.2 * normal(random));
  });
}

/** n values in units of `observers`, whole numbers up to `kinds`, one in ten missing. */
export function units(n: number, observers: number, kinds: number): (number | null)[][] {
  const random = seededRandom(3);
  return Array.from({ length: Math.floor(n / observers) }, () => {
    const level = random.integer(kinds);
    return Array.from({ length: observers }, () =>
      random.uniform() < 0.1 ? null : random.uniform() < 0.7 ? level : random.integer(kinds),
    );
  });
}

/** Names that two observers gave to n birds, as a table of `kinds` names. */
export function namesTable(n: number, kinds: number): number[][] {
  const random = seededRandom(4);
  const table = Array.from({ length: kinds }, () => new Array<number>(kinds).fill(0));
  for (let bird = 0; bird < n; bird += 1) {
    const one = random.integer(kinds);
    const other = random.uniform() < 0.8 ? one : random.integer(kinds);
    const row = table[one];
    if (row !== undefined) row[other] = (row[other] ?? 0) + 1;
  }
  return table;
}

/** Flocks that three observers saw or not, by size; only those that somebody saw. */
export function flocks(n: number): { seenBy: boolean[]; covariates: number[] }[] {
  const random = seededRandom(5);
  return Array.from({ length: n }, () => {
    const size = normal(random);
    const chance = 1 / (1 + Math.exp(-0.4 - 0.5 * size));
    return {
      seenBy: [0, 1, 2].map(() => random.uniform() < chance),
      covariates: [size],
    };
  }).filter(({ seenBy }) => seenBy.includes(true));
}

/** Counts of n / 3 sites at three visits: Poisson numbers of mean 3, each found with chance 0.6. */
export function visits(n: number): number[][] {
  const random = seededRandom(6);
  return Array.from({ length: Math.floor(n / 3) }, () => {
    let [number, waited] = [0, -Math.log(1 - random.uniform())];
    while (waited < 3) {
      number += 1;
      waited -= Math.log(1 - random.uniform());
    }
    return [0, 1, 2].map(() => {
      let count = 0;
      for (let one = 0; one < number; one += 1) count += random.uniform() < 0.6 ? 1 : 0;
      return count;
    });
  });
}

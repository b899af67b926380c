import { keyOf, type LookAlikes } from '../taxa/candidate-set.js';
import { kindFit } from './composition.js';
import { SizeSpreads, type SizeSpread } from './flock-size.js';
import type { FlockSighting } from './sightings.js';

/** Flocks of a rare kind turn up together, so that kind alone never weighs more than 1 in 30. */
const RAREST_KIND = 0.03;

/** Worth one flock when few others are there to tell how common a kind is. */
const HALF_A_FLOCK = 0.5;

/** Digits by which two mixed flocks are told apart: shares in thousandths. */
const SHARE_DIGITS = 3;

/**
 * What kinds of flocks a count holds: how well any two fit one flock, how common flocks are that would
 * fit as well, and how their sizes are spread. Sightings are named by their index.
 */
export class Kinds {
  readonly #kindOf: readonly number[];
  readonly #fits: (number | null)[][];
  readonly #alike: readonly number[];
  readonly #spreads: SizeSpreads;
  readonly #sightings: number;

  constructor(sightings: readonly FlockSighting[], lookAlikes: LookAlikes) {
    const numberOf = new Map<string, number>();
    const [examples, counts]: [FlockSighting[], number[]] = [[], []];
    this.#kindOf = sightings.map((sighting) => {
      const key = signatureOf(sighting);
      const kind = numberOf.get(key) ?? examples.length;
      if (kind === examples.length) {
        numberOf.set(key, kind);
        examples.push(sighting);
        counts.push(0);
      }
      counts[kind] = (counts[kind] ?? 0) + 1;
      return kind;
    });
    this.#sightings = sightings.length;
    this.#fits = examples.map((a, row) =>
      examples.map((b, column) => (column < row ? null : kindFit(a.parts, b.parts, lookAlikes))),
    );
    this.#fits.forEach((row, index) => {
      row.forEach((fit, column) => {
        if (column > index) (this.#fits[column] ?? [])[index] = fit;
      });
    });
    this.#alike = this.#fits.map((row) =>
      row.reduce<number>((sum, fit, kind) => sum + (fit ?? 0) * (counts[kind] ?? 0), 0),
    );
    this.#spreads = new SizeSpreads(
      sightings.map(({ size }) => size.mean),
      this.#kindOf,
      this.#fits.map((row) => row.flatMap((fit, kind) => (fit === null ? [] : [kind]))),
    );
  }

  /** How well both fit one flock, see {@link kindFit}; `null` if they do not. */
  fit(a: number, b: number): number | null {
    return this.#fits[this.#kindOf[a] ?? 0]?.[this.#kindOf[b] ?? 0] ?? null;
  }

  /** How well a flock of this count taken at random would fit either, from 0.03 to 1. */
  common(a: number, b: number): number {
    const [one, other] = [this.#kindOf[a] ?? 0, this.#kindOf[b] ?? 0];
    const fit = this.#fits[one]?.[other] ?? 0;
    const own = (kind: number): number => this.#fits[kind]?.[kind] ?? 0;
    const alike =
      ((this.#alike[one] ?? 0) - own(one) - fit + (this.#alike[other] ?? 0) - own(other) - fit) / 2;
    const others = this.#sightings - 2;
    return Math.max(RAREST_KIND, (alike + HALF_A_FLOCK) / (others + HALF_A_FLOCK));
  }

  /** How ln sizes of flocks like either are spread. */
  spread(a: number, b: number): SizeSpread {
    return this.#spreads.of(this.#kindOf[a] ?? 0, this.#kindOf[b] ?? 0);
  }
}

function signatureOf({ parts }: FlockSighting): string {
  return parts
    .map(({ candidates, number }) => `${keyOf(candidates)} ${number.toFixed(SHARE_DIGITS)}`)
    .join('\n');
}

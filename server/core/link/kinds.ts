import { kindFit, type SetFits } from './composition.js';
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
  /** 0 where two kinds do not fit. */
  readonly #fits: readonly Float64Array[];
  readonly #alike: readonly number[];
  readonly #spreads: SizeSpreads;
  readonly #sightings: number;

  constructor(sightings: readonly FlockSighting[], setFits: SetFits) {
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
    this.#fits = examples.map(() => new Float64Array(examples.length));
    examples.forEach((a, row) => {
      for (let column = row; column < examples.length; column += 1) {
        const fit = kindFit(a.parts, examples[column]?.parts ?? [], setFits) ?? 0;
        this.#set(row, column, fit);
        this.#set(column, row, fit);
      }
    });
    this.#alike = this.#fits.map((row) =>
      row.reduce((sum, fit, kind) => sum + fit * (counts[kind] ?? 0), 0),
    );
    const someFlock = sightings.some(({ isTotal }) => !isTotal);
    this.#spreads = new SizeSpreads(
      // A total says nothing of how large flocks are, unless there is nothing else.
      sightings.map(({ size, isTotal }) => (isTotal && someFlock ? null : size.mean)),
      this.#kindOf,
      this.#fits.map((row) => [...row.keys()].filter((kind) => row[kind] !== 0)),
    );
  }

  /** How well both fit one flock, see {@link kindFit}; 0 if they do not. */
  fit(a: number, b: number): number {
    return this.#fits[this.#kindOf[a] ?? 0]?.[this.#kindOf[b] ?? 0] ?? 0;
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

  #set(row: number, column: number, fit: number): void {
    const fits = this.#fits[row];
    if (fits !== undefined) fits[column] = fit;
  }

  /** How ln sizes of flocks like either are spread. */
  spread(a: number, b: number): SizeSpread {
    return this.#spreads.of(this.#kindOf[a] ?? 0, this.#kindOf[b] ?? 0);
  }
}

function signatureOf({ parts }: FlockSighting): string {
  return parts.map(({ key, number }) => `${key} ${number.toFixed(SHARE_DIGITS)}`).join('\n');
}

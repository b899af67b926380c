/** About the fourth root of the precision of a double: second differences lose half the digits. */
const STEP = 2e-4;

export interface Derivatives {
  readonly gradient: readonly number[];
  /** Rows one after another, symmetric. */
  readonly hessian: Float64Array;
}

/**
 * First and second derivatives of a function of several numbers, by central differences of the fourth
 * order on the diagonal and in the gradient, of the second order elsewhere (Abramowitz & Stegun 1964,
 * 25.3). About 9 digits of the gradient and 6 of the Hessian for functions of size and scale near 1.
 *
 * @param of smooth around `at`
 * @example derivativesOf(([x = 0]) => x ** 2, [3]).hessian[0]?.toFixed(4) // '2.0000'
 */
export function derivativesOf(
  of: (at: readonly number[]) => number,
  at: readonly number[],
): Derivatives {
  const size = at.length;
  const steps = at.map((each) => STEP * Math.max(1, Math.abs(each)));
  const moved = (moves: readonly (readonly [place: number, by: number])[]): number => {
    const there = [...at];
    for (const [place, by] of moves) there[place] = (at[place] ?? 0) + by * (steps[place] ?? 0);
    return of(there);
  };
  const centre = of(at);
  const gradient: number[] = [];
  const hessian = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    const step = steps[i] ?? 1;
    const [far, near] = [moved([[i, -2]]), moved([[i, -1]])];
    const [nearUp, farUp] = [moved([[i, 1]]), moved([[i, 2]])];
    gradient.push((far - 8 * near + 8 * nearUp - farUp) / (12 * step));
    hessian[i * size + i] =
      (-far + 16 * near - 30 * centre + 16 * nearUp - farUp) / (12 * step * step);
  }
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < i; j += 1) {
      const both = (one: number, other: number): number =>
        moved([
          [i, one],
          [j, other],
        ]);
      const value =
        (both(1, 1) - both(1, -1) - both(-1, 1) + both(-1, -1)) /
        (4 * (steps[i] ?? 1) * (steps[j] ?? 1));
      hessian[i * size + j] = value;
      hessian[j * size + i] = value;
    }
  }
  return { gradient, hessian };
}

import { inverseOfPositiveDefinite } from '../math/cholesky.js';

/**
 * A source of spread: either a factor, whose level adds the same to all values that have it, or an
 * error of each value alone with a variance in proportion to its weight.
 */
export type Source =
  | { readonly levels: readonly string[] }
  /** 0 or more, one a value. */
  | { readonly weights: readonly number[] };

export interface VarianceComponents {
  /** One a source, 0 or more. */
  readonly variances: readonly number[];
  /** Their covariances as estimates, row by row; `null` where data cannot tell all sources apart. */
  readonly covariances: readonly (readonly number[])[] | null;
  /** Sources that the data cannot tell from the others. */
  readonly inseparable: readonly boolean[];
}

const MOST_STEPS = 300;
const SETTLED = 1e-10;
/** Below this share of all variance a source has none. */
const NOTHING = 1e-9;
/** A source that scoring would take below zero is taken to have none from this share down. */
const SMALL = 1e-3;
/** A source of which the others leave less than this share of the information is not told apart. */
const LEAST_OWN_INFORMATION = 1e-6;

/**
 * Variance components by restricted maximum likelihood (Patterson & Thompson 1971, Biometrika
 * 58:545): values are the fixed mean of their block, plus what each source adds. Crossed sources,
 * gaps and blocks of any size are allowed.
 *
 * The blocks' means are taken out by orthonormal contrasts. Fisher scoring where it leaves no
 * variance below zero, otherwise a step of the MM algorithm of Zhou et al. 2019 (J. Comput. Graph.
 * Stat. 28:350), which cannot; of balanced data it gives the classical estimates from mean squares.
 *
 * @param values one a unit
 * @param blocks which values share a mean, one a value
 * @param sources at least one
 * @throws RangeError where no block has two values
 */
export function varianceComponents(
  values: readonly number[],
  blocks: readonly string[],
  sources: readonly Source[],
): VarianceComponents {
  const contrasts = contrastsWithin(blocks);
  const size = contrasts.length;
  if (size === 0) throw new RangeError('varianceComponents requires a block with two values');
  const y = Float64Array.from(contrasts, (contrast) =>
    contrast.reduce((sum, [unit, factor]) => sum + factor * (values[unit] ?? NaN), 0),
  );
  const parts = sources.map((source) => covarianceOf(source, contrasts));
  const trace = (part: Float64Array): number => {
    let sum = 0;
    for (let i = 0; i < size; i += 1) sum += part[i * size + i] ?? 0;
    return sum;
  };
  const squares = y.reduce((sum, value) => sum + value * value, 0);
  const traces = parts.map(trace);
  const allTraces = traces.reduce((sum, each) => sum + each, 0);
  let variances: number[] = traces.map((each) => (each > 0 ? squares / allTraces : 0));
  if (squares > 0) {
    for (let step = 0; step < MOST_STEPS; step += 1) {
      const next = improved(variances, parts, y);
      const total = next.reduce((sum, each) => sum + each, 0);
      const kept = next.map((each) => (each < NOTHING * total ? 0 : each));
      const moved = Math.max(...kept.map((each, k) => Math.abs(each - (variances[k] ?? 0))));
      variances = kept;
      if (moved <= SETTLED * total) break;
    }
  }
  return { variances, ...precisionOf(variances, parts, size) };
}

/** A combination of values that no block's mean enters: places of values and their factors. */
type Contrast = readonly (readonly [unit: number, factor: number])[];

/** Helmert contrasts of the values of each block, orthonormal. */
function contrastsWithin(blocks: readonly string[]): Contrast[] {
  const members = new Map<string, number[]>();
  blocks.forEach((block, unit) => members.set(block, [...(members.get(block) ?? []), unit]));
  return [...members.values()].flatMap((units) =>
    units.slice(1).map((unit, index): Contrast => {
      const before = index + 1;
      const length = Math.sqrt(before * (before + 1));
      return [
        ...units.slice(0, before).map((each) => [each, 1 / length] as const),
        [unit, -before / length],
      ];
    }),
  );
}

/** What a source of variance 1 gives the contrasts as covariance. */
function covarianceOf(source: Source, contrasts: readonly Contrast[]): Float64Array {
  const size = contrasts.length;
  const covariance = new Float64Array(size * size);
  // Sums over what two contrasts have in common: units, or levels of a factor.
  const loadings = contrasts.map((contrast) => {
    const sums = new Map<string | number, number>();
    for (const [unit, factor] of contrast) {
      const [key, weight] =
        'levels' in source
          ? [source.levels[unit] ?? '', 1]
          : [unit, Math.sqrt(source.weights[unit] ?? 0)];
      sums.set(key, (sums.get(key) ?? 0) + factor * weight);
    }
    return sums;
  });
  loadings.forEach((one, i) => {
    loadings.slice(0, i + 1).forEach((other, j) => {
      let value = 0;
      for (const [key, loading] of one) value += loading * (other.get(key) ?? 0);
      covariance[i * size + j] = value;
      covariance[j * size + i] = value;
    });
  });
  return covariance;
}

/** One step towards the greatest restricted likelihood. */
function improved(
  variances: readonly number[],
  parts: readonly Float64Array[],
  y: Float64Array,
): number[] {
  const size = y.length;
  const inverse = inverseOf(variances, parts, size);
  const u = new Float64Array(size);
  for (let i = 0; i < size; i += 1) {
    let value = 0;
    for (let j = 0; j < size; j += 1) value += (inverse[i * size + j] ?? 0) * (y[j] ?? 0);
    u[i] = value;
  }
  const explained = parts.map((part) => {
    let value = 0;
    for (let i = 0; i < size; i += 1) {
      for (let j = 0; j < size; j += 1) {
        value += (u[i] ?? 0) * (part[i * size + j] ?? 0) * (u[j] ?? 0);
      }
    }
    return value;
  });
  const open = variances.flatMap((variance, k) => (variance > 0 ? [k] : []));
  const products = open.map((k) => product(inverse, parts[k] ?? new Float64Array(0), size));
  const information = new Float64Array(open.length ** 2);
  open.forEach((_, a) => {
    open.forEach((__, b) => {
      information[a * open.length + b] = traceOfProduct(products[a], products[b], size) / 2;
    });
  });
  const solved = inverseOfPositiveDefinite(information, open.length);
  let goingNegative: readonly boolean[] = [];
  if (solved !== null) {
    const scored = variances.map((_, k) => {
      const a = open.indexOf(k);
      if (a < 0) return 0;
      return open.reduce(
        (sum, other, b) => sum + ((solved[a * open.length + b] ?? 0) * (explained[other] ?? 0)) / 2,
        0,
      );
    });
    if (scored.every((variance) => variance >= 0)) return scored;
    goingNegative = scored.map((variance) => variance < 0);
  }
  const total = variances.reduce((sum, variance) => sum + variance, 0);
  return variances.map((variance, k) => {
    if (variance === 0) return 0;
    const ratio = (explained[k] ?? 0) / traceOfProduct(inverse, parts[k], size);
    // On its way to nothing, and the likelihood still rises that way: the last steps would be many.
    const vanishes = goingNegative[k] === true && variance < SMALL * total && ratio < 1;
    return vanishes ? 0 : variance * Math.sqrt(ratio);
  });
}

function inverseOf(
  variances: readonly number[],
  parts: readonly Float64Array[],
  size: number,
): Float64Array {
  const total = new Float64Array(size * size);
  parts.forEach((part, k) => {
    const variance = variances[k] ?? 0;
    if (variance > 0) part.forEach((value, i) => (total[i] = (total[i] ?? 0) + variance * value));
  });
  const scale = Math.max(...variances);
  for (;;) {
    const inverse = inverseOfPositiveDefinite(total, size);
    if (inverse !== null) return inverse;
    // Sources that leave some contrast without any spread: a trifle on the diagonal.
    for (let i = 0; i < size; i += 1)
      total[i * size + i] = (total[i * size + i] ?? 0) + scale * 1e-9;
  }
}

function product(a: Float64Array, b: Float64Array, size: number): Float64Array {
  const result = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) {
    for (let k = 0; k < size; k += 1) {
      const factor = a[i * size + k] ?? 0;
      if (factor === 0) continue;
      for (let j = 0; j < size; j += 1) {
        const place = i * size + j;
        result[place] = (result[place] ?? 0) + factor * (b[k * size + j] ?? 0);
      }
    }
  }
  return result;
}

function traceOfProduct(
  a: Float64Array | undefined,
  b: Float64Array | undefined,
  size: number,
): number {
  let trace = 0;
  for (let i = 0; i < size; i += 1) {
    for (let j = 0; j < size; j += 1) {
      trace += (a?.[i * size + j] ?? 0) * (b?.[j * size + i] ?? 0);
    }
  }
  return trace;
}

/** Covariances of the estimates from the expected information, and which sources it tells apart. */
function precisionOf(
  variances: readonly number[],
  parts: readonly Float64Array[],
  size: number,
): Pick<VarianceComponents, 'covariances' | 'inseparable'> {
  const count = parts.length;
  if (variances.every((variance) => variance === 0)) {
    return { covariances: null, inseparable: variances.map(() => false) };
  }
  const inverse = inverseOf(variances, parts, size);
  const products = parts.map((part) => product(inverse, part, size));
  const information = products.map((one) =>
    products.map((other) => traceOfProduct(one, other, size) / 2),
  );
  const root = information.map((row, k) => Math.sqrt(row[k] ?? 0));
  // Scaled to ones on the diagonal, so that a small share is small whatever the units.
  const scaled = (ridge: number): Float64Array =>
    Float64Array.from({ length: count * count }, (_, place) => {
      const [i, j] = [Math.floor(place / count), place % count];
      const value = (information[i]?.[j] ?? 0) / ((root[i] ?? 1) * (root[j] ?? 1));
      return i === j ? 1 + ridge : Number.isFinite(value) ? value : 0;
    });
  const ridged = inverseOfPositiveDefinite(scaled(1e-9), count);
  const inseparable = variances.map(
    (_, k) =>
      (root[k] ?? 0) === 0 ||
      ridged === null ||
      1 / (ridged[k * count + k] ?? 1) < LEAST_OWN_INFORMATION,
  );
  if (ridged === null || inseparable.includes(true)) return { covariances: null, inseparable };
  const covariances = information.map((_, i) =>
    information.map((__, j) => (ridged[i * count + j] ?? 0) / ((root[i] ?? 1) * (root[j] ?? 1))),
  );
  return { covariances, inseparable };
}

import type {
  Agreement,
  ConfusionTable,
  PairAgreement,
  RatioPlot,
  Sensitivity,
  Statistic,
} from '../model/agreement.js';

export interface OwnAgreement {
  /** The pairs that the observer is one of, as a. */
  readonly byPair: readonly PairAgreement[];
  readonly ratios: Agreement['observers'];
}

/**
 * What one observer may see of the agreement: their own, and nobody else's.
 *
 * @param person an id; where several covered a place together their ids are joined by `+`, and each of
 * them is one of the pair
 */
export function ownAgreement({ byPair, observers }: Agreement, person: string): OwnAgreement {
  const isOwn = (observer: string): boolean => observer.split('+').includes(person);
  return {
    byPair: byPair.flatMap((pair) => {
      if (isOwn(pair.a)) return [pair];
      return isOwn(pair.b) ? [turnedRound(pair)] : [];
    }),
    ratios: observers.filter(({ observer }) => isOwn(observer)),
  };
}

/** The same pair with a and b changed over. */
function turnedRound(pair: PairAgreement): PairAgreement {
  return {
    ...pair,
    a: pair.b,
    b: pair.a,
    ratios: ratiosTurned(pair.ratios),
    confusion: confusionTurned(pair.confusion),
    sensitivities: pair.sensitivities.map((each): Sensitivity => ({
      ...each,
      byA: each.byB,
      byB: each.byA,
      ofA: each.ofB,
      ofB: each.ofA,
    })),
  };
}

function ratiosTurned({ points, meanRatio, lower, upper }: RatioPlot): RatioPlot {
  return {
    points: points.map((point) => ({
      ...point,
      a: point.b,
      b: point.a,
      ratio: rounded(point.b / point.a),
    })),
    meanRatio: inverse(meanRatio),
    lower: inverse(upper),
    upper: inverse(lower),
  };
}

function inverse({ value, low, high, n }: Statistic): Statistic {
  const of = (each: number | null): number | null => (each === null ? null : rounded(1 / each));
  return { value: of(value), low: of(high), high: of(low), n };
}

function confusionTurned({ taxa, entries }: ConfusionTable): ConfusionTable {
  const keyOf = (name: string | null): string => name ?? '';
  return {
    taxa,
    entries: entries
      .map(({ a, b, number }) => ({ a: b, b: a, number }))
      .sort((one, other) =>
        `${keyOf(one.a)}\n${keyOf(one.b)}` < `${keyOf(other.a)}\n${keyOf(other.b)}` ? -1 : 1,
      ),
  };
}

function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

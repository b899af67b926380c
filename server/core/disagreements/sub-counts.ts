import type { Look } from '../align/looks.js';
import { linesInGroup, countsAllOf, type ComparedPair } from '../compare/compare-cell.js';
import { countingErrorOf } from '../compare/counting-error.js';
import { pairingBalance, type Stock } from '../compare/pairing-balance.js';
import type { Disagreement } from '../model/result.js';
import { say, type Said, type Saying } from '../model/saying.js';
import { numberOf } from '../model/quantity.js';
import type { TallyLine } from '../model/snapshot.js';
import { lookAlikesFrom } from '../taxa/candidate-set.js';
import { describe, letStand, taxa, where, type GroupInQuestion } from './about-group.js';
import { severityOfSpread } from './severity.js';

/** A way of dividing birds in two that observers note beside the number. */
interface Division {
  readonly name: 'sex' | 'age';
  readonly one: 'male' | 'adult';
  readonly other: 'female' | 'immature';
  /** The sentence of a disagreement. */
  readonly told: (values: SubCountValues) => Saying;
}

type SubCountValues = Readonly<
  Record<'a' | 'aOne' | 'aOther' | 'b' | 'bOne' | 'bOther' | 'taxa' | 'where' | 'birds', Said>
>;

const DIVISIONS: readonly Division[] = [
  {
    name: 'sex',
    one: 'male',
    other: 'female',
    told: (values) =>
      say(
        '{a} counted {aOne} male and {aOther} female {taxa} {where} and {b} {bOne} and {bOther}: {birds} sexed differently, more than chance and counting error explain.',
        values,
      ),
  },
  {
    name: 'age',
    one: 'adult',
    other: 'immature',
    told: (values) =>
      say(
        '{a} counted {aOne} adult and {aOther} immature {taxa} {where} and {b} {bOne} and {bOther}: {birds} aged differently, more than chance and counting error explain.',
        values,
      ),
  },
];

/**
 * Sex and age sub-counts of independent observers that differ beyond chance and counting error
 * (method section 3.4). Their birds are paired as identifications are: so many of the one kind, of
 * the other, and of either where none was noted. Birds at stake are those paired with the other
 * kind. The compiled count has no sexes or ages, so this is never more than questioned.
 */
export function subCountsOf(question: GroupInQuestion): Disagreement[] {
  return DIVISIONS.flatMap((division) => {
    const worst = worstPair(question, division);
    if (worst === null) return [];
    const { pair, a, b, birds } = worst;
    const { words } = question;
    const text = division.told({
      a: words.observer(pair.a),
      aOne: words.number(a.one),
      aOther: words.number(a.other),
      b: words.observer(pair.b),
      bOne: words.number(b.one),
      bOther: words.number(b.other),
      taxa: taxa(question),
      where: where(question),
      birds: words.birds(birds),
    });
    const told = describe(question, 'sub-counts', 'questioned', birds, [pair.a, pair.b], {
      text,
      proposals: [letStand(question)],
    });
    return [{ ...told, id: `${told.id}:${division.name}` }];
  });
}

/** What a look says of a division of a group's birds. */
interface Divided {
  readonly one: number;
  readonly other: number;
  readonly either: number;
  /** Relative errors of the first two, from counting. */
  readonly errorOfOne: number;
  readonly errorOfOther: number;
}

function worstPair(
  question: GroupInQuestion,
  division: Division,
): { pair: ComparedPair; a: Divided; b: Divided; birds: number } | null {
  const { compared, group, protocol } = question;
  const found = compared.pairs
    .filter((pair) => pair.independent && pair.complete)
    .filter((pair) => [pair.a, pair.b].every((look) => countsAllOf(look, group)))
    .flatMap((pair) => {
      const a = divided(pair.a, question, division);
      const b = divided(pair.b, question, division);
      if (a === null || b === null) return [];
      if (severityOfSpread(shareSpread(a, b), protocol) === 'note') return [];
      return [{ pair, a, b, birds: differently(a, b, division) }];
    })
    .filter(({ birds }) => birds > 0);
  return found.reduce<(typeof found)[number] | null>(
    (worst, each) => (each.birds > (worst?.birds ?? 0) ? each : worst),
    null,
  );
}

/** `null` where the look divides none of its birds. */
function divided(
  look: Look,
  { group, protocol }: GroupInQuestion,
  division: Division,
): Divided | null {
  const lines = linesInGroup(look, group).flatMap((line) => line.sources);
  const sumOf = (birds: (line: TallyLine) => number): number =>
    lines.reduce((sum, line) => sum + birds(line), 0);
  const one = sumOf((line) => line[division.one] ?? 0);
  const other = sumOf((line) => line[division.other] ?? 0);
  if (one + other === 0) return null;
  const errorOf = (part: 'one' | 'other', total: number): number =>
    Math.sqrt(
      sumOf((line) => {
        const birds = line[division[part]] ?? 0;
        return (birds * countingErrorOf(birds, line.method, protocol)) ** 2;
      }),
    ) / Math.max(total, 1);
  return {
    one,
    other,
    either: sumOf((line) =>
      Math.max(
        0,
        (numberOf(line.quantity) ?? 0) - (line[division.one] ?? 0) - (line[division.other] ?? 0),
      ),
    ),
    errorOfOne: errorOf('one', one),
    errorOfOther: errorOf('other', other),
  };
}

/**
 * How far apart the shares are, in standard deviations: the ln odds ratio, half a bird added to each
 * number (Woolf 1955, Ann. Hum. Genet. 19:251; Haldane 1956, ibid. 20:309), over its sampling error
 * and the counting error of the four numbers. The same birds were sexed, not two samples of them, so
 * it errs on the side of silence.
 */
function shareSpread(a: Divided, b: Divided): number {
  const half = (number: number): number => number + 0.5;
  const logOdds = (each: Divided): number => Math.log(half(each.one) / half(each.other));
  const variance = (each: Divided): number =>
    1 / half(each.one) + 1 / half(each.other) + each.errorOfOne ** 2 + each.errorOfOther ** 2;
  return (logOdds(a) - logOdds(b)) / Math.sqrt(variance(a) + variance(b));
}

/** Birds that the best pairing pairs with the other kind. */
function differently(a: Divided, b: Divided, { one, other }: Division): number {
  const stock = (each: Divided): Stock[] => [
    { candidates: [one], number: each.one },
    { candidates: [other], number: each.other },
    { candidates: [one, other].sort(), number: each.either },
  ];
  return pairingBalance(stock(a), stock(b), lookAlikesFrom([[one, other]])).differently;
}

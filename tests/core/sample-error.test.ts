import { describe, expect, it } from 'vitest';
import { countingErrorOf, varianceOf } from '../../server/core/compare/counting-error.js';
import { inEnglish } from '../../server/core/model/saying.js';
import { withSampleErrors } from '../../server/core/compare/sample-error.js';
import { fitDirichletMultinomial } from '../../server/core/math/dirichlet-multinomial.js';
import { logGamma } from '../../server/core/math/gamma.js';
import type { ScanSample, Snapshot, TallyLine } from '../../server/core/model/snapshot.js';
import { reconcile } from '../../server/core/reconcile.js';
import { parseTaxon } from '../../server/core/taxa/parse-taxon.js';
import { HAIR_EYE_COLOUR } from '../published/dirichlet-multinomial-hair-eye-colour.js';
import { expectRelative } from '../support/expect-relative.js';
import { aCount, aProtocol, aTally, type ShortLine } from './a-count.js';

describe('fitDirichletMultinomial', () => {
  it('agrees with VGAM and scipy on hair and eye colour', () => {
    const { counts, expected } = HAIR_EYE_COLOUR;
    const { shares, alikeness } = fitDirichletMultinomial(counts);
    expected.shares.forEach((share, k) => expectRelative(shares[k] ?? NaN, share, 1e-6));
    expectRelative(alikeness, expected.overdispersion, 1e-6);
    const precision = 1 / alikeness - 1;
    expectRelative(precision, expected.alphaSum, 1e-6);
    const alphas = shares.map((share) => precision * share);
    expected.alpha.forEach((alpha, k) => expectRelative(alphas[k] ?? NaN, alpha, 1e-6));
    const add = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0);
    const logLikelihood = (at: readonly number[]): number =>
      add(
        counts.map(
          (row) =>
            logGamma(add(at)) -
            logGamma(add(at) + add(row)) +
            add(at.map((alpha, k) => logGamma(alpha + (row[k] ?? NaN)) - logGamma(alpha))),
        ),
      );
    const constant = add(
      counts.map((row) => logGamma(add(row) + 1) - add(row.map((x) => logGamma(x + 1)))),
    );
    expectRelative(logLikelihood(alphas), expected.logLikelihoodWithoutConstant, 1e-9);
    expectRelative(logLikelihood(alphas) + constant, expected.logLikelihood, 1e-9);
    expectRelative(logLikelihood([1, 1, 1, 1]) + constant, expected.logLikelihoodAtAllOne, 1e-9);
  });

  it('pools samples that differ no more than multinomial ones', () => {
    const pooled = { shares: [0.25, 0.75], alikeness: 0 };
    expect(fitDirichletMultinomial([[10, 30]])).toEqual(pooled);
    expect(
      fitDirichletMultinomial([
        [10, 30],
        [5, 15],
      ]),
    ).toEqual(pooled);
  });

  it('finds birds of one sample as alike as can be where each has one kind only', () => {
    const { alikeness } = fitDirichletMultinomial([
      [40, 0],
      [0, 40],
      [40, 0],
      [0, 40],
    ]);
    expect(alikeness).toBeGreaterThan(0.9);
  });
});

const sample = (raft: string, name: string, taxon: string, number: number): ScanSample => {
  const parsed = parseTaxon(taxon);
  if (!parsed.ok) throw new Error(inEnglish(parsed.problem));
  return { raft, sample: name, candidates: parsed.candidates, number };
};

const RAFT: readonly ShortLine[] = [
  ['Greater Scaup', 1200, { method: 'sample', flock: 'raft A' }],
  ['Lesser Scaup', 800, { method: 'sample', flock: 'raft A' }],
  ['Redhead', 300, { method: 'sample', flock: 'raft B' }],
  ['Mallard', 40],
];

function counted(samples: readonly ScanSample[]): Snapshot {
  return { ...aCount([aTally('o1', RAFT)]), samples };
}

function lineOf(snapshot: Snapshot, id: string): TallyLine {
  const line = withSampleErrors(snapshot, aProtocol())
    .tallies.flatMap(({ lines }) => lines)
    .find((each) => each.id === id);
  if (line === undefined) throw new Error(`no line ${id}`);
  return line;
}

const errorOf = (snapshot: Snapshot, id: string): number => {
  const line = lineOf(snapshot, id);
  const number = line.quantity.kind === 'exact' ? line.quantity.number : NaN;
  return Math.sqrt(varianceOf(line, aProtocol())) / number;
};

describe('the error of proportion samples', () => {
  it('is block error of the total and multinomial error of the share', () => {
    const samples = [
      sample('raft A', '1', 'Greater Scaup', 60),
      sample('raft A', '1', 'Lesser Scaup', 40),
    ];
    // Greater scaup: share .6 of 100, √(.4 / (.6 · 100)) = .0816; blocks .2; both √(.04 + .00667 + .000267).
    expect(errorOf(counted(samples), 't-o1:1')).toBeCloseTo(
      Math.sqrt(0.04 + 0.4 / 60 + 0.04 * (0.4 / 60)),
      12,
    );
    // Lesser scaup: share .4, √(.6 / (.4 · 100)).
    expect(errorOf(counted(samples), 't-o1:2')).toBeCloseTo(
      Math.sqrt(0.04 + 0.6 / 40 + 0.04 * (0.6 / 40)),
      12,
    );
  });

  it('has the error of the total as it was counted, by the protocol’s table', () => {
    const samples = [
      sample('raft A', '1', 'Greater Scaup', 60),
      sample('raft A', '1', 'Lesser Scaup', 40),
    ];
    // 2,000 birds one by one 10 %, guessed 50 % (method.md 3.3, common practice); the share as above.
    for (const [totalMethod, cv] of [
      ['one-by-one', 0.1],
      ['block', 0.2],
      ['guess', 0.5],
    ] as const) {
      const raft = RAFT.map(([taxon, number, more = {}]): ShortLine =>
        more.flock === 'raft A' ? [taxon, number, { ...more, totalMethod }] : [taxon, number, more],
      );
      const snapshot = { ...aCount([aTally('o1', raft)]), samples };
      expect(errorOf(snapshot, 't-o1:1')).toBeCloseTo(
        Math.sqrt(cv ** 2 + 0.4 / 60 + cv ** 2 * (0.4 / 60)),
        12,
      );
    }
  });

  it('is larger where several small counts differ more than chance lets them', () => {
    const alike = ['1', '2', '3', '4'].flatMap((name) => [
      sample('raft A', name, 'Greater Scaup', 15),
      sample('raft A', name, 'Lesser Scaup', 10),
    ]);
    const apart = [25, 5, 24, 6].flatMap((number, k) => [
      sample('raft A', String(k), 'Greater Scaup', number),
      sample('raft A', String(k), 'Lesser Scaup', 25 - number),
    ]);
    // The same 60 of 100: alike, as one sample; apart, alikeness ρ of birds in a small count of 25
    // makes the variance of the share 1 + 24 ρ times as large.
    const one = Math.sqrt(0.04 + 0.4 / 60 + 0.04 * (0.4 / 60));
    expect(errorOf(counted(alike), 't-o1:1')).toBeCloseTo(one, 12);
    const { alikeness } = fitDirichletMultinomial([
      [25, 0],
      [5, 20],
      [24, 1],
      [6, 19],
    ]);
    const share = (0.4 / 60) * (1 + 24 * alikeness);
    expect(alikeness).toBeGreaterThan(0.2);
    expect(errorOf(counted(apart), 't-o1:1')).toBeCloseTo(
      Math.sqrt(0.04 + share + 0.04 * share),
      12,
    );
  });

  it('is that of the tally that the samples name, where two tallies have the same label', () => {
    const both = aCount([aTally('o1', RAFT), aTally('o2', RAFT)]);
    const samples = [
      sample('raft A', '1', 'Greater Scaup', 60),
      sample('raft A', '1', 'Lesser Scaup', 40),
    ];
    const expected = Math.sqrt(0.04 + 0.4 / 60 + 0.04 * (0.4 / 60));
    const named = { ...both, samples: samples.map((each) => ({ ...each, tally: 't-o2' })) };
    expect(errorOf(named, 't-o2:1')).toBeCloseTo(expected, 12);
    expect(errorOf(named, 't-o1:1')).toBe(countingErrorOf(1200, 'sample', aProtocol()));
    expect(errorOf({ ...both, samples }, 't-o2:1')).toBe(
      countingErrorOf(1200, 'sample', aProtocol()),
    );
  });

  it('has no part for the share where all scanned birds are of the line', () => {
    expect(errorOf(counted([sample('t-o1:3', '1', 'Redhead', 50)]), 't-o1:3')).toBeCloseTo(0.2, 12);
  });

  it('takes a share of which no bird was scanned as of half a bird', () => {
    const samples = [sample('raft A', '1', 'Lesser Scaup', 50)];
    const share = (1 - 0.01) / (0.01 * 50);
    expect(errorOf(counted(samples), 't-o1:1')).toBeCloseTo(
      Math.sqrt(0.04 + share + 0.04 * share),
      12,
    );
  });

  it('stays what the protocol says without samples of the raft, and for other methods', () => {
    const samples = [
      sample('raft A', '1', 'Greater Scaup', 60),
      sample('t-o1:4', '1', 'Mallard', 3),
    ];
    const protocol = aProtocol();
    expect(errorOf(counted(samples), 't-o1:3')).toBe(countingErrorOf(300, 'sample', protocol));
    expect(errorOf(counted(samples), 't-o1:4')).toBe(countingErrorOf(40, 'one-by-one', protocol));
    expect(withSampleErrors(counted([]), protocol).tallies[0]?.lines[0]).not.toHaveProperty(
      'sampleError',
    );
  });

  it('widens the interval of the compiled line', () => {
    const few = [
      sample('raft A', '1', 'Greater Scaup', 3),
      sample('raft A', '1', 'Lesser Scaup', 2),
    ];
    const [plain, sampled] = [counted([]), counted(few)].map((snapshot) =>
      reconcile(snapshot, [], aProtocol()).compiled.find(({ taxon }) => taxon === 'Aythya marila'),
    );
    expect(sampled?.number).toBe(plain?.number);
    expect(sampled?.low).toBeLessThan(plain?.low ?? 0);
    expect(sampled?.high).toBeGreaterThan(plain?.high ?? Infinity);
  });
});

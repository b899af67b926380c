import { describe, expect, it } from 'vitest';
import { intervalOf, plainIntervalOf } from '../../../server/core/consensus/interval.js';
import { reconcile } from '../../../server/core/reconcile.js';
import { checkTruth } from '../../../server/core/score/check-truth.js';
import { scoreCount } from '../../../server/core/score/score.js';
import type { Truth } from '../../../server/core/score/truth.js';
import { aCount, aProtocol, aTally } from '../a-count.js';

/*
 * A count small enough to work by hand. In s1 two observers: 10 Mallards both; 100 and 104 coots;
 * 30 Redheads that o2 took for Ring-necked Ducks; a grebe that o1 overlooked. In s2 one observer,
 * who has 7 of 8 Mallards.
 */
const snapshot = aCount([
  aTally('o1', [
    ['Anas platyrhynchos', 10],
    ['Fulica americana', 100],
    ['Aythya americana', 30],
  ]),
  aTally('o2', [
    ['Anas platyrhynchos', 10],
    ['Fulica americana', 104],
    ['Aythya collaris', 30],
    ['Podiceps auritus', 1],
  ]),
  aTally('o1', [['Anas platyrhynchos', 7]], { id: 't-o1-s2', sections: ['s2'] }),
]);

const truth: Truth = {
  total: {
    'Anas platyrhynchos': 18,
    'Aythya americana': 30,
    'Fulica americana': 99,
    'Podiceps auritus': 1,
  },
  sections: {
    s1: {
      'Anas platyrhynchos': 10,
      'Aythya americana': 30,
      'Fulica americana': 99,
      'Podiceps auritus': 1,
    },
    s2: { 'Anas platyrhynchos': 8 },
  },
  flyingThrough: {},
  toBeSeen: null,
  found: null,
  links: [],
  flocks: null,
  planted: [
    {
      kind: 'misidentified',
      observer: 'o2',
      section: 's1',
      species: 'Aythya americana',
      birds: 30,
      lines: ['t-o2:3'],
      against: ['t-o1:3'],
      contradicted: 30,
    },
    {
      kind: 'misidentified',
      observer: 'o1',
      section: 's2',
      species: 'Anas platyrhynchos',
      birds: 1,
      lines: ['t-o1-s2:1'],
      against: [],
      contradicted: 0,
    },
    {
      kind: 'overlooked',
      observer: 'o1',
      section: 's1',
      species: 'Podiceps auritus',
      birds: 1,
      lines: [],
      against: ['t-o2:4'],
      contradicted: 1,
    },
  ],
};

const protocol = aProtocol({ rule: 'mean' });
const score = scoreCount(snapshot, protocol, reconcile(snapshot, [], protocol), truth);
const groupOf = (taxon: string) =>
  score.groups.find(({ cell, taxa }) => cell.startsWith('s1') && taxa.includes(taxon));

describe('the compiled count against the truth', () => {
  it('puts species together that the compiled count cannot tell apart', () => {
    expect(score.compiled.taxa).toEqual([
      { taxon: 'Anas platyrhynchos', species: ['Anas platyrhynchos'], truth: 18, compiled: 17 },
      {
        taxon: 'Aythya americana/collaris',
        species: ['Aythya americana', 'Aythya collaris'],
        truth: 30,
        compiled: 30,
      },
      { taxon: 'Fulica americana', species: ['Fulica americana'], truth: 99, compiled: 102 },
      { taxon: 'Podiceps auritus', species: ['Podiceps auritus'], truth: 1, compiled: 1 },
    ]);
  });

  it('has the bias and root mean square of −1, 0, 3 and 0 birds', () => {
    expect(score.compiled).toMatchObject({ truth: 148, compiled: 150, bias: 0.5 });
    expect(score.compiled.rmse).toBeCloseTo(Math.sqrt(10 / 4), 12);
  });

  it('has each species between its at least and its at most', () => {
    expect(score.compiled.species.find(({ species }) => species === 'Aythya americana')).toEqual({
      species: 'Aythya americana',
      truth: 30,
      atLeast: 0,
      atMost: 30,
    });
  });
});

describe('groups against the birds that were there to be seen', () => {
  it('covers 99 coots at 80 and 95 %, not at 50 %', () => {
    // Mean 102. Variance of ln for 5 %: ln(1.0025) = 0.0024969, halved for the mean of two. Q is
    // ln(1.04)² / (2 · 0.0024969) = 0.308, under the median of F(1, 8), so τ² is 0. A deviation of
    // 0.035333 and Student's t with 8 degrees of freedom (printed tables: 0.706, 1.397, 2.306):
    // 102 · exp(∓ 0.024956 …).
    const coots = groupOf('Fulica americana');
    expect(coots).toMatchObject({ ground: 'several', truth: 99, number: 102, counts: [100, 104] });
    const lows = coots?.intervals.map(({ low }) => low) ?? [];
    const highs = coots?.intervals.map(({ high }) => high) ?? [];
    expect(lows[0]).toBeCloseTo(99.4857, 3);
    expect(highs[0]).toBeCloseTo(104.578, 2);
    expect(lows[1]).toBeCloseTo(97.088, 2);
    expect(lows[2]).toBeCloseTo(94.02, 2);
    expect(coots?.covered).toEqual([false, true, true]);
    // Rounded outward, 50 % reaches from 99 to 105.
    expect(coots?.coveredRounded).toEqual([true, true, true]);
  });

  it('judges pairs of names together, and keeps small exact counts and single counts apart', () => {
    expect(groupOf('Aythya collaris')).toMatchObject({ truth: 30, number: 30, ground: 'several' });
    expect(groupOf('Anas platyrhynchos')).toMatchObject({
      ground: 'exact',
      covered: [true, true, true],
    });
    expect(groupOf('Podiceps auritus')).toMatchObject({ ground: 'single', truth: 1, number: 1 });
    expect(score.groups.find(({ cell }) => cell.startsWith('s2'))).toMatchObject({
      ground: 'single',
      truth: 8,
      number: 7,
      covered: [false, false, false],
    });
  });

  it('adds coverage up by what groups rest on', () => {
    expect(score.coverage).toEqual([
      // Coots 3 too many, pochards right.
      {
        ground: 'several',
        groups: 2,
        covered: [1, 2, 2],
        coveredRounded: [2, 2, 2],
        bias: 1.5,
        rmse: Math.sqrt(4.5),
      },
      {
        ground: 'exact',
        groups: 1,
        covered: [1, 1, 1],
        coveredRounded: [1, 1, 1],
        bias: 0,
        rmse: 0,
      },
      // The grebe right, a Mallard short.
      {
        ground: 'single',
        groups: 2,
        covered: [1, 1, 1],
        coveredRounded: [1, 1, 1],
        bias: -0.5,
        rmse: Math.sqrt(0.5),
      },
    ]);
  });
});

describe('planted errors against disagreements', () => {
  const of = (kind: string, fewest: number) =>
    score.planted?.find((each) => each.kind === kind && each.fewestBirds === fewest);

  it('finds the 30 ducks named differently, and leaves out what nobody speaks against', () => {
    expect(of('misidentified', 20)).toEqual({
      kind: 'misidentified',
      fewestBirds: 20,
      planted: 1,
      foundOfAll: 1,
      findable: 1,
      found: 1,
      shown: 1,
      shownRight: 1,
    });
    expect(of('misidentified', 1)).toMatchObject({
      planted: 2,
      foundOfAll: 1,
      findable: 1,
      found: 1,
    });
  });

  it('finds the grebe that one observer overlooked', () => {
    expect(of('overlooked', 1)).toMatchObject({
      findable: 1,
      found: 1,
      shown: 1,
      shownRight: 1,
    });
  });

  it('judges what is found by the birds that others contradict, and of all by all birds', () => {
    // 70 birds, of which the other tally contradicts 30, the birds at stake: under half of 70.
    const [pochards, ...others] = truth.planted ?? [];
    if (pochards === undefined) throw new Error('the truth has planted errors');
    const more = { ...truth, planted: [{ ...pochards, birds: 70 }, ...others] };
    const { planted } = scoreCount(snapshot, protocol, reconcile(snapshot, [], protocol), more);
    expect(planted?.[1]).toMatchObject({ planted: 1, foundOfAll: 0, findable: 1, found: 1 });
  });

  it('does not count a disagreement that rests on no error', () => {
    const without = scoreCount(snapshot, protocol, reconcile(snapshot, [], protocol), {
      ...truth,
      planted: [],
    });
    expect(without.planted?.[0]).toMatchObject({ planted: 0, found: 0, shown: 1, shownRight: 0 });
  });

  it('says nothing of errors where the truth does not name them', () => {
    const unknown = { ...truth, planted: null };
    expect(
      scoreCount(snapshot, protocol, reconcile(snapshot, [], protocol), unknown).planted,
    ).toBeNull();
  });
});

describe('intervals at other levels', () => {
  const units = [{ looks: [], total: 100, highest: 100, logVariance: 0.04 }];

  it('reach z of the level, 1.96 by default (tables of the normal distribution)', () => {
    expect(plainIntervalOf(100, units, 0).high).toBeCloseTo(100 * Math.exp(1.959964 * 0.2), 3);
    expect(plainIntervalOf(100, units, 0, 0.5).high).toBeCloseTo(100 * Math.exp(0.67449 * 0.2), 3);
    expect(plainIntervalOf(100, units, 0, 0.8).low).toBeCloseTo(100 * Math.exp(-1.281552 * 0.2), 3);
  });

  it('are rounded outward to whole birds for the result', () => {
    expect(intervalOf(100, units, 0, 0.5)).toEqual({ low: 87, high: 115 });
  });
});

describe('truth.json', () => {
  it('is refused with every fault at once', () => {
    const value = {
      total: { 'Anas platyrhynchus': 3, 'Fulica americana': -1 },
      sections: { s9: {} },
      links: [{ kind: 'overlap', lines: ['t-o1:1', 'nowhere'] }],
      planted: [
        {
          kind: 'misread',
          observer: 'o1',
          section: 's1',
          species: 'x',
          birds: 1,
          lines: [],
          against: [],
        },
      ],
    };
    const checked = checkTruth({ file: 'truth.json', value }, snapshot);
    expect(checked.ok).toBe(false);
    const columns = checked.ok ? [] : checked.faults.map(({ column }) => column);
    expect(columns).toEqual([
      'truth.total.Anas platyrhynchus',
      'truth.total.Fulica americana',
      'truth.sections.s9',
      'truth.planted[0].kind',
      'truth.links[0].lines',
    ]);
  });

  it('needs no more than total, sections and links', () => {
    const { total, sections, links } = truth;
    expect(checkTruth({ file: 'truth.json', value: { total, sections, links } }, snapshot)).toEqual(
      {
        ok: true,
        value: { ...truth, planted: null },
      },
    );
  });

  it('may not be empty', () => {
    expect(checkTruth({ file: 'truth.json', value: [] }, snapshot).ok).toBe(false);
  });
});

import { describe, expect, it } from 'vitest';
import type { Link, Sighting } from '../../../server/core/model/result.js';
import type { Snapshot } from '../../../server/core/model/snapshot.js';
import { judgeLinks } from '../../../server/core/score/judge-links.js';
import { scoreLinks } from '../../../server/core/score/link-score.js';
import type { TrueFlock, TrueLink } from '../../../server/core/score/truth.js';
import { aCount, aTally } from '../a-count.js';

/*
 * Counts small enough to judge by hand. Tally `a` and `b` are of section s1, `c` of s2, `d` of s3; a
 * line `a:1` is the first of tally `a`.
 */
const scaup = 'Aythya marila';
const tallyOf = (id: string, section: string, flocks: readonly number[]) =>
  aTally(
    `o${id}`,
    flocks.map((number) => [scaup, number]),
    { id, sections: [section] },
  );

const count = (flocks: Partial<Record<'a' | 'b' | 'c' | 'd', readonly number[]>>): Snapshot =>
  aCount([
    tallyOf('a', 's1', flocks.a ?? []),
    tallyOf('b', 's1', flocks.b ?? []),
    tallyOf('c', 's2', flocks.c ?? []),
    tallyOf('d', 's3', flocks.d ?? []),
  ]);

const sighting = (lines: readonly string[], number: number): Sighting => ({
  cell: 'any',
  section: 'any',
  lines,
  observers: [],
  taxon: scaup,
  candidates: [scaup],
  number,
  start: null,
  end: null,
  position: null,
});

const link = (
  first: readonly string[],
  second: readonly string[],
  probability: number,
  [inFirst = 40, inSecond = inFirst, birds = Math.min(inFirst, inSecond)]: number[] = [],
): Link => ({
  id: `${first.join('+')}~${second.join('+')}`,
  kind: 'movement',
  lines: [...first, ...second],
  first: sighting(first, inFirst),
  second: sighting(second, inSecond),
  probability,
  birds,
  proposed: probability >= 0.9,
  deducted: false,
  deduction: [],
  ruling: null,
  evidence: [],
});

const flock = (birds: number, lines: readonly string[], inSight = true): TrueFlock => ({
  inSight,
  parts: [{ species: scaup, birds, lines }],
});

const pair = (one: string, other: string, kind: TrueLink['kind'] = 'movement'): TrueLink => ({
  kind,
  lines: [one, other],
});

const score = (links: readonly Link[], truth: readonly TrueFlock[], snapshot: Snapshot) =>
  scoreLinks(judgeLinks(links, { flocks: truth, links: [] }, snapshot));

describe('links against the truth', () => {
  it('takes a flock tallied by two observers in one section and one in another for one link', () => {
    const snapshot = count({ a: [40], b: [41], c: [40] });
    const links = [link(['a:1', 'b:1'], ['c:1'], 0.95)];
    const expected = {
      trueLinks: 1,
      shown: 1,
      shownRight: 1,
      shownPartly: 0,
      shownFound: 1,
      proposed: 1,
      proposedRight: 1,
      proposedPartly: 0,
      proposedFound: 1,
      birdsRight: 40,
      birdsWrong: 0,
      trueBirds: 40,
      birdsFound: 40,
    };
    expect(score(links, [flock(40, ['a:1', 'b:1', 'c:1'])], snapshot)).toMatchObject(expected);
    // The same where only links are known: two pairs of lines, one flock.
    const pairs = [pair('a:1', 'c:1', 'overlap'), pair('b:1', 'c:1', 'overlap')];
    const judged = judgeLinks(links, { flocks: null, links: pairs }, snapshot);
    expect(scoreLinks(judged)).toMatchObject({
      ...expected,
      byKind: { overlap: { trueLinks: 1 } },
    });
  });

  it('has two links for a flock in three sections, whichever of its lines are joined', () => {
    const links = [link(['a:1'], ['c:1'], 0.99), link(['d:1'], ['c:1'], 0.5)];
    const truth = [flock(40, ['a:1', 'c:1', 'd:1'])];
    const found = score(links, truth, count({ a: [40], c: [40], d: [40] }));
    expect(found).toMatchObject({ trueLinks: 2, shownRight: 2, shownFound: 2, proposedFound: 1 });
  });

  it('counts wrong links, and the birds that they would take off', () => {
    const truth = [flock(40, ['a:1', 'c:1']), flock(38, ['c:2'])];
    const snapshot = count({ a: [40], c: [40, 38] });
    const found = score([link(['a:1'], ['c:2'], 0.9, [40, 38])], truth, snapshot);
    expect(found).toMatchObject({ shownRight: 0, proposed: 1, birdsRight: 0, birdsWrong: 38 });
    expect(found).toMatchObject({ trueLinks: 1, proposedFound: 0, birdsFound: 0 });
  });

  it('has a second link between the same places find nothing, and take birds off wrongly', () => {
    const truth = [flock(40, ['a:1', 'b:1', 'c:1'])];
    const links = [link(['a:1'], ['c:1'], 0.99), link(['c:1'], ['b:1'], 0.95)];
    expect(score(links, truth, count({ a: [40], b: [40], c: [40] }))).toMatchObject({
      trueLinks: 1,
      proposedRight: 2,
      proposedFound: 1,
      birdsRight: 40,
      birdsWrong: 40,
    });
  });

  it('does not take a link for right where half of its records are of another flock', () => {
    const truth = [flock(40, ['a:1', 'c:1']), flock(60, ['b:1'])];
    const snapshot = count({ a: [40], b: [60], c: [40] });
    const found = score([link(['a:1', 'b:1'], ['c:1'], 0.95, [50, 40])], truth, snapshot);
    expect(found).toMatchObject({ shownRight: 0, shownPartly: 1, proposedPartly: 1 });
    expect(found).toMatchObject({ shownFound: 0, birdsRight: 40, birdsWrong: 0 });
  });

  it('takes different species of one mixed flock for nothing that was counted twice', () => {
    const truth: TrueFlock[] = [
      {
        inSight: true,
        parts: [
          { species: scaup, birds: 30, lines: ['a:1'] },
          { species: 'Aythya affinis', birds: 30, lines: ['c:1'] },
        ],
      },
    ];
    const found = score([link(['a:1'], ['c:1'], 0.95)], truth, count({ a: [30], c: [30] }));
    expect(found).toMatchObject({ trueLinks: 0, shownRight: 0 });
  });

  it('tells flocks of ten birds or more, and what links say that they are', () => {
    const truth = [flock(9, ['a:1', 'c:1']), flock(10, ['a:2', 'd:1'])];
    const snapshot = count({ a: [9, 10], c: [9], d: [10] });
    const found = score([link(['a:2'], ['d:1'], 0.9)], truth, snapshot);
    expect(found.large).toEqual({ trueLinks: 1, shownFound: 1, proposedFound: 1 });
    expect(found.byKind.movement).toMatchObject({ trueLinks: 2, proposed: 1, proposedFound: 1 });
    expect(found.byKind.overlap).toMatchObject({ trueLinks: 0, proposed: 0 });
  });
});

describe('links in part', () => {
  // 100 scaup, of which 40 left for s2: one record before, two flocks after.
  const truth = [flock(60, ['a:1']), flock(40, ['a:1', 'c:1'])];
  const snapshot = count({ a: [100], c: [40] });

  it('are right for the part that moved, and take off no more than that', () => {
    const exact = score([link(['a:1'], ['c:1'], 0.95, [100, 40])], truth, snapshot);
    expect(exact).toMatchObject({ trueLinks: 1, proposedFound: 1, trueBirds: 40, birdsRight: 40 });
    const tooMany = score([link(['a:1'], ['c:1'], 0.95, [100, 60, 60])], truth, snapshot);
    expect(tooMany).toMatchObject({ birdsRight: 60, birdsWrong: 0 });
  });

  it('take off birds wrongly that were not in both places', () => {
    // The other way round: 60 that stayed are in both records of s1 and s3, 40 in one.
    const both = [flock(60, ['a:1', 'd:1']), flock(40, ['a:1']), flock(30, ['d:1'])];
    const places = count({ a: [100], d: [90] });
    const found = score([link(['a:1'], ['d:1'], 0.95, [100, 90])], both, places);
    expect(found).toMatchObject({ trueBirds: 60, birdsRight: 60, birdsWrong: 30 });
  });

  it('are one link where the parts are together in every record', () => {
    const together = [flock(60, ['a:1', 'c:1']), flock(40, ['a:1', 'c:1'])];
    const found = score([], together, count({ a: [100], c: [100] }));
    expect(found).toMatchObject({ trueLinks: 1, trueBirds: 100 });
  });

  it('are one for each of the flocks that a total of the section holds', () => {
    const total = [flock(60, ['a:1', 'c:1']), flock(40, ['a:1', 'c:2'])];
    const places = count({ a: [100], c: [60, 40] });
    const found = score([link(['a:1'], ['c:1'], 0.95, [100, 60])], total, places);
    expect(found).toMatchObject({ trueLinks: 2, proposedFound: 1, birdsFound: 60, birdsRight: 60 });
  });
});

describe('reliability', () => {
  it('has the mean of what is said beside how often it is right, by tenths', () => {
    const truth = [flock(40, ['a:1', 'c:1']), flock(40, ['a:2', 'c:2'])];
    const snapshot = count({ a: [40, 40, 40, 40], c: [40, 40, 40, 40] });
    const links = [
      link(['a:1'], ['c:1'], 1),
      link(['a:2'], ['c:2'], 0.92),
      link(['a:3'], ['c:3'], 0.9),
      link(['a:4'], ['c:4'], 0.25),
    ];
    const found = score(links, truth, snapshot);
    expect(found.reliability[9]).toEqual({ from: 0.9, shown: 3, right: 2, said: 0.94 });
    expect(found.reliability[2]).toEqual({ from: 0.2, shown: 1, right: 0, said: 0.25 });
    expect(found.reliability[0]).toEqual({ from: 0, shown: 0, right: 0, said: null });
    // By hand: (|2 − 2.82| + |0 − 0.25|) / 4.
    expect(found.calibrationError).toBeCloseTo(0.2675, 10);
  });

  it('is nothing where no link is shown', () => {
    expect(score([], [], count({})).calibrationError).toBeNull();
  });
});

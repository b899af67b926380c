import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Link, Result } from '../../server/core/model/result.js';
import type { Ruling } from '../../server/core/model/ruling.js';
import type { Snapshot } from '../../server/core/model/snapshot.js';
import { reconcile } from '../../server/core/reconcile.js';
import { aCount, aProtocol, aTally, type ShortLine } from './a-count.js';

/*
 * Property tests of what links take off; no outside source. Counts are of flocks that go from
 * section to section, each with an observer, so that the engine finds links in most of them.
 */

const RUNS = 150;
/** What a flock may be called at each of its stops, alike enough for links. */
const NAMES = [
  ['Aythya affinis', 'Aythya affinis/marila', 'Aythya affinis'],
  ['Aythya affinis/marila', 'Aythya marila', 'Aythya affinis/marila'],
  ['Aythya affinis/marila', 'Aythya affinis/marila', 'Aythya marila'],
  ['Clangula hyemalis', 'Clangula hyemalis', 'Clangula hyemalis'],
];
const MIDDLES = { s1: -79.01, s2: -78.99, s3: -78.97 } as const;
type Section = keyof typeof MIDDLES;

const aFlock = fc.record({
  /** As each of two or three observers calls it. */
  taxa: fc.constantFrom(...NAMES),
  number: fc.integer({ min: 20, max: 900 }),
  change: fc.array(fc.integer({ min: -6, max: 6 }), { minLength: 3, maxLength: 3 }),
  start: fc.integer({ min: 0, max: 60 }),
  way: fc.constantFrom<Section[]>(
    ['s1'],
    ['s1', 's2'],
    ['s2', 's3'],
    ['s1', 's2', 's3'],
    ['s3', 's2'],
  ),
});

/** Flocks that move on every 35 minutes, seen at every stop. */
const movingCount: fc.Arbitrary<Snapshot> = fc
  .array(aFlock, { minLength: 1, maxLength: 5 })
  .map((flocks) => {
    const lines: Record<Section, ShortLine[]> = { s1: [], s2: [], s3: [] };
    for (const { taxa, number, change, start, way } of flocks) {
      way.forEach((section, stop) => {
        const minute = start + stop * 35;
        const time = `2027-01-16T${String(8 + Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}:00-05:00`;
        const seen = Math.round(number * (1 + (change[stop] ?? 0) / 100));
        const position = [MIDDLES[section], 44.01] as const;
        const to = way[stop + 1] ?? null;
        lines[section].push([taxa[stop] ?? '', seen, { time, position, to, method: 'block' }]);
      });
    }
    const count = aCount([
      aTally('o1', lines.s1, { sections: ['s1'] }),
      aTally('o2', lines.s2, { sections: ['s2'] }),
      aTally('o3', lines.s3, { sections: ['s3'] }),
    ]);
    return Object.defineProperty(count, fc.toStringMethod, {
      enumerable: false,
      value: () => JSON.stringify(lines),
    });
  });

const protocol = aProtocol({ rule: 'mean', minimumUnits: 1_000_000 });
const byProposal = { ...protocol, deductLinks: 'proposed' as const };

const rule = (link: Link, kind: 'confirm-link' | 'reject-link'): Ruling => ({
  id: `r-${link.id}`,
  by: 'o4',
  reason: 'For the test',
  target: { kind: 'link', link: link.id },
  decision: { kind },
  basis: null,
});

const takenBy = (link: Pick<Link, 'deduction'>): number =>
  link.deduction.reduce((sum, { number }) => sum + number, 0);

const postedFor = ({ ledger }: Result, link: string, taxon?: string): number =>
  ledger
    .filter((each) => each.to === `double-count/${link}`)
    .filter((each) => taxon === undefined || each.taxon === taxon)
    .reduce((sum, { number }) => sum + number, 0);

const totalOf = ({ compiled }: Result): number =>
  compiled.reduce((sum, { number }) => sum + number, 0);

/** A count with a subset of its links confirmed. */
const someConfirmed = fc
  .tuple(movingCount, fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }))
  .map(([snapshot, picks]) => {
    const before = reconcile(snapshot, [], protocol);
    const chosen = before.links.filter((_, index) => picks[index]);
    const rulings = chosen.map((link) => rule(link, 'confirm-link'));
    return { snapshot, before, rulings, after: reconcile(snapshot, rulings, protocol) };
  });

describe('what links take off', () => {
  it('is whole birds of lines that have them, and each link has its own postings', () => {
    let links = 0;
    fc.assert(
      fc.property(someConfirmed, ({ before, after }) => {
        links += before.links.length;
        for (const link of after.links) {
          for (const { taxon, number } of link.deduction) {
            expect(number).toBeGreaterThan(0);
            expect(postedFor(after, link.id, taxon)).toBe(link.deducted ? number : 0);
          }
          expect(postedFor(after, link.id)).toBe(link.deducted ? takenBy(link) : 0);
          expect(takenBy(link)).toBeLessThanOrEqual(link.birds);
        }
        for (const line of after.compiled) {
          expect(line.number).toBeGreaterThanOrEqual(0);
          expect(line.low).toBeGreaterThanOrEqual(0);
          expect(line.low).toBeLessThanOrEqual(line.number);
          expect(line.high).toBeGreaterThanOrEqual(line.number);
        }
        const taken = after.links.filter(({ deducted }) => deducted).map(takenBy);
        expect(totalOf(after)).toBe(totalOf(before) - taken.reduce((sum, birds) => sum + birds, 0));
      }),
      { numRuns: RUNS },
    );
    // Otherwise the counts would say nothing.
    expect(links).toBeGreaterThan(RUNS / 2);
  });

  it('is what the ledger has once the link is confirmed, and nothing else changes', () => {
    fc.assert(
      fc.property(someConfirmed, ({ snapshot, rulings, after }) => {
        for (const open of after.links.filter(({ deducted }) => !deducted)) {
          const confirmed = reconcile(snapshot, [...rulings, rule(open, 'confirm-link')], protocol);
          const now = confirmed.links.find(({ id }) => id === open.id);
          expect(now?.deduction).toEqual(open.deduction);
          expect(postedFor(confirmed, open.id)).toBe(takenBy(open));
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is given back to the last byte when rulings are withdrawn or all are rejected', () => {
    fc.assert(
      fc.property(someConfirmed, fc.nat(), ({ snapshot, before, rulings, after }, pick) => {
        expect(JSON.stringify(reconcile(snapshot, [], protocol))).toBe(JSON.stringify(before));
        const withdrawn = rulings[pick % Math.max(rulings.length, 1)];
        const without = rulings.filter((each) => each !== withdrawn);
        const less = reconcile(snapshot, without, protocol);
        const again = reconcile(snapshot, rulings, protocol);
        expect(JSON.stringify(again)).toBe(JSON.stringify(after));
        const id = withdrawn?.id.slice(2);
        expect(less.ledger.some(({ to }) => to === `double-count/${id}`)).toBe(false);
        // Rejected is as counted as not ruled.
        const rejected = reconcile(
          snapshot,
          before.links.map((link) => rule(link, 'reject-link')),
          protocol,
        );
        expect(rejected.compiled).toEqual(before.compiled);
        expect(rejected.ledger).toEqual(before.ledger);
      }),
      { numRuns: RUNS },
    );
  });

  it('is the same by the protocol’s threshold as by confirming what is proposed', () => {
    fc.assert(
      fc.property(movingCount, (snapshot) => {
        const automatic = reconcile(snapshot, [], byProposal);
        const proposed = automatic.links.filter((link) => link.proposed);
        const ruled = reconcile(
          snapshot,
          proposed.map((link) => rule(link, 'confirm-link')),
          protocol,
        );
        expect(automatic.compiled).toEqual(ruled.compiled);
        expect(automatic.ledger).toEqual(ruled.ledger);
        // Rejected, it is no longer taken off.
        const [first] = proposed;
        if (first === undefined) return;
        const rejected = reconcile(snapshot, [rule(first, 'reject-link')], byProposal);
        expect(postedFor(rejected, first.id)).toBe(0);
      }),
      { numRuns: RUNS },
    );
  });

  it('counts a flock of three sections once: each link of the chain takes its own', () => {
    const raft = (observer: string, section: Section, number: number, time: string) =>
      aTally(
        observer,
        [
          [
            'Aythya marila',
            number,
            { time: `2027-01-16T${time}:00-05:00`, position: [MIDDLES[section], 44.01] },
          ],
        ],
        { sections: [section] },
      );
    const snapshot = aCount([
      raft('o1', 's1', 400, '08:00'),
      raft('o2', 's2', 400, '08:45'),
      raft('o3', 's3', 400, '09:30'),
    ]);
    const { links } = reconcile(snapshot, [], protocol);
    const result = reconcile(
      snapshot,
      links.map((link) => rule(link, 'confirm-link')),
      protocol,
    );
    expect(result.links).toHaveLength(2);
    expect(result.links.map(takenBy)).toEqual([400, 400]);
    expect(totalOf(result)).toBe(400);
  });
});

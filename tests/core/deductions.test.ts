import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignCells } from '../../server/core/align/cells.js';
import { compareCell } from '../../server/core/compare/compare-cell.js';
import { settleGroup, tau2OfCompared } from '../../server/core/consensus/settle-group.js';
import { flocksOfCell } from '../../server/core/disagreements/cell-flocks.js';
import { Book } from '../../server/core/ledger/book.js';
import { compile } from '../../server/core/ledger/compile.js';
import { compiledCells } from '../../server/core/ledger/compiled-cells.js';
import { contributionOf } from '../../server/core/ledger/contribution.js';
import { deductionsOf } from '../../server/core/ledger/deductions.js';
import type { Sighting } from '../../server/core/model/result.js';
import type { Snapshot } from '../../server/core/model/snapshot.js';
import type { ReconciledCell } from '../../server/core/rulings/reconciled-cell.js';
import { lookAlikesFrom } from '../../server/core/taxa/candidate-set.js';
import { aCount, aProtocol, aTally } from './a-count.js';
import { randomCount } from './random-count.js';

/*
 * Any links among any sightings, likelier and less likely, all of a flock or a part: flocks that
 * split, flocks that joined, and links that contradict each other. No outside source.
 */

const protocol = aProtocol({ rule: 'mean' });
const lookAlikes = lookAlikesFrom(protocol.lookAlikes);

/** Every group as drafted, without rulings. */
function cellsOf(snapshot: Snapshot): ReconciledCell[] {
  return alignCells(snapshot).map((cell) => {
    const compared = compareCell(cell, lookAlikes);
    const tau2 = tau2OfCompared(compared, protocol);
    return {
      compared,
      flocks: flocksOfCell(compared, snapshot, lookAlikes, protocol),
      birdsInConflict: 0,
      witness: null,
      groups: compared.groups.map((group) => {
        const draft = settleGroup(compared, group, protocol, tau2);
        return { group, draft, ruling: null, consensus: draft.consensus, lines: draft.lines };
      }),
    };
  });
}

type Linked = Parameters<typeof deductionsOf>[0][number];

/** Each tally line of birds on the water is a sighting. */
function sightingsOf(cells: readonly ReconciledCell[]): Sighting[] {
  return cells
    .filter(({ compared }) => compared.cell.layer === 'using')
    .flatMap(({ compared }) =>
      compared.cell.looks.flatMap((look) =>
        look.lines.flatMap(({ sources }) =>
          sources.map((line) => ({
            cell: compared.cell.id,
            section: compared.cell.place.join('+'),
            lines: [line.id],
            observers: [],
            taxon: line.written,
            candidates: line.candidates,
            number: line.quantity.kind === 'exact' ? line.quantity.number : 0,
            start: null,
            end: null,
            position: null,
          })),
        ),
      ),
    );
}

function linkOf(first: Sighting, second: Sighting, more: Partial<Linked> = {}): Linked {
  return {
    id: [...first.lines, ...second.lines].join('~'),
    first,
    second,
    probability: 0.95,
    birds: Math.min(first.number, second.number),
    deducted: true,
    ...more,
  };
}

const linkedCount = fc
  .tuple(
    randomCount(),
    fc.array(
      fc.record({
        // Few, so that several links meet in one.
        first: fc.nat({ max: 5 }),
        second: fc.nat({ max: 5 }),
        probability: fc.constantFrom(0.2, 0.6, 0.95),
        part: fc.constantFrom(1, 1, 0.4),
        deducted: fc.constantFrom(true, true, false),
      }),
      { minLength: 5, maxLength: 10 },
    ),
  )
  .map(([snapshot, sketches]) => {
    const cells = cellsOf(snapshot);
    const sightings = sightingsOf(cells);
    const links = new Map<string, Linked>();
    for (const { first, second, probability, part, deducted } of sketches) {
      const one = sightings[first % Math.max(sightings.length, 1)];
      const other = sightings[second % Math.max(sightings.length, 1)];
      if (one === undefined || other === undefined || one.cell === other.cell) continue;
      const birds = Math.round(Math.min(one.number, other.number) * part);
      const link = linkOf(one, other, { probability, birds, deducted });
      links.set(link.id, link);
    }
    return { snapshot, cells, links: [...links.values()] };
  });

const sumOf = (all: readonly { readonly number: number }[]): number =>
  all.reduce((sum, { number }) => sum + number, 0);

/** A one-line sighting's line by those who entered, and by how rounding or a lower bound changed it. */
function shareOf({ cell: id, lines, number }: Sighting, cells: readonly ReconciledCell[]): number {
  const cell = cells.find(({ compared }) => compared.cell.id === id);
  for (const { group, consensus } of cell?.groups ?? []) {
    const keys = group.identifications.map((set) => set.join());
    const totals = (cell?.compared.cell.looks ?? []).flatMap((look) => {
      const own = look.lines.filter(({ candidates }) => keys.includes(candidates.join()));
      const has = own.some(({ sources }) => sources.some((source) => lines.includes(source.id)));
      return consensus.observers.includes(look.observer) ? [{ total: sumOf(own), has }] : [];
    });
    const mean = totals.reduce((sum, { total }) => sum + total, 0) / totals.length;
    const times = totals.filter(({ has }) => has).length;
    if (times === 0 || mean === 0) continue;
    return (((times * number) / totals.length) * consensus.number) / mean;
  }
  return 0;
}

describe('deductions of any links', () => {
  it('take off no more than a line, a first or a second sighting has, and are posted as they are', () => {
    let several = 0;
    fc.assert(
      fc.property(linkedCount, ({ snapshot, cells, links }) => {
        const compiled = compiledCells(cells);
        const byLink = deductionsOf(links, compiled);
        const deducted = links.filter((link) => link.deducted);
        const taken = deducted.flatMap(({ id }) => byLink.get(id) ?? []);
        for (const side of ['first', 'second'] as const) {
          for (const sighting of new Set(deducted.map((link) => link[side]))) {
            const own = deducted.filter((link) => link[side] === sighting);
            if (own.length > 1) several += 1;
            expect(sumOf(own.flatMap(({ id }) => byLink.get(id) ?? []))).toBeLessThanOrEqual(
              sighting.number,
            );
          }
        }
        // Posting refuses what is below 0.
        const book = new Book();
        const raw = compile(snapshot, compiled, [], protocol, new Book());
        const { lines, reported } = compile(snapshot, compiled, taken, protocol, book);
        for (const line of lines) {
          expect(line.low).toBeLessThanOrEqual(line.number);
          expect(line.low).toBeGreaterThanOrEqual(0);
          expect(line.high).toBeGreaterThanOrEqual(line.number);
        }
        for (const { id } of deducted) {
          const posted = book.postings().filter(({ to }) => to === `double-count/${id}`);
          expect(sumOf(posted)).toBe(sumOf(byLink.get(id) ?? []));
        }
        if (raw.reported === reported) {
          const inReported = taken.filter(
            ({ cell }) =>
              cells.find(({ compared }) => compared.cell.id === cell)?.compared.cell.window ===
              reported,
          );
          expect(sumOf(lines)).toBe(sumOf(raw.lines) - sumOf(inReported));
        }
      }),
      { numRuns: 300 },
    );
    expect(several).toBeGreaterThan(30);
  });

  it('take off no more than either sighting contributes to what is compiled', () => {
    let lessThanBirds = 0;
    fc.assert(
      fc.property(linkedCount, ({ cells, links }) => {
        const compiled = compiledCells(cells);
        const byLink = deductionsOf(links, compiled);
        for (const { id, first, second, birds } of links) {
          // From the lines alone: every observer with birds of the group enters a mean.
          const [one, other] = [first, second].map((sighting) => shareOf(sighting, compiled));
          const least = Math.min(one ?? NaN, other ?? NaN);
          if (least < birds) lessThanBirds += 1;
          expect(sumOf(byLink.get(id) ?? [])).toBeLessThanOrEqual(least + 1e-9);
        }
      }),
      { numRuns: 300 },
    );
    expect(lessThanBirds).toBeGreaterThan(30);
  });

  it('of a link not deducted are those that it has once it is', () => {
    fc.assert(
      fc.property(linkedCount, ({ cells, links }) => {
        const compiled = compiledCells(cells);
        const before = deductionsOf(links, compiled);
        for (const open of links.filter(({ deducted }) => !deducted)) {
          const after = deductionsOf(
            links.map((link) => (link === open ? { ...link, deducted: true } : link)),
            compiled,
          );
          expect(after.get(open.id)).toEqual(before.get(open.id));
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('flocks that split and join, worked by hand', () => {
  const [SCAUP, LESSER, REDHEAD] = ['Aythya affinis/marila', 'Aythya affinis', 'Aythya americana'];
  const at = (section: string, observer: string, lines: [string, number][]) =>
    aTally(observer, lines, { sections: [section] });

  it('1,000 that split into 700 and 400 give 1,000 in all, the likelier link first', () => {
    const cells = cellsOf(
      aCount([
        at('s1', 'o1', [[LESSER, 1000]]),
        at('s2', 'o2', [[LESSER, 700]]),
        at('s3', 'o3', [[SCAUP, 400]]),
      ]),
    );
    const [whole, most, rest] = sightingsOf(cells);
    if (!whole || !most || !rest) throw new Error('three sightings');
    const links = [linkOf(whole, most, { probability: 0.93 }), linkOf(whole, rest)];
    const byLink = deductionsOf(links, compiledCells(cells));
    expect(links.map(({ id }) => sumOf(byLink.get(id) ?? []))).toEqual([600, 400]);
  });

  it('300 and 250 that joined are taken off the 500 seen later, and no more than 500', () => {
    const cells = cellsOf(
      aCount([
        at('s1', 'o1', [[LESSER, 300]]),
        at('s3', 'o3', [[LESSER, 250]]),
        at('s2', 'o2', [
          [SCAUP, 500],
          [REDHEAD, 900],
        ]),
      ]),
    );
    const bySection = new Map(
      sightingsOf(cells).map((sighting) => [`${sighting.section} ${sighting.taxon}`, sighting]),
    );
    const [one, other, joined] = ['s1', 's3', 's2'].map((section) =>
      bySection.get(`${section} ${section === 's2' ? SCAUP : LESSER}`),
    );
    if (!one || !other || !joined) throw new Error('three sightings');
    const links = [linkOf(one, joined), linkOf(other, joined, { probability: 0.91 })];
    const byLink = deductionsOf(links, compiledCells(cells));
    expect(links.map(({ id }) => sumOf(byLink.get(id) ?? []))).toEqual([300, 200]);
    // The redheads beside them are left alone.
    expect([...byLink.values()].flat().map(({ candidates }) => candidates)).toEqual([
      ['Aythya affinis', 'Aythya marila'],
      ['Aythya affinis', 'Aythya marila'],
    ]);
  });

  it('400 of 1,000 that moved into 3,000 take 400 off, shared over what these were called', () => {
    const cells = cellsOf(
      aCount([
        at('s1', 'o1', [[SCAUP, 1000]]),
        at('s2', 'o2', [
          [SCAUP, 3000],
          [LESSER, 1000],
        ]),
      ]),
    );
    const [from, ...into] = sightingsOf(cells);
    const to = into.find(({ taxon }) => taxon === SCAUP);
    if (!from || !to) throw new Error('two sightings');
    const link = linkOf(from, to, { birds: 400 });
    const [taken, ...more] = deductionsOf([link], compiledCells(cells)).get(link.id) ?? [];
    expect(more).toEqual([]);
    expect(taken).toMatchObject({ candidates: ['Aythya affinis', 'Aythya marila'], number: 400 });
  });

  describe('of which not every observer has a part', () => {
    // s1: o1 alone has 45. s2: o2 has 40 and 100 others, o3 the 100 and perhaps the flock.
    const twoIn = (missed: boolean) => {
      const cells = cellsOf(
        aCount([
          at('s1', 'o1', [[LESSER, 45]]),
          at('s2', 'o2', [
            [LESSER, 40],
            [LESSER, 100],
          ]),
          at(
            's2',
            'o3',
            missed
              ? [[LESSER, 100]]
              : [
                  [LESSER, 44],
                  [LESSER, 100],
                ],
          ),
        ]),
      );
      const [from, ...into] = sightingsOf(cells);
      const flock = into.filter(({ number }) => number < 100);
      const [one] = flock;
      if (!from || !one) throw new Error('two sightings');
      const to = { ...one, lines: flock.flatMap(({ lines }) => lines), number: missed ? 40 : 42 };
      const link = linkOf(from, to);
      return { cells, to, link };
    };
    const taken = ({ cells, link }: ReturnType<typeof twoIn>, compiled = compiledCells(cells)) =>
      sumOf(deductionsOf([link], compiled).get(link.id) ?? []);

    it('40 that one of two has are 20 of the (140 + 100) / 2 = 120: 20 come off and 100 stay', () => {
      const count = twoIn(true);
      expect(contributionOf(count.to, count.cells)).toBe(20);
      expect(taken(count)).toBe(20);
    });

    it('40 and 44 that both have are 42 of the (140 + 144) / 2 = 142: 42 come off and 100 stay', () => {
      const count = twoIn(false);
      expect(contributionOf(count.to, count.cells)).toBe(42);
      expect(taken(count)).toBe(42);
    });

    it.each([
      // The ruling takes all that o2 has, the flock as a whole; or o3, who has none of it.
      ['o2', 140, 40],
      ['o3', 100, 0],
    ])('accepted as %s has them, %i, %i come off', (observer, number, off) => {
      const count = twoIn(true);
      const ruled = count.cells.map((cell) =>
        cell.compared.cell.id !== count.to.cell
          ? cell
          : {
              ...cell,
              groups: cell.groups.map((each) => ({
                ...each,
                consensus: { ...each.consensus, number, observers: [observer] },
                lines: each.lines.map((line) => ({ ...line, number })),
              })),
            },
      );
      expect(contributionOf(count.to, ruled)).toBe(off);
      expect(taken(count, compiledCells(ruled))).toBe(off);
    });
  });
});

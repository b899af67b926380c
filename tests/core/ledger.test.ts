import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Protocol } from '../../server/core/model/protocol.js';
import type { Result } from '../../server/core/model/result.js';
import type { Ruling } from '../../server/core/model/ruling.js';
import type { Snapshot } from '../../server/core/model/snapshot.js';
import { RunMemory } from '../../server/core/memory.js';
import { reconcile } from '../../server/core/reconcile.js';
import { randomCount, randomProtocol } from './random-count.js';

const RUNS = 300;

/** A count, a protocol, and rulings picked from what the engine itself proposes. */
const ruledCount = fc
  .tuple(randomCount(), randomProtocol, fc.array(fc.nat(), { maxLength: 6 }))
  .map(([snapshot, protocol, picks]) => ({
    snapshot,
    protocol,
    rulings: pickRulings(reconcile(snapshot, [], protocol), picks),
  }));

function pickRulings(draft: Result, picks: readonly number[]): Ruling[] {
  const rulings = new Map<string, Ruling>();
  const offered = draft.disagreements.flatMap((each) =>
    each.proposals.map((proposal) => ({ proposal, basis: each.basis })),
  );
  picks.forEach((pick, index) => {
    const chosen = offered[pick % Math.max(offered.length, 1)];
    if (chosen === undefined || chosen.proposal.target.kind === 'tally') return;
    rulings.set(JSON.stringify(chosen.proposal.target), {
      id: `r${index}`,
      by: 'o4',
      reason: 'For the test',
      target: chosen.proposal.target,
      decision: chosen.proposal.decision,
      basis: chosen.basis,
    });
  });
  return [...rulings.values()];
}

const balanceOf = (result: Result, account: (name: string) => boolean, taxon?: string): number =>
  result.ledger
    .filter((posting) => taxon === undefined || posting.taxon === taxon)
    .reduce(
      (sum, posting) =>
        sum +
        (account(posting.to) ? posting.number : 0) -
        (account(posting.from) ? posting.number : 0),
      0,
    );

/** What holds of every result; a failure names the first that does not. */
const invariants: Readonly<Record<string, (result: Result, snapshot: Snapshot) => void>> = {
  'the ledger adds up to the compiled number of every taxon, and to nothing else': (result) => {
    const reported = `compiled/${result.reported}`;
    for (const line of result.compiled) {
      expect(balanceOf(result, (name) => name === reported, line.taxon)).toBe(line.number);
    }
    const total = result.compiled.reduce((sum, line) => sum + line.number, 0);
    expect(balanceOf(result, (name) => name === reported)).toBe(total);
  },

  'every consensus account ends empty, taxon by taxon: what comes in goes out': (result) => {
    const accounts = new Set(
      result.ledger
        .flatMap((posting) => [posting.from, posting.to])
        .filter((name) => name.startsWith('consensus/')),
    );
    for (const account of accounts) {
      for (const taxon of new Set(result.ledger.map((posting) => posting.taxon))) {
        expect(balanceOf(result, (name) => name === account, taxon)).toBe(0);
      }
    }
  },

  'no tally line gives more birds than it counted': (result, snapshot) => {
    const given = new Map<string, number>();
    for (const posting of result.ledger) {
      if (!posting.from.startsWith('tallied/')) continue;
      for (const side of posting.because.ref.split('=')) {
        given.set(side, (given.get(side) ?? 0) + posting.number);
      }
    }
    const counted = new Map(
      snapshot.tallies
        .flatMap((tally) => tally.lines)
        .map((line) => [line.id, line.quantity.kind === 'exact' ? line.quantity.number : 0]),
    );
    for (const [side, birds] of given) {
      const most = side.split('+').reduce((sum, id) => sum + (counted.get(id) ?? 0), 0);
      expect(birds).toBeLessThanOrEqual(most);
    }
  },

  'every taxon stands once, with whole numbers inside their intervals and bounds': (result) => {
    const taxa = result.compiled.map((line) => line.taxon);
    expect(new Set(taxa).size).toBe(taxa.length);
    for (const line of result.compiled) {
      expect(Number.isInteger(line.number)).toBe(true);
      expect(line.low).toBeGreaterThanOrEqual(0);
      expect(line.low).toBeLessThanOrEqual(line.number);
      expect(line.high).toBeGreaterThanOrEqual(line.number);
      expect(line.atLeast).toBeLessThanOrEqual(line.number);
      expect(line.atMost).toBeGreaterThanOrEqual(line.number);
    }
    for (const posting of result.ledger) expect(posting.number).toBeGreaterThan(0);
  },

  'a group is settled by lines that add up to its number': (result) => {
    for (const group of result.cells.flatMap((cell) => cell.groups)) {
      expect(group.lines.reduce((sum, line) => sum + line.number, 0)).toBe(group.consensus.number);
    }
  },
};

const check = (
  property: (
    result: Result,
    input: { snapshot: Snapshot; protocol: Protocol; rulings: Ruling[] },
  ) => void,
  runs = RUNS,
): void => {
  fc.assert(
    fc.property(ruledCount, (input) => {
      property(reconcile(input.snapshot, input.rulings, input.protocol), input);
    }),
    { numRuns: runs },
  );
};

describe('the ledger', () => {
  // All of them on the same counts: most of the time goes into reconciling.
  it('keeps its invariants on a thousand random counts', () => {
    check((result, { snapshot }) => {
      for (const [name, holds] of Object.entries(invariants)) {
        try {
          holds(result, snapshot);
        } catch (error) {
          throw new Error(`It is not so that ${name}.`, { cause: error });
        }
      }
    }, 1000);
  });
});

describe('reconcile', () => {
  it('gives the same bytes again, and in any order of tallies, lines and rulings', () => {
    check((result, { snapshot, rulings, protocol }) => {
      const shuffled: Snapshot = {
        ...snapshot,
        tallies: [...snapshot.tallies]
          .reverse()
          .map((tally) => ({ ...tally, lines: [...tally.lines].reverse() })),
      };
      const again = reconcile(shuffled, [...rulings].reverse(), protocol);
      expect(JSON.stringify(again)).toBe(JSON.stringify(result));
    });
  });

  it('compiles the same numbers whoever the observers are', () => {
    const renamed: Record<string, string> = { o1: 'o4', o2: 'o3', o3: 'o2', o4: 'o1' };
    const rename = (id: string): string => renamed[id] ?? id;
    fc.assert(
      fc.property(randomCount(), randomProtocol, (snapshot, protocol) => {
        // Whom the protocol designates is a name by intention, so it is renamed along.
        const other: Snapshot = {
          ...snapshot,
          tallies: snapshot.tallies.map((tally) => ({
            ...tally,
            observer: rename(tally.observer),
            party: tally.party.map(rename).sort(),
          })),
        };
        const one = reconcile(snapshot, [], protocol);
        const two = reconcile(other, [], { ...protocol, designated: { '*': rename('o1') } });
        expect(two.compiled).toEqual(one.compiled);
      }),
      { numRuns: RUNS },
    );
  });

  it('recomputes only the cells of a tally that changed, with the bytes of a full run', () => {
    fc.assert(
      fc.property(randomCount(), randomProtocol, fc.nat(), (snapshot, protocol, pick) => {
        const memory = new RunMemory();
        memory.begin();
        reconcile(snapshot, [], protocol, memory);
        const chosen = snapshot.tallies[pick % Math.max(snapshot.tallies.length, 1)];
        const changed: Snapshot = {
          ...snapshot,
          tallies: snapshot.tallies.map((tally) =>
            tally === chosen ? { ...tally, lines: tally.lines.slice(1) } : tally,
          ),
        };
        memory.begin();
        const again = reconcile(changed, [], protocol, memory);
        expect(JSON.stringify(again)).toBe(JSON.stringify(reconcile(changed, [], protocol)));
        const touched = again.cells.filter((cell) =>
          cell.tallies.some((tally) => tally.tally.split('+').includes(chosen?.id ?? '')),
        );
        // The links and the agreement are about the whole count.
        expect(memory.made).toBeLessThanOrEqual(touched.length + 2);
      }),
      { numRuns: RUNS },
    );
  });

  it('does not change its input', () => {
    fc.assert(
      fc.property(ruledCount, ({ snapshot, rulings, protocol }) => {
        const before = JSON.stringify([snapshot, rulings, protocol]);
        reconcile(deepFreeze(snapshot), deepFreeze(rulings), deepFreeze(protocol));
        expect(JSON.stringify([snapshot, rulings, protocol])).toBe(before);
      }),
      { numRuns: 100 },
    );
  });

  it('settles a disagreement by any of its own proposals', () => {
    fc.assert(
      fc.property(randomCount(), randomProtocol, fc.nat(), (snapshot, protocol, pick) => {
        const draft = reconcile(snapshot, [], protocol);
        const open = draft.disagreements.filter((each) => each.proposals.length > 0);
        const chosen = open[pick % Math.max(open.length, 1)];
        const proposal = chosen?.proposals[pick % chosen.proposals.length];
        if (chosen === undefined || proposal === undefined) return;
        const ruling: Ruling = {
          id: 'r1',
          by: 'o4',
          reason: 'For the test',
          target: proposal.target,
          decision: proposal.decision,
          basis: proposal.target.kind === 'tally' ? null : chosen.basis,
        };
        const ruled = reconcile(snapshot, [ruling], protocol);
        expect(ruled.rulings).toMatchObject([{ id: 'r1', state: 'applied' }]);
        const still = ruled.disagreements.find((each) => each.id === chosen.id);
        expect(still === undefined || still.ruledBy === 'r1').toBe(true);
      }),
      { numRuns: RUNS },
    );
  });
});

function deepFreeze<Value>(value: Value): Value {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    for (const each of Object.values(value)) deepFreeze(each);
  }
  return value;
}

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';
import { reconcile } from '../../../server/core/reconcile.js';
import {
  DEFAULT_OPTIONS,
  METHOD_MIXES,
  problemsOf,
  WITHOUT_ERRORS,
  type SimulationOptions,
} from '../../../server/core/simulate/options.js';
import { simulate, type SimulatedCount } from '../../../server/core/simulate/simulate.js';
import { checkFolder } from '../../../server/exchange/check-folder.js';
import { readTruth } from '../../../server/exchange/read-truth.js';
import { writeFolder } from '../../../server/exchange/write-folder.js';
import { writeTruth } from '../../../server/exchange/write-truth.js';

const simulated = (more: Partial<SimulationOptions> = {}): SimulatedCount =>
  simulate({ ...DEFAULT_OPTIONS, ...more }, defaultProtocol);

function filesOf(options: SimulationOptions) {
  const { snapshot, truth } = simulate(options, defaultProtocol);
  return [...writeFolder(snapshot, defaultProtocol), ...writeTruth(truth, options)];
}

const birdsIn = (birds: Readonly<Record<string, number>>): number =>
  Object.values(birds).reduce((sum, number) => sum + number, 0);

/** Tallies of observers who together cover a place are joined by `+`. */
const talliesIn = (joined: string): string[] => joined.split('+');

/** Birds of several places by species, sorted by name. */
function birdsOf(places: readonly Readonly<Record<string, number>>[]): Record<string, number> {
  const species = [...new Set(places.flatMap(Object.keys))].sort();
  return Object.fromEntries(
    species.map((name) => [name, places.reduce((sum, birds) => sum + (birds[name] ?? 0), 0)]),
  );
}

/** Any options that are without problems, small enough to reconcile many. */
const anyOptions: fc.Arbitrary<SimulationOptions> = fc
  .record({
    seed: fc.nat(),
    sections: fc.integer({ min: 1, max: 3 }),
    observers: fc.integer({ min: 1, max: 5 }),
    perSection: fc.integer({ min: 1, max: 3 }),
    birds: fc.integer({ min: 1, max: 600 }),
    methods: fc.constantFrom(...METHOD_MIXES),
    bias: fc.double({ min: 0.5, max: 1.5, noNaN: true }),
    observerSpread: fc.constantFrom(0, 0.2),
    detection: fc.constantFrom(0.5, 0.911, 1),
    error: fc.constantFrom(0, 1),
    misidentified: fc.constantFrom(0, 1, 3),
    leftCoarse: fc.constantFrom(0, 1, 2.5),
    placing: fc.constantFrom(0, 1, 2),
    moving: fc.constantFrom(0, 0.15, 1),
    slips: fc.constantFrom(0, 0.1),
    partial: fc.constantFrom(0, 0.3, 1),
    merged: fc.constantFrom(0, 0.5, 1),
    parties: fc.constantFrom(0, 0.5, 1),
    timesNoted: fc.constantFrom(0, 0.7, 1),
    positionsNoted: fc.constantFrom(0, 0.6, 1),
    headingsNoted: fc.constantFrom(0, 0.5, 1),
    destinationsNoted: fc.constantFrom(0, 0.25, 1),
    pastTheLine: fc.constantFrom(0, 0.3, 1),
    splitting: fc.constantFrom(0, 0.5, 1),
    lumping: fc.constantFrom(0, 0.3, 1),
  })
  .filter((options) => problemsOf(options).length === 0);

describe('a simulated count', () => {
  it('has the same bytes for the same seed, and others for another', () => {
    const options = { ...DEFAULT_OPTIONS, seed: 20270116 };
    expect(filesOf(options)).toEqual(filesOf(options));
    const [, , tallies] = filesOf(options);
    const [, , others] = filesOf({ ...options, seed: 20270117 });
    expect(tallies?.name).toBe('tallies.csv');
    expect(tallies?.text).not.toBe(others?.text);
  });

  it('is a folder without faults that reads back as the same count, protocol and truth', async () => {
    await fc.assert(
      fc.asyncProperty(anyOptions, async (options) => {
        const { snapshot, truth } = simulate(options, defaultProtocol);
        const files = filesOf(options).map(({ name, text }) => ({ name, content: text }));
        const checked = await checkFolder(files);
        expect(checked).toMatchObject({ ok: true, snapshot, protocol: defaultProtocol });
        const file = files.find(({ name }) => name === 'truth.json');
        const read = file === undefined ? null : readTruth(file, snapshot);
        expect(read).toEqual({ ok: true, value: truth });
      }),
      { numRuns: 60 },
    );
  });

  it('hands in the birds of its proportion samples, a hundred of each raft', async () => {
    const options = { ...DEFAULT_OPTIONS, observers: 3, methods: 'mixed' as const, seed: 3 };
    const { snapshot } = simulate(options, defaultProtocol);
    const rafts = [...new Set(snapshot.samples.map(({ raft }) => raft))];
    expect(rafts.length).toBeGreaterThan(0);
    for (const raft of rafts) {
      const own = snapshot.samples.filter((each) => each.raft === raft);
      // A line of which no bird came into the sample is not written, nor is its nought.
      expect(own.reduce((sum, { number }) => sum + number, 0)).toBe(100);
      const lines = snapshot.tallies.flatMap((tally) =>
        tally.lines.filter(({ flock }) => flock === raft),
      );
      expect(lines.map(({ method }) => method)).toEqual(own.map(() => 'sample'));
    }
    const files = filesOf(options).map(({ name, text }) => ({ name, content: text }));
    expect(await checkFolder(files)).toMatchObject({ ok: true, snapshot });
  });

  it('holds exactly the wanted number of birds, each in one section first', () => {
    fc.assert(
      fc.property(anyOptions, (options) => {
        const { truth } = simulated(options);
        expect(birdsIn(truth.total)).toBe(options.birds);
        const sections = Object.values(truth.sections).map(birdsIn);
        expect(sections.reduce((sum, number) => sum + number, 0)).toBe(options.birds);
      }),
      { numRuns: 60 },
    );
  });

  it('has as many independent counts of every section as wanted, at the same time', () => {
    const { snapshot } = simulated({ sections: 5, observers: 4, perSection: 3, parties: 0 });
    for (const { id } of snapshot.sections) {
      const own = snapshot.tallies.filter((tally) => tally.sections.includes(id));
      expect(new Set(own.map(({ observer }) => observer)).size).toBe(3);
      const starts = own.map(({ start }) => Date.parse(start ?? ''));
      expect(Math.max(...starts) - Math.min(...starts)).toBeLessThanOrEqual(3 * 60_000);
    }
  });

  it('meets other observers with the same birds', () => {
    const one = simulated({ methods: 'usual' }).truth;
    const other = simulated({ methods: 'mixed', observers: 6, perSection: 3, bias: 0.7 }).truth;
    expect(other.sections).toEqual(one.sections);
    expect(other.flyingThrough).toEqual(one.flyingThrough);
  });

  it('shows every bird of a still lake to every observer who errs in nothing', () => {
    const { truth } = simulated({ ...WITHOUT_ERRORS, moving: 0 });
    expect(truth.toBeSeen).toEqual(truth.sections);
    for (const [tally, birds] of Object.entries(truth.found ?? {})) {
      const [, ...sections] = tally.split('-');
      expect(birds).toEqual(birdsOf(sections.map((section) => truth.sections[section] ?? {})));
    }
    expect(truth.links).toEqual([]);
    expect((truth.planted ?? []).filter(({ kind }) => kind !== 'left-coarser')).toEqual([]);
  });
});

describe('what the truth says of the tallies', () => {
  it('names lines of the observer as planted, and lines of others of the section against them', () => {
    fc.assert(
      fc.property(anyOptions, (options) => {
        const { snapshot, truth } = simulated(options);
        const tallyOf = new Map(
          snapshot.tallies.flatMap((tally) => tally.lines.map(({ id }) => [id, tally] as const)),
        );
        for (const { observer, section, lines, against } of truth.planted ?? []) {
          for (const line of lines) expect(tallyOf.get(line)?.observer).toBe(observer);
          for (const line of against) expect(tallyOf.get(line)?.observer).not.toBe(observer);
          for (const line of lines) expect(tallyOf.get(line)?.sections).toContain(section);
          for (const line of against) {
            expect(tallyOf.get(line)?.party).not.toContain(observer);
          }
        }
        for (const { lines } of truth.links) {
          const [one, other] = lines.map((line) => tallyOf.get(line)?.sections ?? []);
          expect(one?.some((section) => other?.includes(section))).toBe(false);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('tells misidentified lines: the species is not among what was written', () => {
    const { snapshot, truth } = simulated({ misidentified: 3 });
    const lines = new Map(
      snapshot.tallies.flatMap((tally) => tally.lines.map((line) => [line.id, line] as const)),
    );
    const misidentified = (truth.planted ?? []).filter(({ kind }) => kind === 'misidentified');
    expect(misidentified.length).toBeGreaterThan(10);
    for (const error of misidentified) {
      const [line = ''] = error.lines;
      expect(lines.get(line)?.candidates).not.toContain(error.species);
    }
  });
});

describe('bounds without errors of number and identification', () => {
  it('contain the birds that each observer found, whatever was overlooked, moved or left coarse', () => {
    fc.assert(
      fc.property(anyOptions, (any) => {
        const options = { ...any, error: 0, misidentified: 0, slips: 0 };
        const { snapshot, truth } = simulated(options);
        const result = reconcile(snapshot, [], defaultProtocol);
        let checked = 0;
        for (const cell of result.cells.filter(({ layer }) => layer === 'using')) {
          const tallyOf = new Map(cell.tallies.map((each) => [each.observer, each.tally] as const));
          for (const { species, observer, atLeast, atMost } of cell.bounds) {
            const own = talliesIn(tallyOf.get(observer) ?? '');
            const found = birdsOf(own.map((tally) => truth.found?.[tally] ?? {}))[species] ?? 0;
            expect(found).toBeGreaterThanOrEqual(atLeast);
            expect(found).toBeLessThanOrEqual(atMost);
            checked += 1;
          }
        }
        // Every species that somebody found has bounds, or nothing would be tested.
        const kinds = Object.values(truth.found ?? {}).flatMap(Object.keys).length;
        expect(checked).toBeGreaterThanOrEqual(kinds);
      }),
      { numRuns: 100 },
    );
  });

  it('contain the birds that were there, where nothing is overlooked and nothing moves', () => {
    fc.assert(
      fc.property(anyOptions, (any) => {
        const options = { ...any, ...WITHOUT_ERRORS, slips: 0, moving: 0, pastTheLine: 0 };
        const { snapshot, truth } = simulated(options);
        const result = reconcile(snapshot, [], defaultProtocol);
        const sectionsOf = new Map(
          snapshot.tallies.map((each) => [each.id, each.sections] as const),
        );
        for (const cell of result.cells.filter(({ layer }) => layer === 'using')) {
          const tallyOf = new Map(cell.tallies.map((each) => [each.observer, each.tally] as const));
          for (const { species, observer, atLeast, atMost } of cell.bounds) {
            const own = talliesIn(tallyOf.get(observer) ?? '').flatMap(
              (id) => sectionsOf.get(id) ?? [],
            );
            const there = birdsOf(own.map((section) => truth.sections[section] ?? {}));
            expect(there[species] ?? 0).toBeGreaterThanOrEqual(atLeast);
            expect(there[species] ?? 0).toBeLessThanOrEqual(atMost);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('partial coverage, merged sections and parties', () => {
  const settings = fc.record({ seed: fc.nat(), sections: fc.integer({ min: 2, max: 5 }) });
  /** All that the tallies of one section say, as the count without the arrangement has them. */
  const withAndWithout = (
    key: 'partial' | 'merged' | 'parties',
    check: (plain: SimulatedCount, changed: SimulatedCount) => void,
  ): void => {
    const none = { birds: 800, partial: 0, merged: 0, parties: 0 };
    fc.assert(
      fc.property(settings, (setting) => {
        const plain = simulated({ ...setting, ...none });
        check(plain, simulated({ ...setting, ...none, [key]: 1 }));
      }),
      { numRuns: 40 },
    );
  };

  it('a partial tally has the share that it states in sight, and no flock of the rest', () => {
    withAndWithout('partial', (_, { snapshot }) => {
      for (const { coverage, lines, sections } of snapshot.tallies) {
        expect(coverage).toBeGreaterThanOrEqual(0.4);
        expect(coverage).toBeLessThanOrEqual(0.9);
        const corners = snapshot.sections
          .filter(({ id }) => sections.includes(id))
          .flatMap(({ polygon }) => polygon.flat())
          .map(([lon]) => lon);
        const [west, east] = [Math.min(...corners), Math.max(...corners)];
        const at = lines
          .flatMap(({ position }) => position?.[0] ?? [])
          .map((lon) => (lon - west) / (east - west));
        // Birds seem to lie a little off where they are: 5 % of up to 1.8 km, three times over.
        const reach = Math.max(...at) - Math.min(...at);
        if (at.length > 0) expect(reach).toBeLessThanOrEqual(coverage + 0.28);
      }
    });
  });

  it('flocks that were hidden were there to be seen, but not overlooked', () => {
    withAndWithout('partial', (plain, { truth }) => {
      expect(truth.toBeSeen).toEqual(plain.truth.toBeSeen);
      const birdsOverlooked = (count: SimulatedCount['truth']): number =>
        (count.planted ?? [])
          .filter(({ kind }) => kind === 'overlooked')
          .reduce((sum, { birds }) => sum + birds, 0);
      expect(birdsOverlooked(truth)).toBeLessThanOrEqual(birdsOverlooked(plain.truth));
    });
  });

  it('errors in nothing, so a partial tally is a lower bound of a still lake', () => {
    withAndWithout('partial', (_, { snapshot }) => {
      const options = { ...DEFAULT_OPTIONS, ...WITHOUT_ERRORS, partial: 1, moving: 0, merged: 0 };
      const seed = Number(snapshot.id.split('-')[1]);
      const { truth } = simulate({ ...options, seed, birds: 800 }, defaultProtocol);
      for (const [tally, birds] of Object.entries(truth.found ?? {})) {
        for (const [species, number] of Object.entries(birds)) {
          expect(number).toBeLessThanOrEqual(
            truth.sections[tally.split('-')[1] ?? '']?.[species] ?? 0,
          );
        }
      }
    });
  });

  it('a merged tally names two neighbours and takes the place of a count of one of them', () => {
    withAndWithout('merged', (plain, { snapshot, truth }) => {
      const merged = snapshot.tallies.filter(({ sections }) => sections.length > 1);
      expect(snapshot.tallies.length).toBe(plain.snapshot.tallies.length - merged.length);
      for (const { sections, vantage } of merged) {
        expect(sections.length).toBe(2);
        expect(snapshot.views.map((view) => view.vantage)).toContain(vantage);
      }
      for (const { id } of snapshot.sections) {
        expect(snapshot.tallies.filter(({ sections }) => sections.includes(id)).length).toBe(2);
      }
      // A flock that moved between merged sections was there once, not twice.
      const there = Object.values(truth.toBeSeen ?? {}).reduce((sum, one) => sum + birdsIn(one), 0);
      expect(there).toBeLessThanOrEqual(800 * (snapshot.sections.length - merged.length));
    });
  });

  it('joins sections that are counted at one time, so that their cell is of both', () => {
    const { snapshot } = simulated({ merged: 1, parties: 0, partial: 0 });
    const places = reconcile(snapshot, [], defaultProtocol).cells.map(({ place }) =>
      place.join('+'),
    );
    expect(places).toContain('s1+s2');
    expect(places).toContain('s3+s4');
  });

  it('a party has the same flocks by the same names, and counts of its own', () => {
    let differ = 0;
    withAndWithout('parties', (_, { snapshot, truth }) => {
      for (const { id } of snapshot.sections) {
        const [one, other] = snapshot.tallies.filter(({ sections }) => sections.includes(id));
        expect(one?.party).toEqual(other?.party);
        expect(one?.party).toHaveLength(2);
        const said = (tally: typeof one, what: 'names' | 'numbers'): unknown[] =>
          (tally?.lines ?? [])
            .filter(({ activity }) => activity === 'water')
            .map(({ candidates, quantity }) => (what === 'names' ? candidates : quantity));
        expect(said(other, 'names')).toEqual(said(one, 'names'));
        if (JSON.stringify(said(other, 'numbers')) !== JSON.stringify(said(one, 'numbers')))
          differ += 1;
        expect(truth.found?.[other?.id ?? '']).toEqual(truth.found?.[one?.id ?? '']);
      }
      // Two in one party are one count: nobody speaks against anybody.
      expect((truth.planted ?? []).flatMap(({ against }) => against)).toEqual([]);
    });
    expect(differ).toBeGreaterThan(20);
  });

  it('a party is one independent count', () => {
    const { snapshot } = simulated({ parties: 1, merged: 0, partial: 0, birds: 800 });
    const { cells } = reconcile(snapshot, [], defaultProtocol);
    for (const { pairings, groups } of cells) {
      expect(pairings.every(({ independent }) => !independent)).toBe(true);
      for (const { consensus } of groups) expect(consensus.basis).not.toBe('several');
    }
  });
});

describe('options', () => {
  it('are refused all at once, each with what was expected', () => {
    const problems = problemsOf({ ...DEFAULT_OPTIONS, seed: -1, birds: 2.5, detection: NaN });
    expect(problems.map(({ key }) => key)).toEqual(['seed', 'birds', 'detection']);
    expect(problems[1]?.text).toBe('must be a whole number from 1 to 1000000, not 2.5');
  });

  it('need enough observers, and enough time for all sections', () => {
    expect(problemsOf({ ...DEFAULT_OPTIONS, perSection: 5 })).toEqual([
      { key: 'perSection', text: 'must be no more than the 4 observers, not 5' },
    ]);
    const [problem] = problemsOf({ ...DEFAULT_OPTIONS, sections: 40, observers: 2 });
    expect(problem?.key).toBe('observers');
  });
});

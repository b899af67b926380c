import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  plumagesOf,
  plumagesOfMark,
  type FieldMarkKey,
  type Plumage,
} from '../../../server/core/marks/field-mark-key.js';
import { FIELD_MARK_KEYS, keysFor } from '../../../server/core/marks/field-mark-keys.js';
import { FRENCH_MARKS } from '../../../server/core/marks/french-marks.js';
import { supportedSet, weighMarks, type SeenMark } from '../../../server/core/marks/weigh-marks.js';
import type { NotedMark } from '../../../server/core/model/snapshot.js';
import { isWithin } from '../../../server/core/taxa/candidate-set.js';
import { leafOf } from '../../../server/core/taxa/leaf.js';
import { DEFAULT_LOOK_ALIKES } from '../../../server/core/taxa/look-alikes.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { aTally } from '../a-count.js';

const EITHER: readonly Plumage[] = ['male', 'female'];

const statesOf = (key: FieldMarkKey): readonly SeenMark[] =>
  key.marks.flatMap((mark) => mark.states.map((state) => ({ mark, state })));

const anyKey = fc.constantFrom(...FIELD_MARK_KEYS);
const anyMarks = anyKey.chain((key) =>
  fc.record({
    key: fc.constant(key),
    seen: fc.array(fc.constantFrom(...statesOf(key)), { maxLength: 6 }),
    plumages: fc.constantFrom<readonly Plumage[]>(EITHER, ['male'], ['female']),
  }),
);

describe('the field-mark keys as data', () => {
  it.each(FIELD_MARK_KEYS)('$group: regular species of the list, in one key only', (key) => {
    for (const species of key.species) {
      const leaf = leafOf(species);
      expect(leaf, species).toMatchObject({ kind: 'species', regular: true });
      expect(keysFor([species])).toEqual([key]);
    }
  });

  it.each(FIELD_MARK_KEYS)('$group: no two marks or states of one name, none empty', (key) => {
    const names = key.marks.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const mark of key.marks) {
      expect(mark.fails).not.toBe('');
      const states = mark.states.map(({ name }) => name);
      expect(new Set(states).size).toBe(states.length);
      expect(states.length).toBeGreaterThan(1);
      for (const state of mark.states) {
        const fitting = key.species.filter((one) => plumagesOf(mark, state, one).length > 0);
        expect(fitting, `${mark.name}: ${state.name}`).not.toEqual([]);
        for (const fit of state.fits) {
          expect(key.species).toContain(typeof fit === 'string' ? fit : fit.species);
        }
      }
    }
  });

  it.each(FIELD_MARK_KEYS)('$group: every species has some state of every mark', (key) => {
    for (const mark of key.marks) {
      for (const species of mark.among ?? key.species) {
        for (const plumage of plumagesOfMark(mark)) {
          const own = mark.states.filter((state) =>
            plumagesOf(mark, state, species).includes(plumage),
          );
          expect(own, `${mark.name} of ${plumage} ${species}`).not.toEqual([]);
        }
      }
    }
  });

  it('are of all the groups that the method names, each with its source', () => {
    // Method section 9, "groups to cover".
    expect(FIELD_MARK_KEYS.map(({ group }) => group).sort()).toEqual([
      'dabblers',
      'eiders',
      'goldeneyes',
      'grebes',
      'mergansers',
      'pochards',
      'scoters',
      'swans',
      'white geese',
      'white-cheeked geese',
    ]);
    for (const { source } of FIELD_MARK_KEYS) {
      expect(source).toMatch(/^common practice, no source|\(\d{4}\)/u);
    }
  });

  it('has a key for every pair of look-alikes, both in the same one', () => {
    for (const [one, other] of DEFAULT_LOOK_ALIKES) {
      expect(keysFor([one]), `${one}, ${other}`).toEqual(keysFor([other]));
      expect(keysFor([one])).toHaveLength(1);
    }
  });
});

describe('the set that marks support', () => {
  it('is never made wider by one more mark', () => {
    fc.assert(
      fc.property(anyMarks, ({ key, seen, plumages }) => {
        seen.forEach((_, index) => {
          const fewer = supportedSet(key, seen.slice(0, index), plumages);
          expect(isWithin(supportedSet(key, seen.slice(0, index + 1), plumages), fewer)).toBe(true);
        });
      }),
    );
  });

  it('does not depend on the order of the marks', () => {
    fc.assert(
      fc.property(anyMarks, ({ key, seen, plumages }) => {
        expect(supportedSet(key, [...seen].reverse(), plumages)).toEqual(
          supportedSet(key, seen, plumages),
        );
      }),
    );
  });

  it('is not changed by an undependable mark', () => {
    fc.assert(
      fc.property(anyMarks, ({ key, seen, plumages }) => {
        const dependable = seen.filter(({ mark }) => mark.dependability === 'dependable');
        expect(supportedSet(key, seen, plumages)).toEqual(supportedSet(key, dependable, plumages));
      }),
    );
  });

  it('keeps a species as long as its own states are noted, of one sex or of both', () => {
    const anyBird = anyKey.chain((key) =>
      fc.constantFrom(...key.species).chain((species) =>
        fc.constantFrom<readonly Plumage[]>(EITHER, ['male'], ['female']).chain((plumages) => {
          const own = statesOf(key).filter(({ mark, state }) =>
            plumagesOf(mark, state, species).some((each) => plumages.includes(each)),
          );
          return fc.record({
            key: fc.constant(key),
            species: fc.constant(species),
            plumages: fc.constant(plumages),
            seen: fc.array(fc.constantFrom(...own)),
          });
        }),
      ),
    );
    fc.assert(
      fc.property(anyBird, ({ key, species, plumages, seen }) => {
        expect(supportedSet(key, seen, plumages)).toContain(species);
      }),
    );
  });
});

describe('an identification held against the marks noted', () => {
  function weighed(
    taxon: string,
    marks: readonly (readonly [mark: string, state: string])[],
    more: { readonly male?: number; readonly female?: number } = {},
  ) {
    const [line] = aTally('o1', [[taxon, 12, more]]).lines;
    if (line === undefined) throw new Error('no line');
    return weighMarks(
      line,
      marks.map(([mark, state]): NotedMark => ({ line: line.id, mark, state })),
    );
  }
  const setOf = (taxon: string) => {
    const parsed = parseTaxon(taxon);
    return parsed.ok ? parsed.candidates : [];
  };
  const bill = ['bill', 'blue-grey with black only at the nail'] as const;
  const tall = ['profile and crown', 'tall and highest behind the eye'] as const;

  it('is supported where the marks leave nothing else', () => {
    expect(weighed('Lesser Scaup', [bill, tall])).toMatchObject({
      outcome: 'supported',
      supported: setOf('Lesser Scaup'),
    });
    expect(weighed('GRSC/LESC', [bill]).outcome).toBe('supported');
    expect(weighed('Aythya sp.', [bill]).outcome).toBe('supported');
    expect(weighed('duck sp.', [bill]).outcome).toBe('supported');
  });

  it('is finer than its evidence where the marks leave more', () => {
    expect(weighed('Lesser Scaup', [bill])).toMatchObject({
      outcome: 'coarser',
      supported: setOf('GRSC/LESC'),
    });
  });

  it('is contradicted where none of its species is left, or no species at all', () => {
    expect(weighed('Greater Scaup', [bill, tall])).toMatchObject({
      outcome: 'contradicted',
      supported: setOf('Lesser Scaup'),
    });
    expect(weighed('Greater Scaup', [bill, ['male body', 'grey']])).toMatchObject({
      outcome: 'contradicted',
      supported: [],
      group: setOf('Aythya sp.'),
    });
  });

  it('is not documented without a dependable mark', () => {
    expect(weighed('Lesser Scaup', []).outcome).toBe('not-documented');
    expect(weighed('Lesser Scaup', [['male head gloss', 'green']]).outcome).toBe('not-documented');
    // Marks that the key does not have, as after a correction of the line's taxon.
    expect(weighed('American Coot', [bill]).outcome).toBe('not-documented');
    expect(weighed('Mallard', [tall]).outcome).toBe('not-documented');
  });

  it('takes the sex of the birds into account where all are of one', () => {
    const band = ['bill', 'grey with a white band behind a broad black tip'] as const;
    expect(weighed('Ring-necked Duck', [band]).outcome).toBe('coarser');
    expect(weighed('Ring-necked Duck', [band], { male: 12 }).outcome).toBe('supported');
    expect(weighed('Ring-necked Duck', [band], { male: 11, female: 1 }).outcome).toBe('coarser');
  });

  it('leaves species that its keys do not speak of alone', () => {
    // A Tufted Duck is a vagrant, in no key; the pair keeps it.
    expect(weighed('Aythya fuligula/marila', [tall])).toMatchObject({
      outcome: 'coarser',
      supported: ['Aythya affinis', 'Aythya collaris', 'Aythya fuligula'],
    });
  });
});

describe('what a key can tell apart', () => {
  /** The least set that one state of each mark, all as this species has them, leaves of a key. */
  function narrowest(key: FieldMarkKey, species: string): readonly string[] {
    const sets = (['male', 'female'] as const).flatMap((plumage) => {
      const marks = key.marks.map((mark) =>
        mark.states
          .filter((state) => plumagesOf(mark, state, species).includes(plumage))
          .map((state): SeenMark => ({ mark, state })),
      );
      const chosen = marks
        .filter((states) => states.length > 0)
        .reduce<readonly (readonly SeenMark[])[]>(
          (all, states) => all.flatMap((seen) => states.map((state) => [...seen, state])),
          [[]],
        );
      return chosen.map((seen) => supportedSet(key, seen, [plumage]));
    });
    return sets.reduce((least, set) => (set.length < least.length ? set : least));
  }

  const every = FIELD_MARK_KEYS.flatMap((key) =>
    key.species.map((species) => ({ key, group: key.group, species })),
  );
  it.each(every)('$group: $species can be reached', ({ key, species }) => {
    expect(narrowest(key, species)).toEqual([species]);
  });
});

describe('French of the field marks', () => {
  it('no text of a key is without it, and no other is there', () => {
    const texts = FIELD_MARK_KEYS.flatMap(({ group, source, marks }) => [
      ...[group, source],
      ...marks.flatMap(({ name, fails, states }) => [
        ...[name, fails],
        ...states.flatMap((state) => [
          state.name,
          ...state.fits.flatMap((fit) => (typeof fit === 'string' ? [] : (fit.when ?? []))),
        ]),
      ]),
    ]);
    expect(Object.keys(FRENCH_MARKS).sort()).toEqual([...new Set([...texts, ...EITHER])].sort());
    expect(Object.values(FRENCH_MARKS).filter((french) => french.trim() === '')).toEqual([]);
  });
});

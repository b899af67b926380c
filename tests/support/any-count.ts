import fc from 'fast-check';
import { GLARES, VISIBILITIES, type Conditions } from '../../server/core/model/conditions.js';
import { defaultProtocol } from '../../server/core/model/default-protocol.js';
import { RULES, type Protocol } from '../../server/core/model/protocol.js';
import {
  ACTIVITIES,
  METHODS,
  TOTAL_METHODS,
  type Quantity,
  type EarlierNumber,
  type NotedMark,
  type Polygon,
  type Position,
  type ScanSample,
  type Snapshot,
  type Tally,
  type TallyLine,
  type ShorePart,
} from '../../server/core/model/snapshot.js';
import { keysFor } from '../../server/core/marks/field-mark-keys.js';
import { plumagesOf } from '../../server/core/marks/field-mark-key.js';
import { plumagesIn } from '../../server/core/marks/weigh-marks.js';
import { keyOf } from '../../server/core/taxa/candidate-set.js';
import { LEAVES } from '../../server/core/taxa/leaf.js';
import { taxonName } from '../../server/core/taxa/taxon-name.js';

// Whatever a checked count can hold, strange but valid texts and times among it.

const anyText = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
  .map((text) => text.trim())
  .filter((text) => text !== '');
const textOrNull = fc.option(
  fc.oneof(anyText, fc.constantFrom('a, "b"', 'two\nlines', '=SUM(1)', '−3,5', 'x\uFEFFy')),
);
const anyInstant = fc
  .date({ min: new Date('2027-01-01'), max: new Date('2027-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString());
const birds = fc.integer({ min: 0, max: 20_000 });

const anyQuantity: fc.Arbitrary<Quantity> = fc.oneof(
  birds.map((number) => ({ kind: 'exact' as const, number })),
  fc.constant({ kind: 'present' as const }),
  fc.tuple(birds, birds).map(([one, other]) => ({
    kind: 'range' as const,
    low: Math.min(one, other),
    high: Math.max(one, other),
  })),
  fc.tuple(birds, birds, birds).map((three) => {
    const [low = 0, number = 0, high = 0] = [...three].sort((a, b) => a - b);
    return { kind: 'exact-with-range' as const, number, low, high };
  }),
);

function anyLine(id: string, sections: readonly string[]): fc.Arbitrary<TallyLine> {
  const candidates = fc
    .uniqueArray(fc.constantFrom(...LEAVES.map((leaf) => leaf.species)), {
      minLength: 1,
      maxLength: 6,
    })
    .map((species) => species.sort());
  const section = fc.option(fc.constantFrom(...sections));
  const degrees = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
  return fc
    .record({
      candidates,
      quantity: anyQuantity,
      method: fc.constantFrom(...METHODS),
      totalMethod: fc.constantFrom(null, ...TOTAL_METHODS),
      block: fc.option(fc.integer({ min: 1, max: 500 })),
      male: fc.option(fc.integer({ min: 0, max: 10 })),
      immature: fc.option(fc.integer({ min: 0, max: 10 })),
      activity: fc.constantFrom(...ACTIVITIES),
      time: fc.option(anyInstant),
      position: fc.option(fc.tuple(degrees(180), degrees(90))),
      flock: textOrNull,
      heading: fc.option(fc.double({ min: 0, max: 359.9, noNaN: true })),
      from: section,
      to: section,
      certainty: fc.constantFrom('sure' as const, 'likely' as const),
      note: textOrNull,
    })
    .map(({ totalMethod: anyTotal, ...line }) => {
      const totalMethod = line.method === 'sample' ? anyTotal : null;
      const atLeast = { kind: 'exact' as const, number: 50 };
      const sexed = line.male !== null || line.immature !== null;
      return {
        id,
        written: taxonName(line.candidates),
        ...line,
        quantity: sexed ? atLeast : line.quantity,
        ...(totalMethod !== null && { totalMethod }),
        block: (totalMethod ?? line.method) === 'block' ? line.block : null,
        position: line.position === null ? null : [line.position[0] + 0, line.position[1] + 0],
        heading: line.heading === null ? null : line.heading + 0,
        female: line.male,
        adult: null,
      } satisfies TallyLine;
    });
}

/** At least one thing noted. */
const anyConditions: fc.Arbitrary<Conditions> = fc
  .record({
    visibility: fc.option(fc.constantFrom(...VISIBILITIES)),
    beaufort: fc.option(fc.nat(12)),
    seaState: fc.option(fc.nat(9)),
    iceCover: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
    glare: fc.option(fc.constantFrom(...GLARES)),
    disturbance: textOrNull,
    optics: textOrNull,
  })
  .map((noted) => ({ ...noted, iceCover: noted.iceCover === null ? null : noted.iceCover + 0 }))
  .filter((noted) => Object.values(noted).some((one) => one !== null));

/** A triangle over some of the first section, its corners anywhere near it; sections lie as `anySnapshot` has them. */
const anyOutline = fc
  .record({
    west: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
    east: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
    north: fc.double({ min: 44.3, max: 44.7, noNaN: true }),
  })
  .map(({ west, east, north }) => ({
    over: (section: string): Polygon => {
      const at = Number(section.slice(1));
      const corner: Position = [at + west, 43.9];
      return [[corner, [at + east, 43.9], [at + east, north], corner]];
    },
  }));

function anyTally(
  id: string,
  window: string,
  people: readonly string[],
  sections: readonly string[],
): fc.Arbitrary<Tally> {
  return fc
    .record({
      party: fc.uniqueArray(fc.constantFrom(...people), { minLength: 1 }),
      sections: fc.uniqueArray(fc.constantFrom(...sections), { minLength: 1 }),
      vantage: fc.option(fc.constant('v1')),
      times: fc.tuple(fc.option(anyInstant), fc.option(anyInstant)),
      scope: fc.oneof(
        fc.constantFrom({ kind: 'all-waterbirds' as const }, { kind: 'waterfowl' as const }),
        fc
          .uniqueArray(fc.constantFrom(...LEAVES.map((leaf) => leaf.species)), { minLength: 1 })
          .map((species) => ({ kind: 'taxa' as const, species: species.sort() })),
      ),
      coverage: fc.double({ min: 0, max: 1, minExcluded: true, noNaN: true }),
      outline: fc.option(anyOutline),
      conditions: fc.option(anyConditions),
      lines: fc
        .integer({ min: 0, max: 5 })
        .chain((count) =>
          fc.tuple(...Array.from({ length: count }, (_, at) => anyLine(`${id}:${at}`, sections))),
        ),
    })
    .map(({ party, times, outline, conditions, ...tally }) => {
      const [one, other] = times;
      const swap = one !== null && other !== null && one > other;
      return {
        id,
        observer: party[0] ?? '',
        window,
        ...tally,
        ...(outline !== null && { seenArea: outline.over(tally.sections[0] ?? '') }),
        ...(conditions !== null && { conditions }),
        party: [...party].sort(),
        sections: [...tally.sections].sort(),
        start: swap ? other : one,
        end: swap ? one : other,
      };
    });
}

const anyCandidates = fc
  .uniqueArray(fc.constantFrom(...LEAVES.map((leaf) => leaf.species)), {
    minLength: 1,
    maxLength: 6,
  })
  .map((species) => species.sort());

const anyHistory: fc.Arbitrary<readonly EarlierNumber[]> = fc
  .uniqueArray(
    fc.record({
      candidates: anyCandidates,
      year: fc.integer({ min: 1990, max: 2026 }),
      number: birds,
    }),
    { selector: ({ candidates, year }) => `${year} ${keyOf(candidates)}`, maxLength: 6 },
  )
  .map((rows) =>
    rows.sort((a, b) => a.year - b.year || (keyOf(a.candidates) < keyOf(b.candidates) ? -1 : 1)),
  );

/** Samples of rafts that are lines of these tallies, or flock labels that the samples' tally has. */
function anySamples(tallies: readonly Tally[]): fc.Arbitrary<readonly ScanSample[]> {
  const rafts = tallies.flatMap(({ id: tally, lines }) =>
    lines.flatMap(({ id, flock }) => [
      { raft: id },
      ...(flock === null ? [] : [{ raft: flock, tally }]),
    ]),
  );
  if (rafts.length === 0) return fc.constant([]);
  const key = ({ raft, tally = '', sample, candidates }: ScanSample): string =>
    [raft, tally, sample, keyOf(candidates)].join('\n');
  return fc
    .uniqueArray(
      fc.record({
        of: fc.constantFrom(...rafts),
        sample: fc.constantFrom('1', '2', 'last, "far"'),
        candidates: anyCandidates,
        number: birds,
      }),
      { selector: ({ of, ...rest }) => key({ ...of, ...rest }), maxLength: 5 },
    )
    .map((rows) => rows.map(({ of, ...rest }): ScanSample => ({ ...of, ...rest })))
    .map((rows) => rows.sort((a, b) => (key(a) < key(b) ? -1 : 1)));
}

/** Marks that birds of these lines can have. */
function anyMarks(tallies: readonly Tally[]): fc.Arbitrary<readonly NotedMark[]> {
  const possible = tallies
    .flatMap(({ lines }) => lines)
    .flatMap((line) =>
      keysFor(line.candidates).flatMap(({ species, marks }) =>
        marks.flatMap((mark) =>
          mark.states
            .filter((state) =>
              species.some((one) =>
                plumagesOf(mark, state, one).some((each) => plumagesIn(line).includes(each)),
              ),
            )
            .map((state): NotedMark => ({ line: line.id, mark: mark.name, state: state.name })),
        ),
      ),
    );
  const key = ({ line, mark }: NotedMark): string => `${line}\n${mark}`;
  return fc
    .uniqueArray(possible.length === 0 ? fc.constant(null) : fc.constantFrom(...possible), {
      selector: (each) => (each === null ? '' : key(each)),
      maxLength: 6,
    })
    .map((rows) => rows.filter((row) => row !== null).sort((a, b) => (key(a) < key(b) ? -1 : 1)));
}

/** A lake with an island, a stretch of shore, both or neither. */
const anyShoreline: fc.Arbitrary<readonly ShorePart[]> = fc
  .record({
    west: fc.integer({ min: -170, max: 190 }),
    hasLake: fc.boolean(),
    hasLine: fc.boolean(),
  })
  .map(({ west, hasLake, hasLine }) => {
    const ring = (inset: number) => [
      [west + inset, 44 + inset] as const,
      [west + 2 - 2 * inset, 44 + inset] as const,
      [west + inset, 46 - 2 * inset] as const,
      [west + inset, 44 + inset] as const,
    ];
    const lake = { form: 'area' as const, lines: [ring(0), ring(0.25)] };
    const line = { form: 'line' as const, lines: [ring(0).slice(0, 3)] };
    return [...(hasLake ? [lake] : []), ...(hasLine ? [line] : [])];
  });

/** Any valid count, in canonical order. */
export const anySnapshot: fc.Arbitrary<Snapshot> = fc
  .record({
    names: fc.uniqueArray(anyText, { minLength: 1, maxLength: 4 }),
    sections: fc.integer({ min: 1, max: 3 }),
    tallies: fc.integer({ min: 0, max: 4 }),
    roles: fc.constantFrom('leader' as const, 'observer' as const, 'compiler' as const),
  })
  .chain(({ names, sections, tallies, roles }) => {
    const people = names.map((name, at) => ({ id: `o${at}`, name, roles: [roles] }));
    const polygon = (at: number) => [
      [
        [at, 44],
        [at + 0.5, 44],
        [at + 0.5, 44.5],
        [at, 44],
      ] as const,
    ];
    const places = Array.from({ length: sections }, (_, at) => ({
      id: `s${at}`,
      name: names[at] ?? 'Bay',
      polygon: polygon(at),
    }));
    const ids = people.map(({ id }) => id);
    const allTallies = fc.tuple(
      ...Array.from({ length: tallies }, (_, at) =>
        anyTally(
          `t${at}`,
          // One tally each, so that no observer counts a section twice at one time.
          `w${at + 1}`,
          ids,
          places.map(({ id }) => id),
        ),
      ),
    );
    return fc
      .tuple(
        allTallies.chain((all) =>
          fc
            .tuple(anySamples(all), anyMarks(all), anyShoreline)
            .map(([samples, marks, shoreline]) => ({ all, samples, marks, shoreline })),
        ),
        anyHistory,
      )
      .map(([{ all, samples, marks, shoreline }, history]) => ({
        id: 'any-count',
        name: names[0] ?? '',
        waterbody: names.at(-1) ?? '',
        date: '2027-01-16',
        timeZone: 'America/Toronto',
        windows: ['w1', 'w2', 'w3', 'w4'].map((id) => ({
          id,
          start: '2027-01-16T08:00:00-05:00',
          end: '2027-01-16T11:00:00-05:00',
          slackMinutes: 10,
        })),
        people,
        sections: places,
        vantages: [{ id: 'v1', name: 'Dock', position: [0.2, 43.9] as const }],
        views: [{ vantage: 'v1', polygon: polygon(0) }],
        tallies: all,
        history,
        samples,
        ...(marks.length > 0 && { marks }),
        ...(shoreline.length > 0 && { shoreline }),
      }));
  });

export const anyProtocol: fc.Arbitrary<Protocol> = fc
  .record({
    rule: fc.constantFrom(...RULES),
    zeros: fc.constantFrom('missed' as const, 'absent' as const),
    resolution: fc.constantFrom('finer' as const, 'coarser' as const),
    windows: fc.constantFrom('highest', 'mean', 'w1'),
    lookAlikes: fc.constantFrom(defaultProtocol.lookAlikes, []),
    linkThreshold: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map((settings) => ({
    ...defaultProtocol,
    ...settings,
    linkThreshold: settings.linkThreshold + 0,
  }));

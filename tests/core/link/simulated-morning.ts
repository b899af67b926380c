import { findLinks, type FoundLink } from '../../../server/core/link/find-links.js';
import { geodesicBetween } from '../../../server/core/math/geodesy.js';
import { seededRandom, type SeededRandom } from '../../../server/core/math/seeded-random.js';
import type {
  Position,
  Section,
  Snapshot,
  Tally,
  TallyLine,
} from '../../../server/core/model/snapshot.js';
import { aLine, aSnapshot, aTally, at, birds, box, cellOf, protocol } from './a-count.js';

/*
 * A made-up morning with its truth: flocks that stay, swim or fly, and observers who look at each at
 * some instant. It knows nothing of how links are scored. All figures are invented.
 */

/** How much observers note, as chances from 0 to 1. */
export interface Notes {
  readonly time: number;
  readonly position: number;
  readonly heading: number;
  readonly destination: number;
}

/** One flock, by what it was at the start and what it does. Times in hours from the start. */
interface TrueFlock {
  readonly id: number;
  readonly species: string;
  readonly number: number;
  readonly start: readonly [east: number, north: number];
  readonly moves: 'stays' | 'swims' | 'flies';
  readonly leaves: number;
  readonly arrives: number;
  readonly end: readonly [east: number, north: number];
}

export interface Morning {
  readonly snapshot: Snapshot;
  /** True flock of each line. */
  readonly flockOf: ReadonlyMap<string, number>;
}

const HOURS = 3;
const COLUMNS = 3;
const ROWS = 2;
const SIZE = 2;

/** Kinds with their share of flocks. */
const KINDS: readonly (readonly [string, number])[] = [
  ['Anas platyrhynchos', 0.25],
  ['Aythya marila', 0.2],
  ['Bucephala clangula', 0.2],
  ['Mergus merganser', 0.15],
  ['Aythya affinis', 0.1],
  ['Branta canadensis', 0.1],
];
const SCAUP = ['Aythya affinis', 'Aythya marila'];

function normal(random: SeededRandom): number {
  // Box & Muller 1958, Ann. Math. Stat. 29:610.
  const radius = Math.sqrt(-2 * Math.log(1 - random.uniform()));
  return radius * Math.cos(2 * Math.PI * random.uniform());
}

function pick(random: SeededRandom): string {
  let left = random.uniform();
  for (const [species, share] of KINDS) {
    left -= share;
    if (left < 0) return species;
  }
  return 'Anas platyrhynchos';
}

function aFlock(id: number, random: SeededRandom): TrueFlock {
  const start = [COLUMNS * SIZE * random.uniform(), ROWS * SIZE * random.uniform()] as const;
  const number = Math.max(10, Math.round(45 * Math.exp(1.1 * normal(random))));
  const what = random.uniform();
  const leaves = HOURS * random.uniform();
  const base = { id, species: pick(random), number, start, leaves };
  if (what < 0.8) return { ...base, moves: 'stays', arrives: leaves, end: start };
  if (what < 0.92) {
    const hours = 0.3 + 1.2 * random.uniform();
    const far = hours * (0.5 + 2 * random.uniform());
    const angle = 2 * Math.PI * random.uniform();
    const end = [
      Math.min(COLUMNS * SIZE, Math.max(0, start[0] + far * Math.sin(angle))),
      Math.min(ROWS * SIZE, Math.max(0, start[1] + far * Math.cos(angle))),
    ] as const;
    return { ...base, moves: 'swims', arrives: leaves + hours, end };
  }
  const end = [COLUMNS * SIZE * random.uniform(), ROWS * SIZE * random.uniform()] as const;
  const far = Math.hypot(end[0] - start[0], end[1] - start[1]);
  return { ...base, moves: 'flies', arrives: leaves + far / 60, end };
}

/** Where a flock is, kilometres; `null` in the air. */
function placeOf(flock: TrueFlock, hour: number): readonly [number, number] | null {
  if (hour <= flock.leaves) return flock.start;
  if (hour >= flock.arrives) return flock.end;
  if (flock.moves === 'flies') return null;
  const part = (hour - flock.leaves) / (flock.arrives - flock.leaves);
  return [
    flock.start[0] + part * (flock.end[0] - flock.start[0]),
    flock.start[1] + part * (flock.end[1] - flock.start[1]),
  ];
}

function written(hour: number): string {
  const minutes = Math.round(60 * hour);
  const two = (value: number) => String(value).padStart(2, '0');
  return `2027-01-16T${two(8 + Math.floor(minutes / 60))}:${two(minutes % 60)}:00-05:00`;
}

function sections(): Section[] {
  return Array.from({ length: COLUMNS * ROWS }, (_, index) => {
    const [west, south] = [SIZE * (index % COLUMNS), SIZE * Math.floor(index / COLUMNS)];
    return {
      id: `s${index + 1}`,
      name: `Section ${index + 1}`,
      polygon: box(west, south, west + SIZE, south + SIZE),
    };
  });
}

/** Sections are boxes along parallels and meridians. */
function isInBox([lon, lat]: Position, polygon: Section['polygon']): boolean {
  const [[west, south] = [0, 0], , [east, north] = [0, 0]] = polygon[0] ?? [];
  return lon >= west && lon <= east && lat >= south && lat <= north;
}

/** A morning on six sections, half of them with two observers. */
export function simulateMorning(seed: number, flockCount: number, notes: Notes): Morning {
  const random = seededRandom(seed);
  const flocks = Array.from({ length: flockCount }, (_, id) => aFlock(id, random));
  const flockOf = new Map<string, number>();
  const all = sections();
  const vantages = all.map((section) => ({
    id: `v-${section.id}`,
    name: section.name,
    position: section.polygon[0]?.[0] ?? at(0, 0),
  }));
  const views = all.map((section, index) => {
    const [west, south] = [SIZE * (index % COLUMNS), SIZE * Math.floor(index / COLUMNS)];
    const polygon = box(west - 0.4, south - 0.4, west + SIZE + 0.4, south + SIZE + 0.4);
    return { vantage: `v-${section.id}`, polygon };
  });
  const tallies = all.flatMap((section, index) =>
    (index % 2 === 0 ? ['x', 'y'] : ['x']).map((who) =>
      aMadeUpTally(`${section.id}${who}`, section, flocks, flockOf, notes, all, random),
    ),
  );
  return { snapshot: aSnapshot(tallies, { sections: all, vantages, views }), flockOf };
}

function aMadeUpTally(
  id: string,
  section: Section,
  flocks: readonly TrueFlock[],
  flockOf: Map<string, number>,
  notes: Notes,
  all: readonly Section[],
  random: SeededRandom,
): Tally {
  const begins = (HOURS - 1) * random.uniform();
  const lines = flocks.flatMap((flock): TallyLine[] => {
    const hour = begins + random.uniform();
    const place = placeOf(flock, hour);
    if (place === null) return [];
    const seen = at(place[0] + 0.12 * normal(random), place[1] + 0.12 * normal(random));
    if (!isInBox(seen, section.polygon)) return [];
    const line = `${id}:${flock.id}`;
    flockOf.set(line, flock.id);
    return [aMadeUpLine(line, flock, hour, seen, section, notes, all, random)];
  });
  return aTally(id, {
    sections: [section.id],
    vantage: `v-${section.id}`,
    start: written(begins),
    end: written(begins + 1),
    lines,
  });
}

function aMadeUpLine(
  id: string,
  flock: TrueFlock,
  hour: number,
  seen: Position,
  section: Section,
  notes: Notes,
  all: readonly Section[],
  random: SeededRandom,
): TallyLine {
  const block = flock.number > 150;
  const number = Math.max(
    10,
    Math.round(flock.number * Math.exp((block ? 0.2 : 0.05) * normal(random))),
  );
  const unsure = SCAUP.includes(flock.species) && random.uniform() < 0.3;
  const swims = flock.moves === 'swims' && hour > flock.leaves && hour < flock.arrives;
  const flushed = flock.moves === 'flies' && Math.abs(hour - flock.leaves) < 0.08;
  const end = at(flock.end[0], flock.end[1]);
  const goal = all.find(({ polygon }) => isInBox(end, polygon))?.id ?? null;
  const goes = (swims || flushed) && goal !== section.id && random.uniform() < notes.destination;
  const bearing = geodesicBetween(seen, end).bearing + 20 * normal(random);
  const heads = (swims || flushed) && random.uniform() < notes.heading;
  return aLine(id, {
    candidates: unsure ? SCAUP : [flock.species],
    ...birds(number),
    method: block ? 'block' : 'one-by-one',
    time: random.uniform() < notes.time ? written(hour) : null,
    position: random.uniform() < notes.position ? seen : null,
    flock: `flock ${id}`,
    heading: heads ? (Math.round(bearing) + 720) % 360 : null,
    to: goes ? goal : null,
    activity: flushed ? 'flushed' : 'water',
  });
}

/** How found links did against the truth, added up over mornings. */
export interface Score {
  proposed: number;
  proposedRight: number;
  shown: number;
  shownRight: number;
  /** Flocks seen in k sections make k − 1 links. */
  trueLinks: number;
  birdsTwice: number;
  birdsTakenRightly: number;
  birdsTakenWrongly: number;
  /** By tenths of probability: links shown, links right, sum of probabilities. */
  readonly bins: { shown: number; right: number; expected: number }[];
}

export function scoreMornings(mornings: readonly Morning[]): Score {
  const score: Score = {
    proposed: 0,
    proposedRight: 0,
    shown: 0,
    shownRight: 0,
    trueLinks: 0,
    birdsTwice: 0,
    birdsTakenRightly: 0,
    birdsTakenWrongly: 0,
    bins: Array.from({ length: 10 }, () => ({ shown: 0, right: 0, expected: 0 })),
  };
  for (const { snapshot, flockOf } of mornings) {
    addTruth(score, snapshot, flockOf);
    for (const link of findLinks(snapshot, cellOf, protocol)) addLink(score, link, flockOf);
  }
  return score;
}

function addTruth(score: Score, snapshot: Snapshot, flockOf: ReadonlyMap<string, number>): void {
  const numbers = new Map<number, Map<string, number>>();
  for (const tally of snapshot.tallies) {
    for (const line of tally.lines) {
      const flock = flockOf.get(line.id) ?? -1;
      const bySection = numbers.get(flock) ?? new Map<string, number>();
      const number = line.quantity.kind === 'exact' ? line.quantity.number : 0;
      bySection.set(tally.sections.join('+'), number);
      numbers.set(flock, bySection);
    }
  }
  for (const bySection of numbers.values()) {
    const sorted = [...bySection.values()].toSorted((a, b) => b - a);
    score.trueLinks += sorted.length - 1;
    score.birdsTwice += sorted.slice(1).reduce((sum, number) => sum + number, 0);
  }
}

function addLink(score: Score, link: FoundLink, flockOf: ReadonlyMap<string, number>): void {
  const flocks = (lines: readonly string[]) => lines.map((line) => flockOf.get(line));
  const second = flocks(link.second.lines);
  const right = flocks(link.first.lines).some((flock) => second.includes(flock));
  const bin = score.bins[Math.min(9, Math.floor(10 * link.probability))];
  score.shown += 1;
  score.shownRight += right ? 1 : 0;
  if (bin !== undefined) {
    bin.shown += 1;
    bin.right += right ? 1 : 0;
    bin.expected += link.probability;
  }
  if (!link.proposed) return;
  score.proposed += 1;
  score.proposedRight += right ? 1 : 0;
  if (right) score.birdsTakenRightly += link.birds;
  else score.birdsTakenWrongly += link.birds;
}

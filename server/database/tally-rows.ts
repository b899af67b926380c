import type { Conditions } from '../core/model/conditions.js';
import type {
  Activity,
  Certainty,
  Method,
  NotedMark,
  Polygon,
  Quantity,
  ScanSample,
  Scope,
  Tally,
  TallyLine,
  TotalMethod,
} from '../core/model/snapshot.js';
import { canonicalJson } from '../seals/canonical.js';
import type { Prisma, Tally as TallyRow, TallyLine as LineRow } from './generated/client.js';
import type { Source, Transaction } from './source.js';

/** What the database adds to a tally: when it came, and which version of which it is. */
export interface TallyHeader extends Omit<Tally, 'lines'> {
  readonly version: number;
  readonly replaces: string | null;
  readonly reason: string | null;
  readonly submittedAt: string;
  readonly contentHash: string;
}

/** One version of a tally, with its lines and what was noted with them. */
export interface TallyVersion extends TallyHeader {
  readonly lines: readonly TallyLine[];
  readonly samples: readonly ScanSample[];
  readonly marks: readonly NotedMark[];
}

/** What a tally's content hash is taken of. */
export interface TallyContent {
  readonly tally: Tally;
  /** Left out where there are none, so that tallies from before they were stored keep their hash. */
  readonly samples?: readonly ScanSample[];
  readonly marks?: readonly NotedMark[];
  readonly replaces: string | null;
  readonly reason: string | null;
}

export function tallyContent(version: Omit<TallyVersion, 'contentHash'>): TallyContent {
  const { samples, marks, replaces, reason } = version;
  return {
    tally: tallyOf(version),
    ...(samples.length > 0 && { samples }),
    ...(marks.length > 0 && { marks }),
    replaces,
    reason,
  };
}

/** The core's tally: no version, no times of the server's. */
export function tallyOf(version: Omit<TallyVersion, 'contentHash'>): Tally {
  const { id, observer, party, sections, window, vantage, start, end, scope, coverage, lines } =
    version;
  const { seenArea, conditions } = version;
  return {
    id,
    observer,
    party,
    sections,
    window,
    vantage,
    start,
    end,
    scope,
    coverage,
    ...(seenArea !== undefined && { seenArea }),
    ...(conditions !== undefined && { conditions }),
    lines,
  };
}

export function tallyHeader(row: TallyRow): TallyHeader {
  return {
    id: row.id,
    observer: row.observerId,
    party: JSON.parse(row.party) as string[],
    sections: JSON.parse(row.sections) as string[],
    window: row.windowId,
    vantage: row.vantageId,
    start: row.start,
    end: row.end,
    scope: JSON.parse(row.scope) as Scope,
    coverage: row.coverage,
    ...(row.seenArea !== null && { seenArea: JSON.parse(row.seenArea) as Polygon }),
    ...(row.conditions !== null && { conditions: JSON.parse(row.conditions) as Conditions }),
    version: row.version,
    replaces: row.replaces,
    reason: row.reason,
    submittedAt: row.submittedAt,
    contentHash: row.contentHash,
  };
}

/** @returns the count's tallies with their lines, every version or those of the given ids, by id */
export async function loadTallies(
  source: Source,
  countId: string,
  ids?: readonly string[],
): Promise<readonly TallyVersion[]> {
  const rows = await source.tally.findMany({
    where: { countId, ...(ids && { id: { in: [...ids] } }) },
    include: { lines: { orderBy: { position: 'asc' } } },
    orderBy: { id: 'asc' },
  });
  return rows.map((row) => ({
    ...tallyHeader(row),
    lines: row.lines.map(lineOf),
    samples: JSON.parse(row.samples) as ScanSample[],
    marks: JSON.parse(row.marks) as NotedMark[],
  }));
}

/** Stores a version and its lines. */
export async function storeTally(
  transaction: Transaction,
  countId: string,
  version: TallyVersion,
): Promise<void> {
  await transaction.tally.create({
    data: {
      countId,
      id: version.id,
      observerId: version.observer,
      windowId: version.window,
      vantageId: version.vantage,
      sections: canonicalJson(version.sections),
      party: canonicalJson(version.party),
      start: version.start,
      end: version.end,
      scope: canonicalJson(version.scope),
      coverage: version.coverage,
      seenArea: version.seenArea === undefined ? null : canonicalJson(version.seenArea),
      samples: canonicalJson(version.samples),
      marks: canonicalJson(version.marks),
      conditions: version.conditions === undefined ? null : canonicalJson(version.conditions),
      version: version.version,
      replaces: version.replaces,
      reason: version.reason,
      submittedAt: version.submittedAt,
      contentHash: version.contentHash,
    },
  });
  await transaction.tallyLine.createMany({
    data: version.lines.map((line, position) => lineRow(countId, version.id, position, line)),
  });
}

function lineOf(row: LineRow): TallyLine {
  return {
    id: row.id,
    written: row.written,
    candidates: JSON.parse(row.candidates) as string[],
    quantity: quantityOf(row),
    method: row.method as Method,
    ...(row.totalMethod !== null && { totalMethod: row.totalMethod as TotalMethod }),
    block: row.block,
    male: row.male,
    female: row.female,
    adult: row.adult,
    immature: row.immature,
    activity: row.activity as Activity,
    time: row.time,
    position: row.lon === null || row.lat === null ? null : [row.lon, row.lat],
    flock: row.flock,
    heading: row.heading,
    from: row.fromId,
    to: row.toId,
    certainty: row.certainty as Certainty,
    note: row.note,
  };
}

function lineRow(
  countId: string,
  tallyId: string,
  position: number,
  line: TallyLine,
): Prisma.TallyLineCreateManyInput {
  const { quantity } = line;
  const isRange = quantity.kind === 'range' || quantity.kind === 'exact-with-range';
  const isExact = quantity.kind === 'exact' || quantity.kind === 'exact-with-range';
  return {
    countId,
    tallyId,
    position,
    id: line.id,
    written: line.written,
    candidates: canonicalJson(line.candidates),
    quantity: quantity.kind,
    number: isExact ? quantity.number : null,
    low: isRange ? quantity.low : null,
    high: isRange ? quantity.high : null,
    method: line.method,
    totalMethod: line.totalMethod ?? null,
    block: line.block,
    male: line.male,
    female: line.female,
    adult: line.adult,
    immature: line.immature,
    activity: line.activity,
    time: line.time,
    lon: line.position?.[0] ?? null,
    lat: line.position?.[1] ?? null,
    flock: line.flock,
    heading: line.heading,
    fromId: line.from,
    toId: line.to,
    certainty: line.certainty,
    note: line.note,
  };
}

/** The table's CHECKs promise the numbers that each kind has. */
function quantityOf({ quantity, number, low, high }: LineRow): Quantity {
  if (quantity === 'present') return { kind: 'present' };
  if (quantity === 'exact' && number !== null) return { kind: 'exact', number };
  if (low !== null && high !== null) {
    if (quantity === 'range') return { kind: 'range', low, high };
    if (number !== null) return { kind: 'exact-with-range', number, low, high };
  }
  throw new Error(`a stored tally line has the quantity ${quantity} without its numbers`);
}

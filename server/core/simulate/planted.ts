import { leastApart, type Stock } from '../compare/pairing-balance.js';
import type { Planted } from '../score/truth.js';
import { keyOf, overlaps, type LookAlikes } from '../taxa/candidate-set.js';
import type { Sighting } from './sightings.js';
import {
  areParty,
  linesOf,
  shareSection,
  type RecordedLine,
  type TurnRecord,
} from './turn-record.js';

/**
 * Every error that is in the tallies, with the lines of others that speak against it: identified as
 * another species, left at a pair or genus that somebody else resolved, overlooked while somebody
 * else found it, or a slip of the pen.
 */
export function plantedErrors(records: readonly TurnRecord[], lookAlikes: LookAlikes): Planted[] {
  const lines = records.map(linesOf);
  const all = lines.flat();
  return records.flatMap((record, index) => [
    ...(lines[index] ?? []).flatMap((own) => misnamed(own, all, lookAlikes)),
    ...(lines[index] ?? []).flatMap((own) => slipOf(own, all)),
    ...overlooked(record, all),
  ]);
}

function misnamed(
  own: RecordedLine,
  all: readonly RecordedLine[],
  lookAlikes: LookAlikes,
): Planted[] {
  const { candidates, named } = own.line;
  const inLine = new Set(candidates);
  return named.flatMap(({ species, birds, outcome }): Planted[] => {
    if (outcome === 'right') return [];
    const others = linesAbout(own.sighting, species, own.record, all);
    if (outcome === 'misidentified') {
      return [misidentified(own, species, birds, others, all, lookAlikes)];
    }
    const against = others.filter(
      ({ line }) =>
        line.candidates.length < candidates.length &&
        line.candidates.every((candidate) => inLine.has(candidate)),
    );
    return [planted(outcome, own.record, own.sighting, species, birds, [own.id], against)];
  });
}

/** What speaks against it: others' lines of the birds, or of what is left over where they are lacking. */
function misidentified(
  own: RecordedLine,
  species: string,
  birds: number,
  others: readonly RecordedLine[],
  all: readonly RecordedLine[],
  lookAlikes: LookAlikes,
): Planted {
  const { record, sighting, line } = own;
  const key = keyOf(line.candidates);
  const ofFlock = all.filter((each) => shareFlock(each.sighting, sighting));
  const stockOf = (some: TurnRecord): Stock[] =>
    stockFrom(ofFlock.filter((each) => each.record === some));
  const apart = [...new Set(ofFlock.map((each) => each.record))]
    .filter((other) => speaksOf(other, record))
    .map((other) => {
      const flows = leastApart(stockOf(record), stockOf(other), lookAlikes).flows.filter(
        (flow) => flow.kind === 'differently' && keyOf(flow.a ?? []) === key,
      );
      const names = new Set(flows.map((flow) => keyOf(flow.b ?? [])));
      return {
        birds: flows.reduce((sum, flow) => sum + flow.number, 0),
        lines: ofFlock.filter(
          (each) => each.record === other && names.has(keyOf(each.line.candidates)),
        ),
      };
    });
  const against = [
    ...others.filter((other) => !overlaps(other.line.candidates, line.candidates)),
    ...apart.flatMap(({ lines }) => lines),
  ];
  const most = Math.max(0, ...apart.map((each) => Math.round(each.birds)));
  return {
    ...planted('misidentified', record, sighting, species, birds, [own.id], against),
    contradicted: Math.min(birds, most),
  };
}

/** True birds by the name that they were given. */
function stockFrom(lines: readonly RecordedLine[]): Stock[] {
  return lines.map(({ line }) => ({
    candidates: line.candidates,
    number: line.named.reduce((sum, { birds }) => sum + birds, 0),
  }));
}

function slipOf(own: RecordedLine, all: readonly RecordedLine[]): Planted[] {
  const { named, slip } = own.line;
  const [first] = named;
  if (slip === 0 || first === undefined) return [];
  const against = named.flatMap(({ species }) =>
    linesAbout(own.sighting, species, own.record, all),
  );
  return [
    planted('slip', own.record, own.sighting, first.species, Math.abs(slip), [own.id], against),
  ];
}

function overlooked(record: TurnRecord, all: readonly RecordedLine[]): Planted[] {
  return record.sightings
    .filter((sighting) => record.sections.includes(sighting.section))
    .flatMap((sighting) =>
      sighting.overlooked.flatMap(({ species, birds }): Planted[] => {
        const against = linesAbout(sighting, species, record, all);
        return [planted('overlooked', record, sighting, species, birds, [], against)];
      }),
    );
}

/** What others of the same section wrote about one species of one flock. */
function linesAbout(
  sighting: Sighting,
  species: string,
  record: TurnRecord,
  all: readonly RecordedLine[],
): RecordedLine[] {
  return all.filter(
    (other) =>
      speaksOf(other.record, record) &&
      shareFlock(other.sighting, sighting) &&
      other.line.named.some((named) => named.species === species),
  );
}

function shareFlock(one: Sighting, other: Sighting): boolean {
  return one.members.some(({ number }) => other.members.some((each) => each.number === number));
}

/** Another who tallied the section, without conferring. */
function speaksOf(other: TurnRecord, record: TurnRecord): boolean {
  return other !== record && shareSection(other, record) && !areParty(other, record);
}

function planted(
  kind: Planted['kind'],
  record: TurnRecord,
  { section }: Pick<Sighting, 'section'>,
  species: string,
  birds: number,
  lines: readonly string[],
  against: readonly RecordedLine[],
): Planted {
  return {
    kind,
    observer: record.tally.observer,
    // A flock over the border may stand in a tally: then the section that was tallied.
    section: record.sections.includes(section) ? section : (record.sections[0] ?? ''),
    species,
    birds,
    lines,
    against: [...new Set(against.map(({ id }) => id))].sort(),
    contradicted: against.length > 0 ? birds : 0,
  };
}

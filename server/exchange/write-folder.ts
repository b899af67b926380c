import type { Protocol } from '../core/model/protocol.js';
import type { NotedMark, Polygon, Snapshot, Tally, TallyLine } from '../core/model/snapshot.js';
import { CONDITION_COLUMNS, TALLY_COLUMNS, type TallyColumn } from '../core/model/tally-columns.js';
import { parseTaxon } from '../core/taxa/parse-taxon.js';
import { scopeText } from '../core/taxa/scope.js';
import { taxonName } from '../core/taxa/taxon-name.js';
import { writeWktPolygon } from '../core/model/wkt-polygon.js';
import { writeCsv, type CsvCell } from './write-csv.js';

export interface TextFile {
  readonly name: string;
  readonly text: string;
}

/** A count as a count folder: read back, it is the same snapshot and protocol. */
export function writeFolder(snapshot: Snapshot, protocol: Protocol): readonly TextFile[] {
  return [
    { name: 'count.json', text: countJson(snapshot, protocol) },
    { name: 'places.geojson', text: placesGeojson(snapshot) },
    { name: 'tallies.csv', text: talliesCsv(snapshot) },
    ...(snapshot.samples.length === 0 ? [] : [{ name: 'samples.csv', text: samplesCsv(snapshot) }]),
    ...(snapshot.marks === undefined
      ? []
      : [{ name: 'marks.csv', text: marksCsv(snapshot.marks) }]),
    ...(snapshot.history.length === 0 ? [] : [{ name: 'history.csv', text: historyCsv(snapshot) }]),
  ];
}

function countJson(snapshot: Snapshot, protocol: Protocol): string {
  const { id, name, waterbody, date, timeZone, windows, people } = snapshot;
  const count = { id, name, waterbody, date, timeZone, windows, people, protocol };
  return `${JSON.stringify(count, null, 2)}\n`;
}

function placesGeojson({ sections, vantages, views, shoreline = [] }: Snapshot): string {
  const polygon = (coordinates: Polygon) => ({ type: 'Polygon', coordinates });
  const feature = (properties: Readonly<Record<string, string>>, geometry: object) => ({
    type: 'Feature',
    properties,
    geometry,
  });
  const features = [
    ...sections.map(({ id, name, polygon: rings }) =>
      feature({ kind: 'section', id, name }, polygon(rings)),
    ),
    ...vantages.map(({ id, name, position }) =>
      feature({ kind: 'vantage', id, name }, { type: 'Point', coordinates: position }),
    ),
    ...views.map(({ vantage, polygon: rings }) =>
      feature({ kind: 'view', vantage }, polygon(rings)),
    ),
    ...shoreline.map(({ form, lines }) =>
      feature(
        { kind: 'shoreline' },
        form === 'area' ? polygon(lines) : { type: 'LineString', coordinates: lines[0] ?? [] },
      ),
    ),
  ];
  // One feature a line: short to read, and a changed place is a changed line.
  const lines = features.map((one) => `  ${JSON.stringify(one)}`).join(',\n');
  return `{ "type": "FeatureCollection", "features": [\n${lines}\n] }\n`;
}

function talliesCsv({ tallies }: Snapshot): string {
  const rows = tallies.flatMap((tally) => {
    const head = headFields(tally);
    // A tally without any bird is one row: no taxon, number 0.
    if (tally.lines.length === 0) return [{ ...head, number: 0, method: 'one-by-one' }];
    return tally.lines.map((line) => ({ ...head, ...lineFields(line) }));
  });
  const isCondition = (column: TallyColumn): boolean =>
    CONDITION_COLUMNS.some((one) => one === column);
  const hasConditions = tallies.some(({ conditions }) => conditions !== undefined);
  const hasTotalMethods = tallies.some(({ lines }) =>
    lines.some(({ totalMethod }) => totalMethod !== undefined),
  );
  const hasSeenAreas = tallies.some(({ seenArea }) => seenArea !== undefined);
  const columns = TALLY_COLUMNS.filter(
    (column) =>
      (hasConditions || !isCondition(column)) &&
      (hasTotalMethods || column !== 'total-method') &&
      (hasSeenAreas || column !== 'seen-area'),
  );
  return writeCsv(
    columns,
    rows.map((row: Fields) => columns.map((column) => row[column] ?? null)),
  );
}

type Fields = Readonly<Partial<Record<TallyColumn, CsvCell>>>;

function headFields(tally: Tally): Fields {
  return {
    tally: tally.id,
    observer: tally.observer,
    section: tally.sections.join('+'),
    window: tally.window,
    vantage: tally.vantage,
    start: tally.start,
    end: tally.end,
    coverage: tally.coverage,
    scope: scopeText(tally.scope),
    party: tally.party.join('+'),
    'seen-area': tally.seenArea === undefined ? null : writeWktPolygon(tally.seenArea),
    visibility: tally.conditions?.visibility ?? null,
    beaufort: tally.conditions?.beaufort ?? null,
    'sea-state': tally.conditions?.seaState ?? null,
    'ice-cover': tally.conditions?.iceCover ?? null,
    glare: tally.conditions?.glare ?? null,
    disturbance: tally.conditions?.disturbance ?? null,
    optics: tally.conditions?.optics ?? null,
  };
}

function lineFields(line: TallyLine): Fields {
  const { quantity, position, id, written, candidates, totalMethod, ...others } = line;
  return {
    ...others,
    'total-method': totalMethod ?? null,
    taxon: sameTaxon(written, candidates) ? written : taxonName(candidates),
    number: 'number' in quantity ? quantity.number : null,
    low: 'low' in quantity ? quantity.low : null,
    high: 'high' in quantity ? quantity.high : null,
    lon: position === null ? null : position[0],
    lat: position === null ? null : position[1],
    line: id,
  };
}

function samplesCsv({ samples }: Snapshot): string {
  // The tally's column stands only where some raft needs it.
  const hasTally = samples.some(({ tally }) => tally !== undefined);
  return writeCsv(
    ['raft', ...(hasTally ? ['tally'] : []), 'sample', 'taxon', 'number'],
    samples.map(({ raft, tally, sample, candidates, number }) => [
      raft,
      ...(hasTally ? [tally ?? null] : []),
      sample,
      taxonName(candidates),
      number,
    ]),
  );
}

function marksCsv(marks: readonly NotedMark[]): string {
  return writeCsv(
    ['line', 'mark', 'state'],
    marks.map(({ line, mark, state }) => [line, mark, state]),
  );
}

function historyCsv({ history }: Snapshot): string {
  return writeCsv(
    ['taxon', 'year', 'number'],
    history.map(({ candidates, year, number }) => [taxonName(candidates), year, number]),
  );
}

/** A compiler's reading may differ from what the observer wrote. */
function sameTaxon(written: string, candidates: readonly string[]): boolean {
  const parsed = parseTaxon(written);
  return parsed.ok && parsed.candidates.join('/') === candidates.join('/');
}

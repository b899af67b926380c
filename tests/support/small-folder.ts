import type { FolderFile } from '../../server/exchange/folder-files.js';

/** A small count without a fault, as the files of a folder; tests change what they are about. */
export interface SmallFolder {
  count: Record<string, unknown>;
  places: { type: string; features: unknown[] };
  /** Rows of tallies.csv, the header first. */
  rows: string[];
}

const HEADER =
  'tally,observer,section,window,start,end,taxon,number,low,high,method,block,male,female,activity,time,lon,lat,heading,coverage,scope,party,note,line';

const T1 = 't1,o1,s1,w1,2027-01-16T08:15:00-05:00,2027-01-16T10:30:00-05:00';
const T2 = 't2,o2,s1,w1,2027-01-16T08:20:00-05:00,2027-01-16T10:40:00-05:00';

export function square(west: number, south: number): number[][] {
  return [
    [west, south],
    [west + 0.02, south],
    [west + 0.02, south + 0.02],
    [west, south + 0.02],
    [west, south],
  ];
}

export function smallFolder(): SmallFolder {
  const section = (id: string, name: string, west: number) => ({
    type: 'Feature',
    properties: { kind: 'section', id, name },
    geometry: { type: 'Polygon', coordinates: [square(west, 44)] },
  });
  return {
    count: {
      id: 'alder-pond',
      name: 'Alder Pond',
      waterbody: 'Alder Pond',
      date: '2027-01-16',
      timeZone: 'America/Toronto',
      windows: [
        {
          id: 'w1',
          start: '2027-01-16T08:00:00-05:00',
          end: '2027-01-16T11:00:00-05:00',
          slackMinutes: 10,
        },
      ],
      people: [
        { id: 'o1', name: 'Ida Novak', roles: ['observer'] },
        { id: 'o2', name: 'Per Lund', roles: ['observer', 'compiler'] },
      ],
      protocol: { rule: 'mean' },
    },
    places: {
      type: 'FeatureCollection',
      features: [
        section('s1', 'North Bay', -79.02),
        section('s2', 'South Bay', -78.98),
        {
          type: 'Feature',
          properties: { kind: 'vantage', id: 'v1', name: 'Dock' },
          geometry: { type: 'Point', coordinates: [-79.01, 43.999] },
        },
        {
          type: 'Feature',
          properties: { kind: 'view', vantage: 'v1' },
          geometry: { type: 'Polygon', coordinates: [square(-79.02, 44)] },
        },
      ],
    },
    rows: [
      HEADER,
      `${T1},Aythya marila,300,,,block,50,,,water,,,,,1,all-waterbirds,o1,,a1`,
      `${T1},GRSC/LESC,60,50,80,block,,,,water,2027-01-16T08:30:00-05:00,-79.011,44.011,,1,all-waterbirds,o1,,a2`,
      `${T1},Mallard,12,,,one-by-one,,7,5,land,,,,,1,all-waterbirds,o1,,a3`,
      `${T2},Aythya marila,350,,,block,,,,water,,,,,1,waterfowl,o2,,b1`,
      `${T2},Canada Goose,25,,,one-by-one,,,,flying-through,,,,90,1,waterfowl,o2,,b2`,
    ],
  };
}

/** Changes one field of a row by the column's name; `row` as a spreadsheet shows it. */
export function setField(folder: SmallFolder, row: number, column: string, value: string): void {
  const at = HEADER.split(',').indexOf(column);
  if (at < 0) throw new Error(`no column ${column}`);
  const fields = (folder.rows[row - 1] ?? '').split(',');
  fields[at] = value;
  folder.rows[row - 1] = fields.join(',');
}

export function filesOf(folder: SmallFolder): FolderFile[] {
  return [
    { name: 'count.json', content: JSON.stringify(folder.count) },
    { name: 'places.geojson', content: JSON.stringify(folder.places) },
    { name: 'tallies.csv', content: `${folder.rows.join('\n')}\n` },
  ];
}

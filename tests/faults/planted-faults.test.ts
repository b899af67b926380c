import { describe, expect, it } from 'vitest';

import { faultSentence, type Fault } from '../../server/core/model/fault.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import {
  filesOf,
  setField,
  smallFolder,
  square,
  type SmallFolder,
} from '../support/small-folder.js';

async function faultsOf(folder: SmallFolder): Promise<readonly Fault[]> {
  const checked = await checkFolder(filesOf(folder));
  return checked.ok ? [] : checked.faults;
}

/** The faults of the small folder after one change. */
async function faultsAfter(change: (folder: SmallFolder) => void): Promise<readonly Fault[]> {
  const folder = smallFolder();
  change(folder);
  return faultsOf(folder);
}

const short = ({ code, file, row, column, nearest }: Fault): string =>
  [file, row, column, code, nearest].join(' | ');

it('finds nothing in the folder that the others are made from', async () => {
  expect(await faultsOf(smallFolder())).toEqual([]);
});

it('lists every planted fault at once, with its place and the nearest valid value', async () => {
  const folder = smallFolder();
  const [t1 = '', t2 = ''] = [folder.rows[1], folder.rows[4]];
  const add = (base: string, line: string, changes: Readonly<Record<string, string>>): void => {
    folder.rows.push(base);
    const row = folder.rows.length;
    for (const [column, value] of Object.entries({ line, block: '', ...changes })) {
      setField(folder, row, column, value);
    }
  };
  folder.count = {
    ...folder.count,
    date: '2027-02-30',
    timeZone: 'America/Tronto',
    windows: [{ id: 'w1', start: '2027-01-16T11:00:00-05:00', end: '2027-01-16T08:00:00-05:00' }],
    protocol: {
      rul: 'mean',
      zeros: 'mised',
      linkThreshold: 2,
      lookAlikes: [['Aythya marilla', 'LESC']],
    },
  };
  folder.places.features.push(
    {
      type: 'Feature',
      properties: { kind: 'view', vantage: 'v11' },
      geometry: { type: 'Polygon', coordinates: [square(-79, 44).slice(0, 4)] },
    },
    {
      type: 'Feature',
      properties: { kind: 'section', id: 's1' },
      geometry: {
        type: 'Polygon',
        coordinates: [
          [
            [0, 0],
            [1, 1],
            [1, 0],
            [0, 1],
            [0, 0],
          ],
        ],
      },
    },
  );
  add(t1, 'a4', { taxon: 'Aythya marilla' }); // row 7
  add(t1, 'a5', { number: '-3' });
  add(t1, 'a6', { number: '2.5' });
  add(t1, 'a7', { number: '1 200' });
  add(t1, 'a8', { number: 'NaN' }); // row 11
  add(t1, 'a9', { low: '400', high: '200' });
  add(t1, 'a10', { low: '310', high: '400' });
  add(t1, 'a11', { male: '200', female: '101' });
  add(t1, 'a12', { method: 'one by one' });
  add(t1, 'a13', { activity: 'flying' }); // row 16
  add(t1, 'a14', { lon: '-279', lat: '44' });
  add(t1, 'a15', { lat: '44' });
  add(t1, 'a16', { heading: '360' });
  add(t1, 'a17', { time: '2027-01-16T08:30:00' });
  add(t1, 'a1', {}); // row 21
  add(t1, 'a18', { observer: 'o2' });
  add(t2, 'b3', { taxon: '' });
  add(t2, 'b4', { section: 's9' });
  add(t2, 'b5', { coverage: '0' });
  for (const row of [2, 3, 4]) setField(folder, row, 'party', 'o1+nobody'); // as few rows say
  add(t2.replace('t2,', 't3,').replace('T10:40', 'T07:40'), 'c1', { scope: 'waterfwl' }); // row 26

  const found = (await faultsOf(folder)).map(short);
  const expected = [
    'count.json |  | windows[0].end | ends-before-start | ',
    'count.json |  | date | bad-date | ',
    'count.json |  | timeZone | unknown-time-zone | America/Toronto',
    'count.json |  | protocol.rul | unknown-key | rule',
    'count.json |  | protocol.zeros | unknown-word | missed',
    'count.json |  | protocol.lookAlikes[0][0] | unknown-taxon | Aythya marila',
    'count.json |  | protocol.linkThreshold | out-of-range | ',
    'places.geojson |  | features[4].geometry.coordinates[0] | not-closed | ',
    'places.geojson |  | features[5].properties.id | duplicate-id | ',
    'places.geojson |  | features[5].geometry.coordinates[0] | self-crossing | ',
    'places.geojson |  | features[4].properties.vantage | unknown-id | v1',
    'tallies.csv | 2 | party | unknown-id | ',
    'tallies.csv | 3 | party | unknown-id | ',
    'tallies.csv | 4 | party | unknown-id | ',
    'tallies.csv | 7 | taxon | unknown-taxon | Aythya marila',
    'tallies.csv | 8 | number | negative | ',
    'tallies.csv | 9 | number | fraction | ',
    'tallies.csv | 10 | number | thousands-separator | 1200',
    'tallies.csv | 11 | number | not-a-number | ',
    'tallies.csv | 12 | low | low-high | ',
    'tallies.csv | 13 | number | low-high | ',
    'tallies.csv | 14 | male | sub-counts | ',
    'tallies.csv | 15 | method | unknown-word | one-by-one',
    'tallies.csv | 16 | activity | unknown-word | flying-through',
    'tallies.csv | 17 | lon | out-of-range | ',
    'tallies.csv | 18 | lon | missing-value | ',
    'tallies.csv | 19 | heading | out-of-range | ',
    'tallies.csv | 20 | time | bad-time | ',
    'tallies.csv | 21 | line | duplicate-id | ',
    'tallies.csv | 22 | observer | rows-disagree | ',
    'tallies.csv | 23 | taxon | missing-value | ',
    'tallies.csv | 24 | section | unknown-id | ',
    'tallies.csv | 25 | coverage | out-of-range | ',
    'tallies.csv | 26 | end | ends-before-start | ',
    'tallies.csv | 26 | scope | unknown-scope | waterfowl',
  ];
  expect(found).toEqual(expected);
});

describe('a fault is one sentence that says where, what, what was expected and what was meant', () => {
  it.each([
    [
      'taxon',
      'Aythya marilla',
      'tallies.csv, row 2, column taxon: "Aythya marilla" is not a known taxon. Expected a scientific, English or French name, a four-letter code of the IBP–AOS list of 2025, a group such as Aythya sp., or a pair such as Aythya affinis/marila. Did you mean Aythya marila?',
    ],
    [
      'number',
      '12.5',
      'tallies.csv, row 2, column number: "12.5" is not a whole number. Expected a whole number of birds, 0 or more, or nothing if they were seen but not counted.',
    ],
    [
      'method',
      'blok',
      'tallies.csv, row 2, column method: "blok" is not a counting method. Expected one-by-one, block, sample or guess. Did you mean block?',
    ],
  ])('%s %s', async (column, value, sentence) => {
    const faults = await faultsAfter((folder) => setField(folder, 2, column, value));
    expect(faults.map(faultSentence)).toContain(sentence);
  });

  it('calls keys of a JSON file keys', async () => {
    const faults = await faultsAfter((folder) => {
      folder.count['protocol'] = { rule: 'meen' };
    });
    expect(faults.map(faultSentence)).toEqual([
      'count.json, key protocol.rule: "meen" is not a known setting. Expected designated, highest, mean, median, random-effects, weighted-mean or robust-mean. Did you mean mean?',
    ]);
  });
});

describe('one slip is one fault', () => {
  it('in the first row of a tally', async () => {
    const faults = await faultsAfter((folder) => setField(folder, 2, 'observer', 'observer-1'));
    expect(faults.map(short)).toEqual(['tallies.csv | 2 | observer | unknown-id | ']);
  });

  it('in all rows of a tally, and says in how many', async () => {
    const faults = await faultsAfter((folder) => {
      for (const row of [2, 3, 4]) setField(folder, row, 'window', 'w11');
    });
    expect(faults.map(short)).toEqual(['tallies.csv | 2 | window | unknown-id | w1']);
    expect(faultSentence(faults[0] as Fault)).toContain('here and in 2 more rows of tally t1');
  });

  it('where the list of people itself cannot be read', async () => {
    const faults = await faultsAfter((folder) => {
      folder.count['people'] = 'Ida and Per';
    });
    expect(faults.map(short)).toEqual(['count.json |  | people | wrong-type | ']);
  });
});

describe('one observer counts a section at one time once, since their tallies are added up', () => {
  const repeat = (times: string) => (folder: SmallFolder) => {
    const row = (folder.rows[3] ?? '').replace('t1,', 't9,').replace(',a3', ',z1');
    folder.rows.push(row.replace(/2027.*T10:30:00-05:00/u, times));
  };

  it.each([
    ['at the same time', '2027-01-16T09:00:00-05:00,2027-01-16T10:00:00-05:00'],
    ['at no stated time', ','],
    // o2's tally, to 10:40, bridges the two: all three are compared with one another.
    ['within another observer’s slack', '2027-01-16T10:45:00-05:00,2027-01-16T10:50:00-05:00'],
  ])('refuses a second tally %s', async (_, times) => {
    const faults = await faultsAfter(repeat(times));
    expect(faults.map(short)).toEqual(['tallies.csv | 7 | tally | counted-twice | ']);
  });

  it('takes one that is clearly later as a successive count', async () => {
    const times = '2027-01-16T10:51:00-05:00,2027-01-16T10:58:00-05:00';
    expect(await faultsAfter(repeat(times))).toEqual([]);
  });
});

describe('columns', () => {
  it('names a required column that is missing, once, and not every row', async () => {
    const faults = await faultsAfter((folder) => {
      folder.rows[0] = (folder.rows[0] ?? '').replace('method', 'remarks');
    });
    expect(faults.map(short)).toEqual(['tallies.csv | 1 | method | missing-column | ']);
  });

  it('refuses a column that was probably meant to be a known one', async () => {
    const faults = await faultsAfter((folder) => {
      folder.rows[0] = (folder.rows[0] ?? '').replace('coverage', 'covrage');
    });
    expect(faults.map(short)).toEqual(['tallies.csv | 1 | covrage | unknown-column | coverage']);
  });

  it('passes over other columns and says so', async () => {
    const folder = smallFolder();
    folder.rows = folder.rows.map((row, index) => `${row},${index === 0 ? 'weather' : 'calm'}`);
    const checked = await checkFolder(filesOf(folder));
    expect(checked.ok).toBe(true);
    expect(checked.notes).toEqual([
      'tallies.csv: column weather is not one that is read; it was passed over.',
    ]);
  });
});

describe('files', () => {
  it('names all that are missing', async () => {
    const checked = await checkFolder([]);
    expect(checked.ok ? [] : checked.faults.map(({ file }) => file)).toEqual([
      'count.json',
      'places.geojson',
      'tallies.csv',
    ]);
  });

  it('says where JSON goes wrong and still checks the rest', async () => {
    const files = filesOf(smallFolder()).map((file) =>
      file.name === 'count.json' ? { ...file, content: '{\n "id": "x",\n}' } : file,
    );
    const folder = smallFolder();
    setField(folder, 3, 'taxon', 'xyzzy');
    const [, , tallies] = filesOf(folder);
    const [count, places] = files;
    if (count === undefined || places === undefined || tallies === undefined) throw new Error();
    const checked = await checkFolder([count, places, tallies]);
    expect(checked.ok ? [] : checked.faults.map(short)).toEqual([
      'count.json |  |  | bad-json | ',
      'tallies.csv | 3 | taxon | unknown-taxon | ',
    ]);
    expect(checked.ok ? '' : faultSentence(checked.faults[0] as Fault)).toContain(
      'line 3, character 1',
    );
  });

  it('refuses text that is not UTF-8', async () => {
    const files = filesOf(smallFolder());
    const latin1 = Uint8Array.from([0x74, 0xe9, 0x0a]);
    const checked = await checkFolder([
      ...files.slice(0, 2),
      { name: 'tallies.csv', content: latin1 },
    ]);
    expect(checked.ok ? [] : checked.faults.map(short)).toEqual([
      'tallies.csv |  |  | not-utf8 | ',
    ]);
  });

  it('refuses two tables of tallies', async () => {
    const files = [...filesOf(smallFolder()), { name: 'tallies.xlsx', content: '' }];
    const checked = await checkFolder(files);
    expect(checked.ok ? [] : checked.faults.map(short)).toEqual([
      'tallies.xlsx |  |  | duplicate-file | ',
    ]);
  });

  it('holds the columns of optional files against the format', async () => {
    const files = [
      ...filesOf(smallFolder()),
      { name: 'links.csv', content: 'line_a,lineb,same\na1,b1,yes\n' },
    ];
    const checked = await checkFolder(files);
    expect(checked.ok ? [] : checked.faults.map(short)).toEqual([
      'links.csv | 1 | line_b | missing-column | lineb',
    ]);
  });
});

import { describe, expect, it } from 'vitest';

import type { CheckedCount } from '../../server/core/model/check-count.js';
import type { FolderFile } from '../../server/exchange/folder-files.js';
import { inEnglish } from '../../server/core/model/saying.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { filesOf, setField, smallFolder } from '../support/small-folder.js';
import { workbook, type SheetCell } from '../support/workbook.js';

const table = smallFolder().rows.join('\n');

function withTallies(content: string | Uint8Array, name = 'tallies.csv'): Promise<CheckedCount> {
  const others = filesOf(smallFolder()).filter((file) => file.name !== 'tallies.csv');
  return checkFolder([...others, { name, content }]);
}

async function plain(): Promise<CheckedCount> {
  return checkFolder(filesOf(smallFolder()));
}

function problems(checked: CheckedCount): readonly string[] {
  return checked.ok
    ? []
    : checked.faults.map(
        ({ row, code, problem }) => `${String(row)} ${code}: ${inEnglish(problem)}`,
      );
}

describe('the same table, written by other programs, is the same count', () => {
  it.each([
    ['a byte-order mark', `\uFEFF${table}\n`],
    ['a byte-order mark as bytes', new TextEncoder().encode(`\uFEFF${table}\n`)],
    ['CRLF (RFC 4180 section 2.1)', `${table.replaceAll('\n', '\r\n')}\r\n`],
    ['no line break at the end (RFC 4180 section 2.2)', table],
    ['every field quoted', table.replaceAll(/[^,\n]+/gu, '"$&"')],
    ['semicolons', table.replaceAll(',', ';')],
    ['tabs', table.replaceAll(',', '\t')],
    ['empty lines between', table.replaceAll('\n', '\n\n')],
    ['space around fields', table.replaceAll(',', ' , ')],
    ['capital letters in the header', table.replace('number', 'Number').replace('taxon', 'TAXON')],
  ])('%s', async (_, content) => {
    expect(await withTallies(content)).toEqual(await plain());
  });

  it('decimal commas in lon and lat, with a true minus sign', async () => {
    const folder = smallFolder();
    // The later column first: setField splits at commas.
    setField(folder, 3, 'lat', '"44,011"');
    setField(folder, 3, 'lon', '"−79,011"');
    expect(await checkFolder(filesOf(folder))).toEqual(await plain());
  });

  it('rows in another order', async () => {
    const [header = '', ...rows] = table.split('\n');
    expect(await withTallies([header, ...rows.reverse()].join('\n'))).toEqual(await plain());
  });

  it('columns in another order', async () => {
    const reversed = table.split('\n').map((row) => row.split(',').reverse().join(','));
    expect(await withTallies(reversed.join('\n'))).toEqual(await plain());
  });
});

it('keeps commas, quotation marks and line breaks of a note (RFC 4180 sections 2.6 and 2.7)', async () => {
  const folder = smallFolder();
  setField(folder, 2, 'note', '"off the ""point"", half asleep\nand drifting"');
  const checked = await checkFolder(filesOf(folder));
  const lines = checked.ok ? checked.snapshot.tallies.flatMap((tally) => tally.lines) : [];
  expect(lines.find(({ id }) => id === 'a1')?.note).toBe(
    'off the "point", half asleep\nand drifting',
  );
});

describe('tables that cannot be read with certainty are refused', () => {
  it('a row with a field too few, since its values may be in the wrong columns', async () => {
    const content = table.replace('300,,,block', '300,,block');
    expect(problems(await withTallies(content))).toEqual([
      '2 field-count: the row has 23 fields, the header has 24',
    ]);
  });

  it('a row with a field too many', async () => {
    const content = table.replace('Aythya marila,300', 'Aythya marila,1,300');
    expect(problems(await withTallies(content))).toEqual([
      '2 field-count: field 25 holds "a1" but has no column name',
    ]);
  });

  it('a quotation mark that is never closed', async () => {
    const checked = await withTallies(table.replace('Mallard', '"Mallard'));
    expect(problems(checked).join()).toContain('bad-csv: a quotation mark is out of place');
  });

  it('nothing at all', async () => {
    expect(problems(await withTallies(''))).toEqual(['1 no-header: the first row is empty']);
  });

  it('rows are counted as a spreadsheet shows them, empty ones and line breaks in notes included', async () => {
    const folder = smallFolder();
    setField(folder, 2, 'note', '"two\nlines"');
    folder.rows.splice(2, 0, '');
    setField(folder, 5, 'taxon', 'xyzzy');
    expect(problems(await checkFolder(filesOf(folder)))).toEqual([
      '5 unknown-taxon: "xyzzy" is not a known taxon',
    ]);
  });
});

describe('tallies.xlsx', () => {
  const cells = (): SheetCell[][] =>
    table
      .split('\n')
      .map((row) =>
        row.split(',').map((field) => (/^-?\d+(\.\d+)?$/u.test(field) ? Number(field) : field)),
      );

  const read = (sheet: SheetCell[][]): Promise<CheckedCount> =>
    withTallies(workbook('tallies', sheet), 'tallies.xlsx');

  it('is the same count as the same table in CSV', async () => {
    expect(await read(cells())).toEqual(await plain());
  });

  it('names rows as the spreadsheet does, with empty rows between', async () => {
    const sheet = cells();
    sheet.splice(2, 0, []);
    const row = sheet[4] ?? [];
    row[6] = 'xyzzy';
    expect(problems(await read(sheet))).toEqual(['5 unknown-taxon: "xyzzy" is not a known taxon']);
  });

  it('refuses what is no spreadsheet', async () => {
    const file: FolderFile = { name: 'tallies.xlsx', content: new Uint8Array([1, 2, 3]) };
    expect(problems(await withTallies(file.content, file.name))).toEqual([
      'null bad-workbook: the file is not a readable .xlsx spreadsheet',
    ]);
  });
});

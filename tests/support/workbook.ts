import { crc32 } from 'node:zlib';

export type SheetCell = string | number;

function columnName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : columnName(Math.floor(index / 26) - 1) + letter;
}

function sheetXml(rows: readonly (readonly SheetCell[])[]): string {
  const escaped = (text: string): string =>
    text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
  const cell = (value: SheetCell, place: string): string => {
    if (value === '') return '';
    return typeof value === 'number'
      ? `<c r="${place}"><v>${value}</v></c>`
      : `<c r="${place}" t="inlineStr"><is><t xml:space="preserve">${escaped(value)}</t></is></c>`;
  };
  const body = rows
    .map((row, at) => {
      const cells = row.map((value, column) => cell(value, `${columnName(column)}${at + 1}`));
      return row.length === 0 ? '' : `<row r="${at + 1}">${cells.join('')}</row>`;
    })
    .join('');
  return `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${body}</sheetData></worksheet>`;
}

/** Files stored uncompressed in a ZIP archive (APPNOTE.TXT 4.3). */
function zip(files: Readonly<Record<string, string>>): Uint8Array {
  const parts: Buffer[] = [];
  const directory: Buffer[] = [];
  let offset = 0;
  for (const [name, text] of Object.entries(files)) {
    const data = Buffer.from(text);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0); // version needed
    common.writeUInt16LE(0x21, 8); // 1 January 1980
    common.writeUInt32LE(crc32(data), 10);
    common.writeUInt32LE(data.length, 14);
    common.writeUInt32LE(data.length, 18);
    common.writeUInt16LE(name.length, 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04'), common, Buffer.from(name), data]);
    const tail = Buffer.alloc(14);
    tail.writeUInt32LE(offset, 10);
    directory.push(
      Buffer.concat([Buffer.from('PK\x01\x02\x14\x00'), common, tail, Buffer.from(name)]),
    );
    parts.push(local);
    offset += local.length;
  }
  const size = directory.reduce((sum, entry) => sum + entry.length, 0);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(directory.length, 8);
  end.writeUInt16LE(directory.length, 10);
  end.writeUInt32LE(size, 12);
  end.writeUInt32LE(offset, 16);
  return Buffer.concat([...parts, ...directory, end]);
}

/** The smallest spreadsheet (ECMA-376) with one sheet of these cells. */
export function workbook(sheet: string, rows: readonly (readonly SheetCell[])[]): Uint8Array {
  const relation = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const packages = 'http://schemas.openxmlformats.org/package/2006';
  const main = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
  return zip({
    '[Content_Types].xml': `<Types xmlns="${packages}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="${main}.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="${main}.worksheet+xml"/></Types>`,
    '_rels/.rels': `<Relationships xmlns="${packages}/relationships"><Relationship Id="rId1" Type="${relation}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${relation}"><sheets><sheet name="${sheet}" sheetId="1" r:id="rId1"/></sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${packages}/relationships"><Relationship Id="rId1" Type="${relation}/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
    'xl/worksheets/sheet1.xml': sheetXml(rows),
  });
}

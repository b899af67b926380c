import { describe, expect, it } from 'vitest';
import { faultSentence, type Fault } from '../../server/core/model/fault.js';
import { checkFolder } from '../../server/exchange/check-folder.js';
import { filesOf, setField, smallFolder } from '../support/small-folder.js';

/** The small folder with one more file. */
async function checkWith(name: string, rows: readonly string[]) {
  const folder = smallFolder();
  setField(folder, 2, 'line', 'raft-1');
  return checkFolder([...filesOf(folder), { name, content: `${rows.join('\n')}\n` }]);
}

const short = ({ row, column, code, nearest }: Fault): string =>
  [row, column, code, nearest].join(' | ');

async function faultsIn(name: string, rows: readonly string[]): Promise<readonly Fault[]> {
  const checked = await checkWith(name, rows);
  return checked.ok ? [] : checked.faults;
}

describe('history.csv', () => {
  it('is read into numbers of earlier years, by year and taxon', async () => {
    const checked = await checkWith('history.csv', [
      'taxon,year,number,note',
      'Mallard,2026,40,',
      'GRSC/LESC,2025,900,rafts far out',
      'Mallard,2025,0,',
    ]);
    expect(checked.notes).toEqual([]);
    expect(checked.ok && checked.snapshot.history).toEqual([
      { candidates: ['Anas platyrhynchos'], year: 2025, number: 0 },
      { candidates: ['Aythya affinis', 'Aythya marila'], year: 2025, number: 900 },
      { candidates: ['Anas platyrhynchos'], year: 2026, number: 40 },
    ]);
  });

  it('has every fault said at once, and nothing is taken in', async () => {
    const faults = await faultsIn('history.csv', [
      'taxon,year,number',
      'Malard,2026,40',
      'Mallard,2027,40',
      'Mallard,26,40',
      'Mallard,2025,-4',
      'Redhead,2025,10',
      'Aythya americana,2025,12',
      ',2025,',
    ]);
    expect(faults.map(short)).toEqual([
      '2 | taxon | unknown-taxon | Mallard',
      '3 | year | contradiction | ',
      '4 | year | out-of-range | ',
      '5 | number | negative | ',
      '7 | taxon | duplicate-row | ',
      '8 | taxon | missing-value | ',
      '8 | number | missing-value | ',
    ]);
    expect(faultSentence(faults[1] as Fault)).toContain(
      '2027 is not earlier than the count of 2027-01-16',
    );
  });

  it('is not read without its columns', async () => {
    expect((await faultsIn('history.csv', ['taxon,years,number', 'x,y,z'])).map(short)).toEqual([
      '1 | year | missing-column | years',
    ]);
  });
});

describe('samples.csv', () => {
  it('is read into samples of a raft', async () => {
    const checked = await checkWith('samples.csv', [
      'raft,sample,taxon,number',
      'raft-1,2,Aythya marila,30',
      'raft-1,1,Aythya marila,41',
      'raft-1,1,Aythya affinis,9',
    ]);
    expect(checked.notes).toEqual([]);
    expect(checked.ok && checked.snapshot.samples).toEqual([
      { raft: 'raft-1', sample: '1', candidates: ['Aythya affinis'], number: 9 },
      { raft: 'raft-1', sample: '1', candidates: ['Aythya marila'], number: 41 },
      { raft: 'raft-1', sample: '2', candidates: ['Aythya marila'], number: 30 },
    ]);
  });

  it('has every fault said at once', async () => {
    const faults = await faultsIn('samples.csv', [
      'raft,sample,taxon,number',
      'raft-9,1,Aythya marila,30',
      'raft-1,,Aythya marila,30',
      'raft-1,1,Aythya marilla,2.5',
      'raft-1,1,Redhead,3',
      'raft-1,1,REDH,3',
    ]);
    expect(faults.map(short)).toEqual([
      '2 | raft | unknown-id | raft-1',
      '3 | sample | missing-value | ',
      '4 | taxon | unknown-taxon | Aythya marila',
      '4 | number | fraction | ',
      '6 | taxon | duplicate-row | ',
    ]);
  });
});

describe('samples.csv with a column tally', () => {
  it('takes a flock label that several tallies have, and says which tallies have it', async () => {
    const check = (rows: readonly string[]) => {
      const folder = smallFolder();
      const [header = '', ...lines] = folder.rows;
      folder.rows = [`${header},flock`, ...lines.map((row) => `${row},raft A`)];
      const content = ['raft,tally,sample,taxon,number', ...rows].join('\n');
      return checkFolder([...filesOf(folder), { name: 'samples.csv', content }]);
    };
    const good = await check(['raft A,t2,1,Aythya marila,30', 'raft A,t1,1,Aythya marila,20']);
    expect(good.ok && good.snapshot.samples).toEqual([
      { raft: 'raft A', tally: 't1', sample: '1', candidates: ['Aythya marila'], number: 20 },
      { raft: 'raft A', tally: 't2', sample: '1', candidates: ['Aythya marila'], number: 30 },
    ]);
    const bad = await check(['raft A,t3,1,Aythya marila,30', 'raft A,,1,Aythya marila,20']);
    expect(bad.ok ? [] : bad.faults.map(faultSentence)).toEqual([
      'samples.csv, row 2, column tally: no line of tally "t3" has the flock label "raft A". Expected a tally that has it: t1 or t2.',
      'samples.csv, row 3, column raft: "raft A" is a flock label in tallies t1 and t2. Expected the id of a tally line of the raft, or the tally in a column "tally".',
    ]);
  });
});

describe('marks.csv', () => {
  it('is read into marks noted for lines, as the key writes them, by line and mark', async () => {
    const checked = await checkWith('marks.csv', [
      'line,mark,state',
      'b1,profile and crown,rounded and highest ahead of the eye',
      'b1, Bill ,blue-grey with  black only at the nail',
      'a3,speculum,blue between two white borders',
    ]);
    expect(checked.notes).toEqual([]);
    expect(checked.ok && checked.snapshot.marks).toEqual([
      { line: 'a3', mark: 'speculum', state: 'blue between two white borders' },
      { line: 'b1', mark: 'bill', state: 'blue-grey with black only at the nail' },
      { line: 'b1', mark: 'profile and crown', state: 'rounded and highest ahead of the eye' },
    ]);
  });

  it('has every fault said at once, with the nearest name of the line’s own group', async () => {
    const faults = await faultsIn('marks.csv', [
      'line,mark,state',
      'raft-9,bill,all black',
      'b1,bil,all black',
      'b1,bill,all blak',
      'b1,male shoulder,white with thin black lines',
      'b1,female face,',
      ',bill,all black',
      'a2,bill,all black',
      'a2,BILL,blue-grey with black only at the nail',
      'b2,,long and sloping',
    ]);
    expect(faults.map(short)).toEqual([
      '2 | line | unknown-id | raft-1',
      '3 | mark | unknown-mark | bill',
      '4 | state | unknown-state | all black',
      '5 | mark | mark-of-another-group | ',
      '6 | state | missing-value | ',
      '7 | line | missing-value | ',
      '9 | mark | duplicate-row | ',
      '10 | mark | missing-value | ',
    ]);
    expect(faultSentence(faults[3] as Fault)).toBe(
      'marks.csv, row 5, column mark: "male shoulder" is a mark of goldeneyes, and the line is of ' +
        'Greater Scaup. Expected one of profile and crown; bill; male body; female face; female ' +
        'body; wing stripe; black at the nail; male head gloss.',
    );
    expect(faultSentence(faults[2] as Fault)).toContain(
      '"all blak" is not a state of "bill". Expected one of all black; blue-grey with a broad black tip;',
    );
    expect(faultSentence(faults[6] as Fault)).toContain('row 8 has the same mark of a2');
  });

  it('refuses marks of a taxon that no key is about, and of birds that the line has none of', async () => {
    const folder = smallFolder();
    setField(folder, 2, 'taxon', 'American Coot');
    setField(folder, 4, 'male', '12');
    setField(folder, 4, 'female', '');
    const checked = await checkFolder([
      ...filesOf(folder),
      {
        name: 'marks.csv',
        content: [
          'line,mark,state',
          'a1,bill,all black',
          'a3,female tail side,no cream stripe',
          'a3,bill colour,orange with a dark saddle',
          'a3,bill shape,ordinary',
        ].join('\n'),
      },
    ]);
    const faults = checked.ok ? [] : checked.faults;
    expect(faults.map(short)).toEqual([
      '2 | mark | no-field-mark-key | ',
      '3 | state | contradiction | ',
      '4 | state | contradiction | ',
    ]);
    expect(faultSentence(faults[1] as Fault)).toContain(
      'only females show this, and all birds of the line are male',
    );
  });

  it('is not read without its columns', async () => {
    expect((await faultsIn('marks.csv', ['line,mark,sate', 'b1,bill,x'])).map(short)).toEqual([
      '1 | state | missing-column | sate',
    ]);
  });
});

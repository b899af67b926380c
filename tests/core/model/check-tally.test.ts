import { describe, expect, it } from 'vitest';

import { checkTally, type RawTally } from '../../../server/core/model/check-tally.js';
import { faultSentence } from '../../../server/core/model/fault.js';

const COUNT = {
  people: [
    { id: 'o1', name: 'Ida Novak', roles: ['observer' as const] },
    { id: 'o2', name: 'Per Lund', roles: ['observer' as const] },
  ],
  sections: [{ id: 's1', name: 'North Bay', polygon: [] }],
  windows: [
    {
      id: 'w1',
      start: '2027-01-16T08:00:00-05:00',
      end: '2027-01-16T11:00:00-05:00',
      slackMinutes: 10,
    },
  ],
  vantages: [{ id: 'v1', name: 'Dock', position: [-79, 44] as const }],
};

function aTally(changes: Partial<RawTally> = {}): RawTally {
  return {
    id: 'tally-1',
    observer: 'o1',
    sections: ['s1'],
    window: 'w1',
    lines: [{ line: 'l1', taxon: 'scaup sp.', number: 40, method: 'block' }],
    ...changes,
  };
}

function sentencesOf(raw: RawTally): readonly string[] {
  const checked = checkTally(raw, COUNT);
  return checked.ok ? [] : checked.faults.map(faultSentence);
}

function tallyOf(raw: RawTally) {
  const checked = checkTally(raw, COUNT);
  if (!checked.ok) throw new Error(checked.faults.map(faultSentence).join('\n'));
  return checked.value.tally;
}

describe('what it was like to count', () => {
  const none = {
    visibility: null,
    beaufort: null,
    seaState: null,
    iceCover: null,
    glare: null,
    disturbance: null,
    optics: null,
  };

  it('is kept as noted, and left out where nothing was', () => {
    expect(tallyOf(aTally({ conditions: { beaufort: 0, iceCover: 0.25 } })).conditions).toEqual({
      ...none,
      beaufort: 0,
      iceCover: 0.25,
    });
    expect(tallyOf(aTally({ conditions: { ...none, optics: '  ' } }))).not.toHaveProperty(
      'conditions',
    );
  });

  it('is refused beyond its scales, in plain sentences', () => {
    const conditions = {
      visibility: 'hazy',
      beaufort: 13,
      seaState: 10,
      iceCover: 20,
      glare: 'stron',
    };
    expect(sentencesOf(aTally({ conditions }))).toEqual([
      'tally, column visibility: "hazy" is not a visibility. Expected good, moderate, poor or very-poor.',
      'tally, column beaufort: 13 is beyond the scale. Expected a Beaufort force from 0 to 12, or nothing if it was not noted.',
      'tally, column sea-state: 10 is beyond the scale. Expected a state of the sea (WMO code table 3700) from 0 to 9, or nothing if it was not noted.',
      'tally, column ice-cover: "20" is out of range. Expected the share of the section under ice, 0 to 1.',
      'tally, column glare: "stron" is not a degree of glare. Expected none, some or strong. Did you mean strong?',
    ]);
  });
});

describe('checkTally', () => {
  it('gives a whole tally, with what was not said set to its meaning', () => {
    expect(tallyOf(aTally())).toEqual({
      id: 'tally-1',
      observer: 'o1',
      party: ['o1'],
      sections: ['s1'],
      window: 'w1',
      vantage: null,
      start: null,
      end: null,
      scope: { kind: 'all-waterbirds' },
      coverage: 1,
      lines: [
        {
          id: 'l1',
          written: 'scaup sp.',
          candidates: ['Aythya affinis', 'Aythya marila'],
          quantity: { kind: 'exact', number: 40 },
          method: 'block',
          block: null,
          male: null,
          female: null,
          adult: null,
          immature: null,
          activity: 'water',
          time: null,
          position: null,
          flock: null,
          heading: null,
          from: null,
          to: null,
          certainty: 'sure',
          note: null,
        },
      ],
    });
  });

  it.each([
    [{ number: 0 }, { kind: 'exact', number: 0 }],
    [{ number: null }, { kind: 'present' }],
    [{}, { kind: 'present' }],
    [
      { low: 10, high: 20 },
      { kind: 'range', low: 10, high: 20 },
    ],
    [
      { number: 12, low: 10, high: 20 },
      { kind: 'exact-with-range', number: 12, low: 10, high: 20 },
    ],
  ])('keeps a stated zero, "seen but not counted" and ranges apart: %j', (fields, quantity) => {
    const lines = [{ taxon: 'Mallard', method: 'guess', ...fields }];
    expect(tallyOf(aTally({ lines })).lines[0]?.quantity).toEqual(quantity);
  });

  it('takes a tally without any bird', () => {
    expect(tallyOf(aTally({ lines: [] })).lines).toEqual([]);
  });

  it('has the observer in the party, and party and lines in order', () => {
    const lines = ['b', 'a'].map((line) => ({ line, taxon: 'MALL', number: 1, method: 'guess' }));
    const tally = tallyOf(aTally({ observer: 'o2', party: ['o1'], lines }));
    expect(tally.party).toEqual(['o1', 'o2']);
    expect(tally.lines.map(({ id }) => id)).toEqual(['a', 'b']);
  });

  it('reads a scope of taxa', () => {
    expect(tallyOf(aTally({ scope: 'Redhead, scaup sp.' })).scope).toEqual({
      kind: 'taxa',
      species: ['Aythya affinis', 'Aythya americana', 'Aythya marila'],
    });
  });

  it('takes samples of its rafts and marks of its lines, in the order of a snapshot', () => {
    const checked = checkTally(
      aTally({
        lines: [{ line: 'l1', taxon: 'scaup sp.', number: 40, method: 'sample', flock: 'raft A' }],
        samples: [
          { raft: 'raft A', sample: '2', taxon: 'GRSC', number: 5 },
          { raft: 'raft A', sample: '1', taxon: 'scaup sp.', number: 0 },
        ],
        marks: [
          { row: 1, line: 'l1', mark: 'Wing stripe', state: 'white on the inner wing only' },
          { row: 1, line: 'l1', mark: 'bill', state: 'blue-grey with black only at the nail' },
        ],
      }),
      COUNT,
    );
    expect(checked.ok && checked.value.samples).toEqual([
      {
        raft: 'raft A',
        tally: 'tally-1',
        sample: '1',
        candidates: ['Aythya affinis', 'Aythya marila'],
        number: 0,
      },
      { raft: 'raft A', tally: 'tally-1', sample: '2', candidates: ['Aythya marila'], number: 5 },
    ]);
    expect(checked.ok && checked.value.marks).toEqual([
      { line: 'l1', mark: 'bill', state: 'blue-grey with black only at the nail' },
      { line: 'l1', mark: 'wing stripe', state: 'white on the inner wing only' },
    ]);
  });

  it('says what is wrong with samples and marks, at the line or the sample', () => {
    const raw = aTally({
      samples: [{ raft: 'raft A', sample: '1', taxon: 'GRSC', number: 5 }],
      marks: [
        { row: 1, line: 'l1', mark: 'bill', state: 'pink' },
        { row: 1, line: 'l1', mark: 'bill', state: 'all black' },
      ],
    });
    expect(sentencesOf(raw)).toEqual([
      'samples, row 1, column tally: no line of tally "tally-1" has the flock label "raft A". Expected a tally that has it.',
      expect.stringContaining('tally, row 1, column state: "pink" is not a state of "bill".'),
      expect.stringContaining('tally, row 1, column mark: row 1 has the same mark of l1.'),
    ]);
    const empty = aTally({
      lines: [],
      samples: [{ raft: 'raft A', sample: '1', taxon: 'GRSC', number: 5 }],
    });
    expect(sentencesOf(empty)).toHaveLength(1);
  });

  it('says everything that is wrong in the words of the folder check, lines counted from 1', () => {
    const lines = [
      { line: 'l1', taxon: 'Bufflehaed', number: 4, method: 'one-by-one' },
      { line: 'l1', taxon: 'Mallard', number: 4.5, method: 'one-by-one' },
      { line: 'l3', taxon: 'Mallard', number: 4, method: '', male: 5 },
    ];
    expect(sentencesOf(aTally({ window: 'w2', coverage: 1.2, lines }))).toEqual([
      'tally, column window: "w2" is not a window of this count. Expected w1.',
      'tally, column coverage: "1.2" is out of range. Expected the share of the section that was seen, over 0 and up to 1.',
      'tally, row 1, column taxon: "Bufflehaed" is not a known taxon. Expected a scientific, English or French name, a four-letter code of the IBP–AOS list of 2025, a group such as Aythya sp., or a pair such as Aythya affinis/marila. Did you mean Bufflehead?',
      'tally, row 2, column number: "4.5" is not a whole number. Expected a whole number of birds, 0 or more, or nothing if they were seen but not counted.',
      'tally, row 2, column line: "l1" is the id of row 1 too. Expected an id that no other line has.',
      'tally, row 3, column method: nothing is written. Expected one-by-one, block, sample, guess.',
      "tally, row 3, column male: male and female add up to 5, more than the line's 4. Expected at most 4.",
    ]);
  });

  it('refuses sub-counts on birds that were not counted', () => {
    const lines = [{ taxon: 'Mallard', method: 'guess', female: 3 }];
    expect(sentencesOf(aTally({ lines }))).toEqual([
      'tally, row 1, column female: male and female add up to 3 on a line without a number. Expected a number of at least 3, or no sub-counts.',
    ]);
  });

  it('refuses ids that could not be told apart where ids are joined', () => {
    expect(sentencesOf(aTally({ id: 'a+b' }))).toEqual([
      'tally, column tally: "a+b" cannot be an id. Expected letters, digits and - _ . : without spaces.',
    ]);
  });
});

import { expect, it } from 'vitest';
import type { ScanSample } from '../../server/core/model/snapshot.js';
import { aboutCurrent } from '../../server/reviews/review-input.js';
import { aLine, aTally } from '../core/link/a-count.js';

it('what was noted of a corrected tally goes with it; what was noted of others stays', () => {
  const sample = (raft: string, tally?: string): ScanSample => ({
    raft,
    ...(tally !== undefined && { tally }),
    sample: '1',
    candidates: ['Aythya marila'],
    number: 4,
  });
  const mark = (line: string) => ({ line, mark: 'bill', state: 'all black' });
  const current = [
    aTally('corrected', { lines: [aLine('new')] }),
    aTally('other', { lines: [aLine('kept', { flock: 'far raft' })] }),
  ];
  const { samples, marks } = aboutCurrent(
    {
      samples: [
        sample('old'),
        sample('kept'),
        sample('near raft'),
        sample('far raft'),
        sample('far raft', 'other'),
        sample('far raft', 'replaced'),
      ],
      marks: [mark('old'), mark('kept')],
    },
    current,
  );
  expect(samples).toEqual([sample('kept'), sample('far raft'), sample('far raft', 'other')]);
  expect(marks).toEqual([mark('kept')]);
});

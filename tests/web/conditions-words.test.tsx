import { cleanup, screen } from '@testing-library/react';
import { afterEach, expect, test } from 'vitest';
import { draw } from './draw.js';
import { SideBySide } from '../../web/src/reviews/side-by-side.js';
import { conditionsWords } from '../../web/src/ui/conditions-words.js';

afterEach(cleanup);

const none = {
  visibility: null,
  beaufort: null,
  seaState: null,
  iceCover: null,
  glare: null,
  disturbance: null,
  optics: null,
};

test('what was noted is one line, and nothing where nothing was', () => {
  expect(conditionsWords(none)).toBe('');
  expect(conditionsWords({ ...none, beaufort: 0, iceCover: 0, glare: 'none' })).toBe(
    'wind force 0 (calm), no ice, no glare',
  );
  expect(
    conditionsWords({
      visibility: 'very-poor',
      beaufort: 12,
      seaState: 9,
      iceCover: 0.2,
      glare: 'strong',
      disturbance: 'two boats',
      optics: 'telescope',
    }),
  ).toBe(
    'visibility very poor, wind force 12 (hurricane), sea phenomenal (9), ice on 20 %, strong glare, disturbance: two boats, telescope',
  );
});

test('the compiler reads it above the tallies side by side, by observer', () => {
  const tally = (observer: string, observerName: string) => ({
    tally: `t-${observer}`,
    observer,
    observerName,
    total: 0,
    coverage: 1,
    seenAreas: [],
    counted: true,
    lines: [],
  });
  const tallies = [
    { ...tally('o1', 'Ingrid Vale'), conditions: [{ ...none, beaufort: 5 }] },
    { ...tally('o2', 'Tom Reed'), conditions: [] },
  ];
  draw(
    <SideBySide
      cell={{ tallies }}
      sections={[]}
      vantages={[]}
      groupTaxa={null}
      letters={new Map()}
    />,
  );
  const items = screen.getAllByRole('listitem').map(({ textContent }) => textContent);
  expect(items).toEqual(['Ingrid Vale: wind force 5 (fresh breeze).']);
});

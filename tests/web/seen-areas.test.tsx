import { screen } from '@testing-library/react';
import { expect, test } from 'vitest';
import { SeenAreas } from '../../web/src/reviews/seen-areas.js';
import { draftFaults } from '../../web/src/tallies/draft-faults.js';
import { emptyDraft, type Draft } from '../../web/src/tallies/draft.js';
import { correctionOf, tallyInput } from '../../web/src/tallies/tally-input.js';
import { letterObservers } from '../../web/src/ui/observer-mark.js';
import { draw } from './draw.js';
import { ownTally } from './observer-count.js';

const corners = [
  [-79.02, 44],
  [-79.01, 44],
  [-79.01, 44.02],
] as const;
const ring = [...corners, corners[0]].map((corner) => [...corner]);

const drawn: Draft = {
  ...emptyDraft('c1', 'a1'),
  start: '08:20',
  end: '10:30',
  seenAll: false,
  seenPercent: '25',
  seenArea: corners,
};

const frame = {
  sectionIds: ['s1'],
  window: { id: 'w1', start: '2027-01-16T08:00:00-05:00', end: '2027-01-16T11:00:00-05:00' },
  vantageId: null,
  timeZone: 'America/Toronto',
};

test('the outline goes with the tally as a closed ring, and is drawn again when it is corrected', () => {
  expect(tallyInput(drawn, frame).seenArea).toEqual([ring]);
  const ids = {
    countId: 'c1',
    assignmentId: 'a1',
    timeZone: 'America/Toronto',
    observerId: 'o1',
  };
  const sent = ownTally({ coverage: 0.25, seenArea: [ring] });
  expect(correctionOf(sent, ids).seenArea).toEqual(corners);
  expect(correctionOf(ownTally(), ids).seenArea).toEqual([]);
});

test('nothing is sent of an outline that is none, or of one that was given up', () => {
  expect(tallyInput({ ...drawn, seenArea: corners.slice(0, 2) }, frame).seenArea).toBeNull();
  expect(tallyInput({ ...drawn, seenAll: true }, frame).seenArea).toBeNull();
});

test('an outline that crosses itself is told before it is sent', () => {
  const bowTie = [
    [-79.02, 44],
    [-79.01, 44.02],
    [-79.01, 44],
    [-79.02, 44.02],
  ] as const;
  const sentences = (draft: Draft) => draftFaults(draft).map(({ sentence }) => sentence);
  expect(sentences(drawn)).toEqual([]);
  expect(sentences({ ...drawn, seenArea: bowTie })).toEqual([
    'The outline on the map crosses itself: take its last corners back and set them in their order, all the way round.',
  ]);
  // It may stay where it is not sent.
  expect(sentences({ ...drawn, seenAll: true, seenArea: bowTie })).toEqual([]);
});

test('compilers see it on the map of the place, and read the same in words', () => {
  const tallies = [
    { id: 'o1', name: 'Ingrid Vale', seenAreas: [[ring]], coverage: 0.25 },
    { id: 'o2', name: 'Tom Reed', seenAreas: [], coverage: 1 },
  ].map(({ id, name, ...tally }) => ({
    tally: `t-${id}`,
    observer: id,
    observerName: name,
    ...tally,
  }));
  const polygon = [
    [
      [-79.02, 44],
      [-79, 44],
      [-79, 44.02],
      [-79.02, 44.02],
      [-79.02, 44],
    ],
  ];
  const { container, unmount } = draw(
    <SeenAreas
      tallies={tallies}
      sections={[{ id: 's1', name: 'North Bay', polygon }]}
      vantages={[]}
      letters={letterObservers(
        tallies.map(({ observer: id, observerName: name }) => ({ id, name })),
      )}
    />,
  );
  const said = 'A. Ingrid Vale covered 25 % of North Bay, drawn on the map.';
  expect(screen.getAllByRole('listitem').map(({ textContent }) => textContent)).toEqual([said]);
  expect(screen.getByRole('img').getAttribute('aria-label')).toContain(said);
  expect(container.querySelectorAll('.map-outline')).toHaveLength(1);
  expect(
    [...container.querySelectorAll('.map-text-outline')].map((text) => text.textContent),
  ).toEqual(['A']);
  unmount();
  draw(<SeenAreas tallies={tallies.slice(1)} sections={[]} vantages={[]} letters={new Map()} />);
  expect(screen.queryByRole('img')).toBeNull();
});

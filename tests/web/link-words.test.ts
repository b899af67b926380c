import { describe, expect, test } from 'vitest';
import { sceneOf } from '../../web/src/reviews/link-marks.js';
import {
  arrowWords,
  deductionSentence,
  partSentences,
  scoreSentences,
  stateOf,
  strengthOf,
  termName,
  termsInOrder,
  termsOf,
} from '../../web/src/reviews/link-words.js';
import { spanOf } from '../../web/src/reviews/link-time-line.js';
import { widthOf } from '../../web/src/plans/map-marks.js';
import { flocks, north, party, raft, south, still } from './links-count.js';

describe('a link in words', () => {
  test('the score is said with birds by their English names, and only what matters', () => {
    expect(scoreSentences(raft)).toEqual([
      'Taken together: 96 % likely one flock.',
      'For one flock: 1.1 km in 22 minutes (3.0 km/h), which a swimming flock covers; 400 and 380 birds: alike within counting error.',
      'For two: it is one of 4 flocks in South Bay.',
    ]);
    expect(termsOf(raft).at(-1)?.text).toBe(
      'Lesser Scaup and Greater/Lesser Scaup can be the same birds',
    );
    expect(scoreSentences(party).slice(1)).toEqual([
      'Nothing speaks clearly for one flock.',
      'Nothing speaks clearly for two.',
    ]);
  });

  test('weights have the steps of the scale for Bayes factors', () => {
    // Kass & Raftery 1995, J. Am. Stat. Assoc. 90:773: 2 ln B of 0–2 is not worth more than a bare
    // mention, 2–6 positive, 6–10 strong, above 10 very strong (from memory).
    const at = (twiceLnB: number): string => strengthOf(twiceLnB / 2);
    expect([1.9, 2.1, 5.9, 6.1, 9.9, 10.1].map(at)).toEqual([
      'hardly matters',
      'for one flock',
      'for one flock',
      'strongly for one flock',
      'strongly for one flock',
      'very strongly for one flock',
    ]);
    expect(at(-7)).toBe('strongly for two flocks');
  });

  test('terms stand in the order in which one would ask, each with what it is about', () => {
    expect(termsInOrder(raft).map(({ name }) => termName(name))).toEqual([
      'Number of birds',
      'What they were called',
      'Way and time',
      'Other flocks',
    ]);
  });

  test('what it takes off is said before anybody rules, line by line', () => {
    expect(deductionSentence(raft)).toBe(
      'Confirmed, it would take off South Bay: 380 Greater/Lesser Scaup.',
    );
    const two = [
      { taxon: 'Aythya affinis', number: 80 },
      { taxon: 'Aythya affinis/marila', number: 300 },
    ];
    expect(deductionSentence({ ...raft, deducted: true, deduction: two })).toBe(
      'Taken off South Bay: 80 Lesser Scaup and 300 Greater/Lesser Scaup.',
    );
    expect(deductionSentence({ ...raft, deduction: [] })).toMatch(/^It takes no birds off/u);
    expect(stateOf({ ...raft, deduction: [] }, false)).toBe(
      '■ Proposed; no birds would be taken off.',
    );
  });

  test('a part of a flock, one that split and one that was joined are said to be', () => {
    expect(partSentences(raft, [raft, party])).toEqual([]);
    expect(arrowWords(raft, [raft, party])).toBe('96 %');
    const moved = { ...raft, birds: 300 };
    expect(partSentences(moved, [moved])).toEqual([
      'About 300 of the 400 moved, and are among the 380.',
    ]);
    const split = { ...party, id: 'a1~b2', first: raft.first, birds: 14 };
    expect(partSentences(raft, [raft, split])).toEqual([
      'It may have split: others of it may have gone to South Bay (14 birds, 12 %).',
    ]);
    expect(arrowWords(raft, [raft, split])).toBe('96 %, 380 birds');
    const joined = { ...party, id: 'a2~b1', second: raft.second };
    expect(partSentences(raft, [raft, joined])).toEqual([
      'It may have been joined there by birds from North Bay (14 birds, 12 %).',
    ]);
    // What is ruled to be another flock says nothing any more.
    expect(partSentences(raft, [raft, { ...joined, ruling: 'rejected' }])).toEqual([]);
  });

  test('its state says what the draft does with it', () => {
    expect(stateOf(raft, false)).toBe('■ Proposed; 380 birds would be taken off South Bay.');
    expect(stateOf(raft, true)).toContain('waits for a second person');
    expect(stateOf({ ...raft, ruling: 'confirmed' }, false)).toBe(
      '✓ Ruled one flock: 380 birds taken off South Bay.',
    );
    expect(stateOf(party, false)).toMatch(/^□ Below the threshold/u);
  });
});

describe('the map at a moment', () => {
  const sceneAt = (moment: string, chosen = raft) =>
    sceneOf({
      chosen,
      links: [raft, party],
      flocks,
      sections: [north, south],
      moment: Date.parse(`2027-01-16T${moment}:00-05:00`),
      timeZone: 'America/Toronto',
    });

  test('flocks appear at their time, and a link with its second sighting', () => {
    const marks = (moment: string) => sceneAt(moment).flocks.map(({ mark }) => mark);
    expect(marks('08:09')).toEqual([]);
    expect(marks('08:10')).toEqual(['other']);
    expect(marks('08:30')).toEqual(['other', 'first']);
    expect(sceneAt('08:51').arrows).toEqual([]);
    expect(marks('08:52')).toEqual(['other', 'first', 'second']);
    expect(sceneAt('08:52').arrows.map(({ id }) => id)).toEqual([raft.id]);
    // The likely link is over the other, and as many as there are.
    expect(sceneAt('11:00').arrows.map(({ id }) => id)).toEqual([party.id, raft.id]);
  });

  test('a flock says its time while it is being seen, and is fainter afterwards', () => {
    const other = (moment: string) => sceneAt(moment).flocks.find(({ mark }) => mark === 'other');
    expect(other('08:10')).toMatchObject({ isNow: true, words: ['08:10'], at: still.position });
    expect(other('08:30')).toMatchObject({ isNow: false, words: [] });
  });

  test('a sighting without a place stands in its section, and is marked so', () => {
    const [, , , first] = sceneAt('11:00', party).flocks;
    expect(first).toMatchObject({ mark: 'first', isPlaced: false, words: ['14 birds', '09:10'] });
    const [lon = 0, lat = 0] = first?.at ?? [];
    expect(lon).toBeGreaterThan(-79.04);
    expect(lon).toBeLessThan(-79);
    expect(lat).toBeGreaterThan(44.04);
    expect(lat).toBeLessThan(44.08);
  });

  test('the likelier, the thicker', () => {
    const [unlikely, likely] = sceneAt('11:00').arrows;
    expect(unlikely?.words).toBe('12 %');
    expect(likely?.words).toBe('96 %');
    expect(widthOf(likely?.chance ?? 0)).toBeGreaterThan(3 * widthOf(unlikely?.chance ?? 1));
  });

  test('the time line holds the window and whatever was seen outside it', () => {
    const window = { start: '2027-01-16T08:20:00-05:00', end: '2027-01-16T11:00:00-05:00' };
    const span = spanOf(window, flocks);
    expect(span.start).toBe(Date.parse('2027-01-16T08:10:00-05:00'));
    expect(span.end).toBe(Date.parse('2027-01-16T11:00:00-05:00'));
  });
});

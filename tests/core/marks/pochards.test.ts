import { describe, expect, it } from 'vitest';
import type { Plumage } from '../../../server/core/marks/field-mark-key.js';
import { plumagesOf } from '../../../server/core/marks/field-mark-key.js';
import { markNamed, stateNamed } from '../../../server/core/marks/field-mark-keys.js';
import { POCHARDS } from '../../../server/core/marks/pochards.js';
import { supportedSet, type SeenMark } from '../../../server/core/marks/weigh-marks.js';

// How the five pochards are told apart: common practice, no source.

const CANVASBACK = 'Aythya valisineria';
const REDHEAD = 'Aythya americana';
const RING_NECKED = 'Aythya collaris';
const GREATER = 'Aythya marila';
const LESSER = 'Aythya affinis';
const SCAUP = [LESSER, GREATER];
const EITHER: readonly Plumage[] = ['male', 'female'];

function seen(name: string, stateName: string): SeenMark {
  const mark = markNamed(POCHARDS, name);
  const state = mark && stateNamed(mark, stateName);
  if (mark === null || state === null) throw new Error(`no ${name}: ${stateName}`);
  return { mark, state };
}

const left = (
  marks: readonly (readonly [mark: string, state: string])[],
  plumages: readonly Plumage[] = EITHER,
) =>
  supportedSet(
    POCHARDS,
    marks.map(([mark, state]) => seen(mark, state)),
    plumages,
  );

describe('the field-mark key of the pochards', () => {
  it.each([
    [CANVASBACK, 'wedge with the forehead straight into the bill'],
    [REDHEAD, 'rounded and highest ahead of the eye'],
    [RING_NECKED, 'tall and highest behind the eye'],
    [GREATER, 'rounded and highest ahead of the eye'],
    [LESSER, 'tall and highest behind the eye'],
  ])('%s: profile and crown %s', (species, state) => {
    expect(left([['profile and crown', state]])).toContain(species);
  });

  it('tells by the profile canvasback from all, and no two of the same crown apart', () => {
    const crown = (state: string) => left([['profile and crown', state]]);
    expect(crown('wedge with the forehead straight into the bill')).toEqual([CANVASBACK]);
    expect(crown('rounded and highest ahead of the eye')).toEqual([REDHEAD, GREATER]);
    expect(crown('tall and highest behind the eye')).toEqual([LESSER, RING_NECKED]);
  });

  it('has the bill of each: black, broad tip, white band, black at the nail alone', () => {
    const bill = (state: string, plumages = EITHER) => left([['bill', state]], plumages);
    expect(bill('all black')).toEqual([CANVASBACK]);
    expect(bill('blue-grey with a broad black tip', ['male'])).toEqual([REDHEAD]);
    expect(bill('blue-grey with a broad black tip')).toContain(REDHEAD);
    expect(bill('blue-grey with black only at the nail')).toEqual(SCAUP);
    // The band is also in some female redheads, never in males.
    expect(bill('grey with a white band behind a broad black tip', ['male'])).toEqual([
      RING_NECKED,
    ]);
    expect(bill('grey with a white band behind a broad black tip')).toEqual([REDHEAD, RING_NECKED]);
  });

  it('has the male body of each, a redhead passing for white in strong light', () => {
    const body = (state: string) => left([['male body', state]]);
    expect(body('white')).toEqual([REDHEAD, CANVASBACK]);
    expect(body('grey')).toEqual([REDHEAD]);
    expect(body('black back and white wedge at the shoulder')).toEqual([RING_NECKED]);
    expect(body('pale back and even pale flanks')).toEqual(SCAUP);
  });

  it('has the female face and body of each', () => {
    const face = (state: string) => left([['female face', state]]);
    expect(face('no pale patch')).toContain(CANVASBACK);
    expect(face('diffuse pale lores')).toEqual([REDHEAD, RING_NECKED]);
    expect(face('clean white bill base on a dark head')).toEqual(SCAUP);
    const body = (state: string) => left([['female body', state]]);
    expect(body('pale greyish behind a browner breast')).toEqual([CANVASBACK]);
    expect(body('brown')).toEqual([LESSER, REDHEAD, RING_NECKED, GREATER]);
  });

  it('follows the order of work for a female: canvasback, then scaup, then the crown', () => {
    const scaup = [
      ['female body', 'brown'],
      ['female face', 'clean white bill base on a dark head'],
      ['bill', 'blue-grey with black only at the nail'],
    ] as const;
    expect(left(scaup, ['female'])).toEqual(SCAUP);
    const crown = (state: string) => left([...scaup, ['profile and crown', state]], ['female']);
    expect(crown('rounded and highest ahead of the eye')).toEqual([GREATER]);
    expect(crown('tall and highest behind the eye')).toEqual([LESSER]);
  });

  it('leaves the pair where only the black at the nail or the gloss is added: too subtle', () => {
    const bill = ['bill', 'blue-grey with black only at the nail'] as const;
    expect(left([bill, ['black at the nail', 'narrow']])).toEqual(SCAUP);
    expect(left([bill, ['black at the nail', 'wide']])).toEqual(SCAUP);
    expect(left([bill, ['male head gloss', 'purple']])).toEqual(SCAUP);
    expect(left([bill, ['wing stripe', 'white on the inner wing only']])).toEqual(SCAUP);
  });

  it('tells a female ring-necked duck from a banded redhead by the crown', () => {
    const band = ['bill', 'grey with a white band behind a broad black tip'] as const;
    expect(left([band, ['profile and crown', 'tall and highest behind the eye']])).toEqual([
      RING_NECKED,
    ]);
    expect(left([band, ['profile and crown', 'rounded and highest ahead of the eye']])).toEqual([
      REDHEAD,
    ]);
  });

  it('says of a redhead that it looks white in strong light only', () => {
    const { mark, state } = seen('male body', 'white');
    expect(plumagesOf(mark, state, REDHEAD)).toEqual(['male']);
    expect(state.fits).toContainEqual({ species: REDHEAD, when: 'in strong light' });
    expect(mark.fails).toContain('strong light');
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { malesIn, mostFromSexes, sexesLogRatio } from '../../../server/core/link/sexes.js';
import { movedDensity, movedDensityAtMost } from '../../../server/core/link/routes.js';
import { mergeParts, type Flock } from '../../../server/core/link/flock.js';
import { mostFromShares, shareError, sharesLogRatio } from '../../../server/core/link/shares.js';
import { defaultProtocol } from '../../../server/core/model/default-protocol.js';

/** Pairs of sightings are left out early by these bounds: none of them may be too low. */
const SLACK = 1e-9;

const positive = (max: number) => fc.double({ min: 0.001, max, noNaN: true });

describe('what a pair of sightings can come to at most', () => {
  it('bounds the density of a move by the shortest way and the longest time', () => {
    const ways = fc.array(fc.record({ longer: positive(20), sooner: positive(1) }), {
      minLength: 1,
    });
    const doing = fc.constantFrom('water' as const, 'land', 'flushed', 'leaving');
    fc.assert(
      fc.property(
        positive(15),
        positive(4),
        positive(2),
        doing,
        ways,
        (km, hours, error, does, each) => {
          const most = movedDensityAtMost(km, hours, error, does, 8, defaultProtocol);
          for (const { longer, sooner } of [...each, { longer: 0, sooner: 1 }]) {
            const density = movedDensity(
              km + longer,
              hours * sooner,
              error,
              does,
              8,
              defaultProtocol,
            );
            expect(density).toBeLessThanOrEqual(most * (1 + SLACK));
          }
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('bounds what alike shares of kinds can add', () => {
    const names = ['Aythya affinis', 'Aythya marila', 'Fulica americana', 'Anas crecca'];
    const flock = fc
      .record({
        numbers: fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 4, maxLength: 4 }),
        logVariance: positive(1),
      })
      .map(({ numbers, logVariance }) => {
        const parts = mergeParts(
          numbers.flatMap((number, index) =>
            number === 0 ? [] : [{ candidates: [names[index] ?? ''], number }],
          ),
        );
        const number = numbers.reduce((sum, each) => sum + each, 0);
        // Only what shares are worked out from.
        return { parts, number, logVariance } as unknown as Flock;
      });
    fc.assert(
      fc.property(flock, flock, (a, b) => {
        const kinds = Math.min(a.parts.length, b.parts.length);
        fc.pre(kinds > 0);
        const most = mostFromShares(kinds, shareError(a) + shareError(b));
        expect(sharesLogRatio(a, b)).toBeLessThanOrEqual(most + SLACK);
      }),
      { numRuns: 2000 },
    );
  });

  it('bounds what as many males can add', () => {
    const flock = fc
      .record({ male: fc.integer({ min: 0, max: 60 }), female: fc.integer({ min: 0, max: 60 }) })
      .map(({ male, female }) => ({
        number: male + female,
        males: malesIn([{ male, female }], male + female),
      }));
    const alike = fc.oneof(
      fc.tuple(flock, flock),
      flock.map((each) => [each, each] as const),
    );
    fc.assert(
      fc.property(alike, ([a, b]) => {
        const ratio = sexesLogRatio(a, b);
        fc.pre(ratio !== null);
        const [one, other] = [mostFromSexes([a]) ?? NaN, mostFromSexes([b]) ?? NaN];
        expect(ratio).toBeLessThanOrEqual(Math.max(one, other) + SLACK);
      }),
    );
  });
});

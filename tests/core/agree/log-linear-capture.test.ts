import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  captureModel,
  type CaptureModel,
} from '../../../server/core/agree/detection/capture-model.js';
import { logLinearCapture } from '../../../server/core/agree/detection/log-linear-capture.js';
import { estimateFromTwoObservers } from '../../../server/core/agree/detection/two-observers.js';
import { derivativesOf } from '../../../server/core/math/derivatives.js';
import { expectRelative } from '../../support/expect-relative.js';

const DIFFERING = ['none', 'poisson', 'darroch', 'gamma', 'lower-bound'] as const;
const MODELS: readonly CaptureModel[] = [
  ...(['one', 'each'] as const).flatMap((chances) =>
    DIFFERING.map((differing) => ({ chances, differing })),
  ),
  { chances: 'wary' },
  { chances: 'wary-first-apart' },
];

function times<Each>(number: number, each: Each): Each[] {
  return Array.from({ length: number }, () => each);
}

describe('logLinearCapture', () => {
  it('is Lincoln and Petersen for two observers, each with a chance', () => {
    const histories = [
      ...times(20, [true, false]),
      ...times(38, [false, true]),
      ...times(104, [true, true]),
    ];
    const found = logLinearCapture(histories, { chances: 'each' });
    const closed = estimateFromTwoObservers({ first: 124, second: 142, both: 104 });
    expectRelative(found.fitted ? found.value : NaN, closed.lincolnPetersen?.value ?? NaN, 1e-9);
  });

  it('finds the truth where histories are as many as a model says', () => {
    // 1000 flocks, chances .6, .5 and .4 of three observers: 120 are seen by nobody.
    const chances = [0.6, 0.5, 0.4];
    const histories = Array.from({ length: 7 }, (_, number) => {
      const seenBy = chances.map((__, place) => (((number + 1) >> place) & 1) === 1);
      const share = chances.reduce(
        (all, p, place) => all * (seenBy[place] === true ? p : 1 - p),
        1,
      );
      return times(Math.round(1000 * share), seenBy);
    }).flat();
    const found = logLinearCapture(histories, { chances: 'each' });
    expect(found.fitted ? found.value : NaN).toBeCloseTo(1000, 6);
    const differing = logLinearCapture(histories, { chances: 'each', differing: 'lower-bound' });
    expect(differing.fitted ? differing.value : NaN).toBeCloseTo(1000, 0);
  });

  it('says why there is no number', () => {
    const reason = (histories: boolean[][], model: CaptureModel): string | null => {
      const found = logLinearCapture(histories, model);
      return found.fitted ? null : found.reason;
    };
    expect(reason([[true, true]], { chances: 'each', differing: 'darroch' })).toBe('too-few');
    expect(reason(times(9, [true, true, true]), { chances: 'each' })).toBe('at-the-edge');
    const noneTwice = [
      [true, false],
      [false, true],
    ];
    expect(reason(noneTwice, { chances: 'each' })).toBe('at-the-edge');
    // Missed more the longer it goes: those not yet seen have no end.
    const wary = [...times(3, [true, false]), ...times(9, [false, true]), [true, true]];
    expect(reason(wary, { chances: 'wary' })).toBe('at-the-edge');
  });

  it('refuses what is no history', () => {
    expect(() => logLinearCapture([], { chances: 'one' })).toThrow('2 to 12 observers');
    expect(() => logLinearCapture([[false, false]], { chances: 'one' })).toThrow('seen by one');
    expect(() => logLinearCapture([[true, false], [true]], { chances: 'one' })).toThrow('length');
  });

  it('has at least as many as were seen, in any order of histories', () => {
    const history = fc.array(fc.boolean(), { minLength: 4, maxLength: 4 });
    const seen = fc.array(
      history.filter((each) => each.includes(true)),
      { minLength: 5 },
    );
    fc.assert(
      fc.property(seen, fc.constantFrom(...MODELS), (histories, model) => {
        const found = logLinearCapture(histories, model);
        expect(logLinearCapture([...histories].reverse(), model)).toEqual(found);
        if (!found.fitted) return;
        expect(found.value).toBeGreaterThanOrEqual(histories.length);
        expect(found.interval.low).toBeGreaterThanOrEqual(histories.length);
        expect(found.interval.high).toBeGreaterThanOrEqual(found.value);
      }),
    );
  });
});

describe('captureModel', () => {
  it.each(MODELS)('has the gradient of its unseen: %o', (model) => {
    const { columns, unseen } = captureModel(model, 4);
    const at = columns.map((_, place) => [3, -0.4, -0.3, -0.2, 0.1, 0.2, 0.3][place] ?? 0);
    const { gradient } = derivativesOf((there) => Math.log(unseen(there).value), at);
    const found = unseen(at).logGradient;
    expect(found.length).toBe(columns.length);
    gradient.forEach((slope, place) => expect(found[place]).toBeCloseTo(slope, 8));
  });
});

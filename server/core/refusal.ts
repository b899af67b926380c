import { faultSaying, type Fault } from './model/fault.js';
import { inEnglish, joined, say, type Saying } from './model/saying.js';

/** Why something was refused. Programs branch on the code, people read the message. */
export const REFUSAL_CODES = [
  'BAD_INPUT',
  'NOT_SIGNED_IN',
  'NOT_ALLOWED',
  'NOT_FOUND',
  'NOT_NOW',
  'ID_REUSED',
  'ALREADY_SUBMITTED',
  'CONTRADICTION',
  'STALE',
  'WRONG_PASSWORD',
  'INVITE_SPENT',
  'TOO_MANY_TRIES',
] as const;
export type RefusalCode = (typeof REFUSAL_CODES)[number];

/** An expected refusal: not a bug, never logged as one. Its message is English. */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly saying: Saying;
  readonly faults: readonly Fault[];

  /** @param saying what was refused, why, and what to do. */
  constructor(code: RefusalCode, saying: Saying, faults: readonly Fault[] = []) {
    super(inEnglish(saying));
    this.name = 'Refusal';
    this.code = code;
    this.saying = saying;
    this.faults = faults;
  }

  /** The refusal of bad input: every fault at once, nothing taken in. */
  static badInput(faults: readonly Fault[]): Refusal {
    const number = faults.length;
    const head =
      number === 1
        ? say('Nothing was taken in: 1 thing needs mending.')
        : say('Nothing was taken in: {number} things need mending.', { number });
    return new Refusal('BAD_INPUT', joined([head, ...faults.map(faultSaying)], '\n'), faults);
  }
}

import { faultSentence, type Fault } from './model/fault.js';

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

/** An expected refusal: not a bug, never logged as one. */
export class Refusal extends Error {
  readonly code: RefusalCode;
  readonly faults: readonly Fault[];

  /** @param message what was refused, why, and what to do. */
  constructor(code: RefusalCode, message: string, faults: readonly Fault[] = []) {
    super(message);
    this.name = 'Refusal';
    this.code = code;
    this.faults = faults;
  }

  /** The refusal of bad input: every fault at once, nothing taken in. */
  static badInput(faults: readonly Fault[]): Refusal {
    const head =
      faults.length === 1
        ? 'Nothing was taken in: 1 thing needs mending.'
        : `Nothing was taken in: ${faults.length} things need mending.`;
    return new Refusal('BAD_INPUT', [head, ...faults.map(faultSentence)].join('\n'), faults);
  }
}

import { Injectable } from '@nestjs/common';
import { Refusal } from '../core/refusal.js';
import { say } from '../core/model/saying.js';

const WINDOW_MS = 15 * 60_000;
/** Of one name: a person who mistypes is let be, a program that guesses is not. */
const TRIES_BY_NAME = 10;
/** Of one address: a whole programme may sit behind one router. */
const TRIES_BY_ADDRESS = 100;
/** A bound on memory; beyond it the oldest are forgotten. */
const MOST_KEPT = 10_000;

/** Counts sign-ins of the last quarter of an hour that did not succeed. In memory: a restart forgives. */
@Injectable()
export class SignInThrottle {
  readonly #tries = new Map<string, readonly number[]>();

  /**
   * Notes a try before it is known how it ends, so that many at once count as many.
   *
   * @throws Refusal TOO_MANY_TRIES
   */
  begin(name: string, address: string): void {
    const tooMany =
      this.#recent(`name ${name}`).length >= TRIES_BY_NAME ||
      this.#recent(`address ${address}`).length >= TRIES_BY_ADDRESS;
    if (tooMany) {
      throw new Refusal(
        'TOO_MANY_TRIES',
        say('Too many sign-ins have failed. Wait 15 minutes and try again.'),
      );
    }
    for (const key of [`name ${name}`, `address ${address}`]) this.#note(key);
  }

  succeeded(name: string, address: string): void {
    this.#tries.delete(`name ${name}`);
    this.#tries.set(`address ${address}`, this.#recent(`address ${address}`).slice(0, -1));
  }

  #note(key: string): void {
    const times = [...this.#recent(key), Date.now()];
    this.#tries.delete(key);
    this.#tries.set(key, times);
    for (const oldest of this.#tries.keys()) {
      if (this.#tries.size <= MOST_KEPT) break;
      this.#tries.delete(oldest);
    }
  }

  #recent(key: string): readonly number[] {
    const since = Date.now() - WINDOW_MS;
    return (this.#tries.get(key) ?? []).filter((time) => time > since);
  }
}

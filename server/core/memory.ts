/**
 * Remembers what was computed for an input, so that after one tally changes only its own cells are
 * computed again. It never changes an answer: what is remembered is a pure function of its key.
 */
export interface Memory {
  /** The value made for this key before, or made now. */
  recall<Value>(key: string, make: () => Value): Value;
}

/** Remembers one run; what the next run does not ask for is forgotten. */
export class RunMemory implements Memory {
  #before = new Map<string, unknown>();
  #now = new Map<string, unknown>();
  #made = 0;

  /** Begins a run. */
  begin(): void {
    this.#before = this.#now;
    this.#now = new Map();
    this.#made = 0;
  }

  /** How many values this run had to make. */
  get made(): number {
    return this.#made;
  }

  recall<Value>(key: string, make: () => Value): Value {
    if (this.#now.has(key)) return this.#now.get(key) as Value;
    if (!this.#before.has(key)) this.#made += 1;
    const value = this.#before.has(key) ? (this.#before.get(key) as Value) : make();
    this.#now.set(key, value);
    return value;
  }
}

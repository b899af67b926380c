/**
 * Nodes waiting to be visited, nearest first and the lower number first among equals: a binary heap
 * that knows where each node stands in it, so that a node that comes nearer moves up instead of
 * standing in it twice (Cormen et al., *Introduction to Algorithms*, 6.5).
 */
export class NearestFirst {
  readonly #distance: Float64Array;
  readonly #heap: Int32Array;
  /** Where each node stands in the heap; −1 if it is not in it. */
  readonly #place: Int32Array;
  #size = 0;

  /** @param distance of each node, changed from outside; say so with `moveUp` when one gets less */
  constructor(distance: Float64Array) {
    this.#distance = distance;
    this.#heap = new Int32Array(distance.length);
    this.#place = new Int32Array(distance.length).fill(-1);
  }

  /** Takes a node in, or moves it forward after its distance became less. */
  moveUp(node: number): void {
    let place = this.#place[node] ?? -1;
    if (place === -1) {
      place = this.#size;
      this.#size += 1;
    }
    while (place > 0) {
      const above = (place - 1) >> 1;
      const other = this.#heap[above] ?? 0;
      if (!this.#isBefore(node, other)) break;
      this.#put(other, place);
      place = above;
    }
    this.#put(node, place);
  }

  /** The nearest node, no longer waiting; −1 if none is. */
  take(): number {
    if (this.#size === 0) return -1;
    const nearest = this.#heap[0] ?? -1;
    this.#place[nearest] = -1;
    this.#size -= 1;
    if (this.#size > 0) this.#sink(this.#heap[this.#size] ?? 0);
    return nearest;
  }

  clear(): void {
    for (let place = 0; place < this.#size; place += 1) this.#place[this.#heap[place] ?? 0] = -1;
    this.#size = 0;
  }

  /** Puts a node where it belongs, starting from the free top. */
  #sink(node: number): void {
    let place = 0;
    for (;;) {
      let below = 2 * place + 1;
      if (below >= this.#size) break;
      let other = this.#heap[below] ?? 0;
      const right = this.#heap[below + 1] ?? 0;
      if (below + 1 < this.#size && this.#isBefore(right, other)) {
        below += 1;
        other = right;
      }
      if (!this.#isBefore(other, node)) break;
      this.#put(other, place);
      place = below;
    }
    this.#put(node, place);
  }

  #put(node: number, place: number): void {
    this.#heap[place] = node;
    this.#place[node] = place;
  }

  #isBefore(one: number, other: number): boolean {
    const [a, b] = [this.#distance[one] ?? 0, this.#distance[other] ?? 0];
    return a < b || (a === b && one < other);
  }
}

/** Disjoint sets of the whole numbers below `size` (Tarjan 1975), smallest member as the root. */
export class UnionFind {
  readonly #parent: number[];

  constructor(size: number) {
    this.#parent = Array.from({ length: size }, (_, index) => index);
  }

  rootOf(item: number): number {
    let root = item;
    for (let next = this.#parent[root]; next !== undefined && next !== root;) {
      root = next;
      next = this.#parent[root];
    }
    this.#parent[item] = root;
    return root;
  }

  join(one: number, other: number): void {
    const a = this.rootOf(one);
    const b = this.rootOf(other);
    this.#parent[Math.max(a, b)] = Math.min(a, b);
  }

  /** The sets, each ascending, in order of their smallest member. */
  sets(): number[][] {
    const byRoot = new Map<number, number[]>();
    this.#parent.forEach((_, item) => {
      const root = this.rootOf(item);
      const members = byRoot.get(root);
      if (members === undefined) byRoot.set(root, [item]);
      else members.push(item);
    });
    return [...byRoot.values()];
  }
}

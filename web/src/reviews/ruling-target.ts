/** What a ruling is about, as the server names it. */
export interface Target {
  readonly kind: string;
  readonly cell?: string | null | undefined;
  readonly group?: readonly string[] | null | undefined;
  readonly link?: string | null | undefined;
  readonly tally?: string | null | undefined;
  readonly line?: string | null | undefined;
}

/** Groups are named by their taxa: the same set in another order is the same group. */
export function sameTarget(one: Target, other: Target): boolean {
  return keyOf(one) === keyOf(other);
}

function keyOf(target: Target): string {
  return JSON.stringify([
    target.kind,
    target.cell ?? null,
    [...(target.group ?? [])].sort(),
    target.link ?? null,
    target.tally ?? null,
    target.line ?? null,
  ]);
}

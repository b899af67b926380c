/** A kind of disagreement as people read it: `count-spread` → "count spread". */
export function kindWords(kind: string): string {
  return kind === 'over-resolved' ? 'over-resolved identification' : kind.replaceAll('-', ' ');
}

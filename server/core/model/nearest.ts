/**
 * Levenshtein's edit distance (1966): insertions, deletions and substitutions between two texts.
 * Our own, although libraries have it, because the core imports none and must suggest names
 * in a browser without network; a test holds it against a library's.
 */
export function editDistance(first: string, second: string): number {
  let previous = Array.from({ length: second.length + 1 }, (_, column) => column);
  for (let row = 1; row <= first.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= second.length; column += 1) {
      const substitution =
        (previous[column - 1] ?? 0) + (first[row - 1] === second[column - 1] ? 0 : 1);
      const deletion = (previous[column] ?? 0) + 1;
      const insertion = (current[column - 1] ?? 0) + 1;
      current.push(Math.min(substitution, deletion, insertion));
    }
    previous = current;
  }
  return previous[second.length] ?? 0;
}

/**
 * The option that `text` was most likely meant to be, or `null` if none is near: letter case aside,
 * at most a third of the letters differ and fewer than half (so that "o9" suggests nothing), or
 * it is the only option that begins like it. Ties go to the first in order.
 */
export function nearestOf(text: string, options: Iterable<string>): string | null {
  const wanted = text.trim().toLowerCase();
  if (wanted === '') return null;
  const sorted = [...options].sort();
  const allowed = Math.max(1, Math.floor(wanted.length / 3));
  let best: string | null = null;
  let bestDistance = Math.min(allowed + 1, wanted.length / 2);
  for (const option of sorted) {
    if (Math.abs(option.length - wanted.length) >= bestDistance) continue;
    const distance = editDistance(wanted, option.toLowerCase());
    if (distance < bestDistance) {
      best = option;
      bestDistance = distance;
    }
  }
  if (best !== null || wanted.length < 3) return best;
  const begun = sorted.filter((option) => option.toLowerCase().startsWith(wanted));
  return begun.length === 1 ? (begun[0] ?? null) : null;
}

import type { Look } from '../align/looks.js';
import type { Bound } from '../model/result.js';

/**
 * For each species and look: at least the birds named as that species alone, at most also every
 * bird that could be it (belief and plausibility, Shafer 1976, A Mathematical Theory of Evidence).
 * Counting error is not in it: these are bounds of identification.
 */
export function boundsOf(looks: readonly Look[]): Bound[] {
  const species = [
    ...new Set(looks.flatMap((look) => look.lines.flatMap((line) => line.candidates))),
  ].sort();
  return species.flatMap((each) =>
    looks.map((look) => {
      const possible = look.lines.filter((line) => line.candidates.includes(each));
      const certain = possible.filter((line) => line.candidates.length === 1);
      const sum = (lines: typeof possible): number =>
        lines.reduce((running, line) => running + line.number, 0);
      return {
        species: each,
        observer: look.observer,
        atLeast: sum(certain),
        atMost: sum(possible),
      };
    }),
  );
}

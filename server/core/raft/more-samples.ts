import type { RaftComposition } from './compose-raft.js';
import { shareInterval } from './share-interval.js';

/** Beyond this, scanning more is no advice for a winter morning. */
const MOST = 200;

/**
 * How many more small counts, of the size and mixture of those made, would bring every share to within
 * so much of it: half its interval's width, expected as if shares and patches stay as they are now.
 *
 * @param halfWidth share of the raft, such as 0.05
 * @returns 0 where it is there already; `null` where 200 more are not enough
 */
export function moreSamplesFor(composition: RaftComposition, halfWidth: number): number | null {
  const { samples, scanned, identifications } = composition;
  const isEnough = (more: number): boolean => halfWidthAfter(composition, more) <= halfWidth;
  const [first] = identifications;
  if (first === undefined || scanned === 0 || samples === 0) return null;
  if (isEnough(0)) return 0;
  if (!isEnough(MOST)) return null;
  let [tooFew, enough] = [0, MOST];
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (isEnough(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

/** Half the width of the widest interval among the identifications, after so many more small counts. */
export function halfWidthAfter(composition: RaftComposition, more: number): number {
  const { samples, scanned, identifications, evidence } = composition;
  const birds = scanned * (1 + more / samples);
  return Math.max(
    0,
    ...identifications.map(({ share }) => {
      const { low, high } = shareInterval(share, birds, evidence);
      return (high - low) / 2;
    }),
  );
}

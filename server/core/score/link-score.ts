import type { JudgedKind, JudgedLink, JudgedLinks, JudgedTrueLink } from './judge-links.js';

/** Links of which so many are shown, proposed and right; true ones of which so many were found. */
export interface LinkCounts {
  /** A flock tallied in k places makes k − 1. */
  readonly trueLinks: number;
  /** Links found at all, those that are right, and those right in part (not among the right). */
  readonly shown: number;
  readonly shownRight: number;
  readonly shownPartly: number;
  /** True links that they find: two right links between the same places find one. */
  readonly shownFound: number;
  /** The same for links at or over the protocol's threshold. */
  readonly proposed: number;
  readonly proposedRight: number;
  readonly proposedPartly: number;
  readonly proposedFound: number;
  /** True birds counted twice (or more), and those of the true links that proposals find. */
  readonly trueBirds: number;
  readonly birdsFound: number;
  /** Birds that the proposals would take off rightly and wrongly. */
  readonly birdsRight: number;
  readonly birdsWrong: number;
}

/** Links that say about the same probability. */
export interface ReliabilityBin {
  /** From this probability up to a tenth more. */
  readonly from: number;
  readonly shown: number;
  readonly right: number;
  /** Mean probability that they say; `null` if there are none. */
  readonly said: number | null;
}

export interface LinkScore extends LinkCounts {
  /** Precision goes by what a link says that it is, recall by what is true. */
  readonly byKind: Readonly<Record<JudgedKind, LinkCounts>>;
  /** True links of at least `LARGE` birds. */
  readonly large: Pick<LinkCounts, 'trueLinks' | 'shownFound' | 'proposedFound'>;
  readonly reliability: readonly ReliabilityBin[];
  /** Expected calibration error over the tenths; `null` if nothing is shown. */
  readonly calibrationError: number | null;
}

/** Fewer birds are hardly told from others. */
export const LARGE = 10;

const BINS = 10;

/** Adds up what was judged, of one count or of many. */
export function scoreLinks({ links, trueLinks }: JudgedLinks): LinkScore {
  const reliability = reliabilityOf(links);
  const large = countLinks(
    [],
    trueLinks.filter(({ birds }) => birds >= LARGE),
  );
  const ofKind = (kind: JudgedKind): LinkCounts =>
    countLinks(
      links.filter((each) => each.kind === kind),
      trueLinks.filter((each) => each.kind === kind),
    );
  return {
    ...countLinks(links, trueLinks),
    byKind: { overlap: ofKind('overlap'), movement: ofKind('movement') },
    large: {
      trueLinks: large.trueLinks,
      shownFound: large.shownFound,
      proposedFound: large.proposedFound,
    },
    reliability,
    calibrationError: calibrationErrorOf(reliability),
  };
}

function countLinks(
  links: readonly JudgedLink[],
  trueLinks: readonly JudgedTrueLink[],
): LinkCounts {
  const proposed = links.filter((link) => link.proposed);
  const verdicts = (some: readonly JudgedLink[], wanted: JudgedLink['verdict']): number =>
    some.filter(({ verdict }) => verdict === wanted).length;
  const birds = (some: readonly { readonly birds: number }[]): number =>
    some.reduce((sum, each) => sum + each.birds, 0);
  const birdsRight = proposed.reduce((sum, each) => sum + each.birdsRight, 0);
  const found = trueLinks.filter((each) => each.proposed);
  return {
    trueLinks: trueLinks.length,
    shown: links.length,
    shownRight: verdicts(links, 'right'),
    shownPartly: verdicts(links, 'partly'),
    shownFound: trueLinks.filter(({ probability }) => probability !== null).length,
    proposed: proposed.length,
    proposedRight: verdicts(proposed, 'right'),
    proposedPartly: verdicts(proposed, 'partly'),
    proposedFound: found.length,
    trueBirds: birds(trueLinks),
    birdsFound: birds(found),
    birdsRight,
    birdsWrong: birds(proposed) - birdsRight,
  };
}

function reliabilityOf(links: readonly JudgedLink[]): ReliabilityBin[] {
  return Array.from({ length: BINS }, (_, bin) => {
    const own = links.filter(
      ({ probability }) => Math.min(BINS - 1, Math.floor(BINS * probability + 1e-9)) === bin,
    );
    const said = own.reduce((sum, { probability }) => sum + probability, 0);
    return {
      from: bin / BINS,
      shown: own.length,
      right: own.filter(({ verdict }) => verdict === 'right').length,
      said: own.length === 0 ? null : said / own.length,
    };
  });
}

/**
 * Mean distance of what is said from what is right, weighted by links (Naeini, Cooper & Hauskrecht
 * 2015, AAAI: expected calibration error).
 */
function calibrationErrorOf(bins: readonly ReliabilityBin[]): number | null {
  const shown = bins.reduce((sum, bin) => sum + bin.shown, 0);
  if (shown === 0) return null;
  const off = bins.reduce((sum, bin) => sum + Math.abs(bin.right - (bin.said ?? 0) * bin.shown), 0);
  return off / shown;
}

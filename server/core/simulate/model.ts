/**
 * THE GENERATING MODEL of `countersign simulate`, in one place, so that others can criticise it.
 * Its figures were set down before any result of the engine was measured with it.
 *
 * 1. Place. A lake is a row of sections, each 2 km wide and 1.5 km deep, with one vantage point in
 *    the middle of its south shore. A field of view reaches 400 m into each neighbour.
 * 2. Birds. Flocks are drawn by kind (`flock-kinds.ts`) until the wanted number of birds is reached;
 *    sizes are log-normal; a raft of several species has them in drawn shares; every flock lies
 *    anywhere on the lake with the same chance, and has males and females by its species' ratio.
 * 3. Movement. Most flocks stay. Of those that move, two in three swim (0.5 to 2.5 km/h, for 20 to
 *    90 minutes, any direction) and one flies (60 km/h, anywhere on the lake). They leave at any
 *    time of the window. A few more flocks fly over a section without using the lake.
 * 4. Who counts. Every section has so many observers, who stand at its vantage point at about the
 *    same time and come to each flock at a moment of their own. Nobody knows of the others.
 * 5. Detection. Each species of a flock is found or missed by itself:
 *    logit p = logit(p₀) + ln(n / 2) − 0.7 (d − 0.5), n birds at d km, p₀ for a pair at 500 m.
 * 6. Placing. An observer errs by 5 % of the distance and 1.5° of the bearing (standard deviations),
 *    and tallies the flock if it seems to lie in the own section: so a flock on the line between
 *    two sections may be tallied in both, or in neither.
 * 7. Identification. Each species of a flock may be taken for a look-alike (`confusions.ts`): half
 *    of the time all of its birds, otherwise a share of 20 to 100 %. What is not taken for another
 *    may be left at the pair or genus, by the observer's own habit.
 * 8. Number. What an observer writes on a line for n true birds is log-normal about n × bias, with
 *    the protocol's coefficient of variation for the method and n: median n when the bias is 1,
 *    which is "right on median". Lines err independently. Lines without counting error have no bias
 *    either. In addition each observer may have a lasting ratio of the own (off by default).
 *    A proportion sample has one error for the raft's total, and 100 birds named at random, which are
 *    handed in with the tally (`samples.csv`).
 *    Blocks are written to a fifth of the block, guesses to two digits.
 * 9. Slips. A share of the lines (none by default) is halved or doubled: a page or a row misread.
 * 10. Partial coverage. For a share of the tallies one end of the place is hidden, and 40 to 90 % of
 *    its width is seen; the tally says how much. Flocks in the hidden part are not overlooked.
 * 11. Merged sections. Of a share of the neighbouring sections that are counted at one time, the last
 *    of the western team stands between them and tallies both as one, in the place of the last of
 *    the eastern team. Three in a row are never joined.
 * 12. Parties. In a share of the sections the first two of the team count together: both tallies name
 *    both, the second writes down the flocks that the first finds, when and where and as what the
 *    first says, and only the numbers are the second's own. They are one independent count.
 * 13. Past the line. A share of the observers (none by default) tally whatever is in their field of
 *    view, on the far side of the line too: such flocks are counted by the neighbours as well.
 * 14. Splits and joins. Of a share of the moving flocks (none by default) half leave only in part: 20
 *    to 80 % of their birds, of every species alike. The others go on to the staying flock nearest to
 *    their goal that has one of their species, and are one flock with it from then on (where there is
 *    none they move alone). Who looks at one of such a pair looks at the other at the same moment.
 * 15. Totals. A share of the tallies (none by default) has one line a taxon instead of flock by flock:
 *    the birds of all flocks counted as one number (8), without time, position, label or slip.
 *
 * What is in the truth. Birds that were there to be seen in a section: of every flock that was in it
 * when one of its observers looked, whether in the hidden part or not; in merged sections each flock
 * once. Planted errors: every bird that a line calls another species than it is, without regard to how
 * it came about; of these `contradicted` is what can be found by comparing (`score/truth.ts`). Nobody
 * of an observer's own party speaks against the observer. Flocks: birds that kept together from first
 * to last (of a flock that split there are two, and lines from before the split hold both), each with the lines that its birds
 * are in. A total has two truths: birds that were in some section when one of its own observers looked
 * (in sight), and birds that at least one tally has (recorded), each once. Misses lower both the
 * raw total and the second, so double counting is held against the second.
 *
 * What it leaves out: weather, diving birds under water, birds that sleep in reeds and are never to
 * be seen, errors that two observers share who did not count together.
 */

/** Kilometres. Invented; about what one person can count from one point. */
export const SECTION_WIDTH = 2;
export const SECTION_DEPTH = 1.5;
export const VIEW_BEYOND = 0.4;

/**
 * Chance to find a pair at 500 m: experienced observer on the ground, Pagano & Arnold 2009 (J. Wildl.
 * Manage. 73:392): 0.911 (novices 0.790), for duck groups on wetlands. That the odds grow with the
 * number of birds, and fall by half with each kilometre: common practice, no source.
 */
export const DETECTION = 0.911;
export const DETECTION_PER_KM = -0.7;
export const DETECTION_AT_KM = 0.5;

/** Common practice, no source: with a map and landmarks, without a range finder. */
export const DISTANCE_ERROR = 0.05;
export const BEARING_ERROR_DEGREES = 1.5;

/** Common practice, no source, but for the speeds' limits, which are the protocol's. */
export const MOVING = 0.15;
export const SWIMMING_SHARE = 2 / 3;
export const SWIMMING_KMH: readonly [low: number, high: number] = [0.5, 2.5];
export const SWIMMING_HOURS: readonly [low: number, high: number] = [1 / 3, 1.5];
export const FLYING_KMH = 60;
/** Of the flocks that split or join, and of the birds of one that splits. No source. */
export const LEAVING_IN_PART = 0.5;
export const SHARE_LEAVING: readonly [low: number, high: number] = [0.2, 0.8];
/** Flocks that only pass, for each flock that uses the lake. */
export const PASSING_SHARE = 0.04;

/**
 * Observers running low: the mean of 29 % too few in a screen simulator of 200 to 6,000 birds
 * (Frederick et al. 2003, J. Field Ornithol.). Shore counters were found up to 37 % low (Rappoldt,
 * Kersten & Smit 1985, Ardea 73:13).
 */
export const RUNNING_LOW = 0.71;

/**
 * Still flocks of 500 or fewer are counted bird by bird, larger ones in blocks, one species at a
 * time (Gregory, Gibbons & Donald 2004, in Bird Ecology and Conservation).
 */
export const ONE_BY_ONE_TO = 500;
export const BLOCK = 50;
/** Direct count to a few hundred, then blocks (British Columbia RISC no. 8, 1998): the quick habit. */
export const QUICK_ONE_BY_ONE_TO = 100;
export const QUICK_BLOCK = 20;
/** Common practice, no source. */
export const QUICK_GUESS_FROM = 1000;
export const SAMPLE_SIZE = 100;

/** How often an observer leaves birds that are hard to tell apart at the pair: each has a habit of
 * the own between these. Common practice, no source. */
export const LEAVES_COARSE: readonly [low: number, high: number] = [0.1, 0.4];
/** Of those, this share goes to the genus where the pair is meant. Common practice, no source. */
export const TO_GENUS = 0.25;
/** Misidentified as a whole, otherwise a share of at least so much. Common practice, no source. */
export const ALL_MISIDENTIFIED = 0.5;
export const LEAST_SHARE_MISIDENTIFIED = 0.2;

/** What observers note of a flock, as chances. Common practice, no source. */
export const NOTES = { time: 0.7, position: 0.6, heading: 0.5, destination: 0.25, sexes: 0.5 };
/** Sexes are told apart in flocks up to this many birds. Common practice, no source. */
export const SEXED_UP_TO = 40;

/** How often, as shares. Common practice, no source: most tallies are of one whole section by one. */
export const PARTIAL = 0.05;
export const MERGED = 0.05;
export const PARTIES = 0.05;
/** Share of the place that is seen where a part is hidden. Common practice, no source. */
export const SHARE_SEEN: readonly [low: number, high: number] = [0.4, 0.9];

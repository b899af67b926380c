import type { MessageDescriptor } from '@lingui/core';
import { msg } from '@lingui/core/macro';

/** What stands behind a statistic, for the reader who asks; the same as the comments of the core say. */
export interface StatisticNote {
  readonly name: MessageDescriptor;
  /** One sentence that needs no statistics. */
  readonly says: MessageDescriptor;
  readonly doesNotSay: MessageDescriptor;
  /** Whole sentences, one after the other. */
  readonly method: readonly MessageDescriptor[];
  readonly source: MessageDescriptor;
  readonly assumes: MessageDescriptor;
}

const wholeGroups = msg`The interval is a bootstrap of whole groups from a fixed seed (Davison & Hinkley 1997, Bootstrap Methods, 3.8), since birds of one flock are seen, missed and misnamed together.`;

/** The statistics of every comparison, in the order in which tables show them. */
export const measureNotes = {
  percentAgreement: {
    name: msg`Birds agreed`,
    says: msg`The share of birds to which both gave the same name, one for one.`,
    doesNotSay: msg`Whether the name is right; and some of it would come about by chance, which kappa takes out.`,
    method: [
      msg`Pairs of birds with the same candidate set, of all pairs of birds and birds that only one observer has.`,
      wholeGroups,
    ],
    source: msg`The pairing balance of the two tallies.`,
    assumes: msg`Groups are independent of each other.`,
  },
  withinTolerance: {
    name: msg`Within 20 %`,
    says: msg`The share of groups whose smaller number is at least 80 % of the larger.`,
    doesNotSay: msg`Which of the two numbers is nearer to the truth, or what the birds were called.`,
    method: [
      msg`A group that only one observer saw is not within. A fifth is about the error of one block count of a resting flock.`,
      wholeGroups,
    ],
    source: msg`Kersten, Rappoldt & Smit 1981, Limosa 54:37, for the fifth.`,
    assumes: msg`Groups are independent of each other; small and large ones weigh the same.`,
  },
  brayCurtisSimilarity: {
    name: msg`Bray–Curtis similarity`,
    says: msg`How far the numbers of all groups overlap: 1 if they are the same, 0 if nothing overlaps.`,
    doesNotSay: msg`How well small groups agree: large flocks decide it.`,
    method: [msg`1 less the dissimilarity Σ|x − y| / Σ(x + y) over totals of groups.`, wholeGroups],
    source: msg`Bray & Curtis 1957, Ecol. Monogr. 27:325.`,
    assumes: msg`Groups are independent of each other.`,
  },
  concordance: {
    name: msg`Lin’s concordance`,
    says: msg`How near two counts lie to being equal, on a scale of ratios: 1 is equal, 0 is no relation.`,
    doesNotSay: msg`How large the differences are: with groups from two to thousands of birds it is high almost whatever happens.`,
    method: [
      msg`Concordance of logarithms of totals. Groups of which one saw none have no logarithm and are left out. One pair of observers: the interval on Fisher’s z scale; several pairs: a bootstrap of whole groups.`,
    ],
    source: msg`Lin 1989, Biometrics 45:255; corrected 2000, Biometrics 56:324.`,
    assumes: msg`Groups are independent, and logarithms of totals about normal.`,
  },
  alpha: {
    name: msg`Krippendorff’s alpha`,
    says: msg`Agreement of all observers’ numbers at once beyond chance, zeros included: 1 is full, 0 is as by chance.`,
    doesNotSay: msg`Who differs from whom.`,
    method: [
      msg`1 less observed by expected disagreement of totals, ratio metric, with gaps where somebody did not count a group; the interval is a bootstrap of whole groups.`,
    ],
    source: msg`Krippendorff 2011, Computing Krippendorff’s Alpha-Reliability.`,
    assumes: msg`Observers are interchangeable, and groups independent.`,
  },
  kappa: {
    name: msg`Kappa`,
    says: msg`How far names of birds that both saw agree beyond what chance would give: 1 is all, 0 no more than chance.`,
    doesNotSay: msg`That names differ by error: a pair or group is a name of its own here, though it may be right beside a species. Where nearly all birds are of one taxon it is low for that reason alone.`,
    method: [
      msg`Cohen’s kappa of the names of paired birds; of several pairs of observers together each bird counts both ways round, which makes it Fleiss’ kappa for two raters.`,
      wholeGroups,
    ],
    source: msg`Cohen 1960, Educ. Psychol. Meas. 20:37; Fleiss 1971, Psychol. Bull. 76:378.`,
    assumes: msg`Groups are independent of each other.`,
  },
  weightedKappa: {
    name: msg`Weighted kappa`,
    says: msg`How far names agree beyond chance, where a pair or group counts as partly the same as a species that it holds: 1 is all.`,
    doesNotSay: msg`Which of two observers went too far, or not far enough.`,
    method: [
      msg`Kappa with the overlap of the two candidate sets, shared species of all species, as weight.`,
      wholeGroups,
    ],
    source: msg`Cohen 1968, Psychol. Bull. 70:213; overlap: Jaccard 1901.`,
    assumes: msg`Groups are independent of each other.`,
  },
  adjustedKappa: {
    name: msg`Adjusted kappa`,
    says: msg`Kappa as it would be if all names were as common as each other.`,
    doesNotSay: msg`Anything beyond the share of birds named the same: it is that share, rescaled.`,
    method: [
      msg`Prevalence- and bias-adjusted kappa, (k p − 1)/(k − 1) with k names of which a share p is the same.`,
      wholeGroups,
    ],
    source: msg`Byrt, Bishop & Carlin 1993, J. Clin. Epidemiol. 46:423.`,
    assumes: msg`Groups are independent of each other.`,
  },
} satisfies Record<string, StatisticNote>;

export type MeasureKey = keyof typeof measureNotes;

export const measureKeys = Object.keys(measureNotes) as readonly MeasureKey[];

/** What stands behind the pictures and the other tables. */
export const pictureNotes = {
  ratios: {
    name: msg`Limits of agreement of ratios`,
    says: msg`Between which ratios two observers’ counts of one group mostly lie.`,
    doesNotSay: msg`Who is right, and nothing of groups that only one of them saw.`,
    method: [
      msg`Mean and standard deviation of differences of logarithms of totals, taken back to ratios; limits hold the middle 95 %. Intervals of the limits are exact, by the noncentral t distribution, each limit by itself.`,
    ],
    source: msg`Bland & Altman 1986, Lancet i:307; intervals: Carkeet 2015, Optom. Vis. Sci. 92:e71.`,
    assumes: msg`Ratios do not depend on the size of the group, are independent, and about normal on the logarithmic scale. The picture shows whether they are.`,
  },
  confusion: {
    name: msg`Confusion table`,
    says: msg`What one observer called birds that the other called something.`,
    doesNotSay: msg`Which name is right. Birds are paired so that as many as possible agree: true confusion can be more, not less.`,
    method: [
      msg`Added up from the pairing balances of independent full counts: first most pairs of the same name, then most that agree at a coarser level, then look-alikes. Where several pairings are equally good, birds are shared out among them.`,
    ],
    source: msg`The pairing balance of this program; no outside method.`,
    assumes: msg`Both observers had the same birds before them.`,
  },
  sensitivity: {
    name: msg`Also named so by the other`,
    says: msg`Of the birds that one observer gave a taxon and both saw, the share that the other gave it too.`,
    doesNotSay: msg`Who is right: neither observer is the truth.`,
    method: [msg`Share of paired birds, taxon by taxon.`, wholeGroups],
    source: msg`The confusion table; no outside method.`,
    assumes: msg`Cells are independent of each other.`,
  },
  observers: {
    name: msg`Observers’ ratios`,
    says: msg`How an observer’s numbers stand to those of the others who counted the same birds: 1 is level.`,
    doesNotSay: msg`Who was right. If all overlook the same birds, all are level.`,
    method: [
      msg`Logarithm of total = group + observer + residual: ratios by least squares within groups, to the geometric mean of the set of observers whom shared groups link; variances by restricted maximum likelihood, their intervals by Satterthwaite.`,
    ],
    source: msg`Scheffé 1959, The Analysis of Variance, 5.2; Patterson & Thompson 1971, Biometrika 58:545; Satterthwaite 1946, Biometrics Bull. 2:110.`,
    assumes: msg`Effects independent and about normal, and one residual variance for small and large groups. Groups of which an observer saw none rest on the others.`,
  },
  simpleRatio: {
    name: msg`Ratio to each group’s others`,
    says: msg`An observer’s total by the mean of those who counted the same group: 1 is level.`,
    doesNotSay: msg`Who was right.`,
    method: [
      msg`Geometric mean over groups of the observer’s total by the geometric mean of the others’; Student’s t interval on the logarithmic scale. Groups of which one saw none are left out.`,
    ],
    source: msg`Student’s t on logarithms; no further source.`,
    assumes: msg`Groups are independent; small and large ones weigh the same.`,
  },
  consistency: {
    name: msg`Mandel’s h and k`,
    says: msg`Who stands apart by the mean (h), and who by the spread (k), among observers who counted the same groups.`,
    doesNotSay: msg`That somebody counted badly: the one who stands apart may be the one who looked best.`,
    method: [
      msg`h: deviation of the observer’s mean ln ratio from the mean of all, in standard deviations of the means. k: own spread by pooled spread. Critical values at 5 % and 1 %, h two-sided by Student’s t, k by F.`,
    ],
    source: msg`Mandel 1985; ISO 5725-2:2019, 7.3.1; ASTM E691.`,
    assumes: msg`Independent normal values. Three observers or more who counted the same groups.`,
  },
  intraclass: {
    name: msg`Intraclass correlation`,
    says: msg`How much of the spread of numbers is between groups rather than between observers: 1 is all.`,
    doesNotSay: msg`How large differences are: where groups go from two to thousands of birds, hardly anything else is left to be between observers.`,
    method: [
      msg`Six forms, of logarithms of totals that all of the observers counted and saw some of. Single: of one count; mean: of the mean of all.`,
    ],
    source: msg`Shrout & Fleiss 1979, Psychol. Bull. 86:420; intervals: McGraw & Wong 1996, Psychol. Methods 1:30.`,
    assumes: msg`Effects independent and about normal, with one variance.`,
  },
  detection: {
    name: msg`Flocks that were missed`,
    says: msg`How many flocks there were, from those that independent observers saw alone and together.`,
    doesNotSay: msg`How many birds were missed, or anything of flocks under ten birds. The interval tells of chance alone and errs downwards: on simulated counts with two observers it held the truth 25 times of 30 where flocks are as easy to find as usual, 9 times of 30 where they are hard to find. It is never added to the compiled count.`,
    method: [
      msg`Two observers: Chapman’s estimate with the interval of the profile likelihood. More: the conditional likelihood of Huggins with a chance for each. Nothing with fewer than seven flocks seen by two or more.`,
    ],
    source: msg`Chapman 1951, Univ. Calif. Publ. Stat. 1:131; Cormack 1992, Biometrics 48:567; Huggins 1989, Biometrika 76:133; Robson & Regier 1964, Trans. Am. Fish. Soc. 93:215, for the seven.`,
    assumes: msg`Observers did not help each other, no flock came or went, flocks were matched without error, and all were as easy to see. Where some are harder to see, more were missed than it says.`,
  },
} satisfies Record<string, StatisticNote>;

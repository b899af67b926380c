import type { Saying } from './saying.js';

/**
 * How well observers agree, as `reconcile` tells it. A statistic has its interval and the number of
 * units it rests on; `value: null` = too few of them, or 0/0.
 */
export interface Statistic {
  readonly value: number | null;
  readonly low: number | null;
  /** `null` too where there is no upper limit, as for a number of flocks of which none were matched. */
  readonly high: number | null;
  readonly n: number;
}

export interface AgreementMeasures {
  /** Share of birds on which identification and number agree to the bird. */
  readonly percentAgreement: Statistic;
  /** 1 − dissimilarity of Bray & Curtis over groups. */
  readonly brayCurtisSimilarity: Statistic;
  /** Lin's concordance of ln group totals. */
  readonly concordance: Statistic;
  /** Share of groups of which the smaller total is at least 80 % of the larger. */
  readonly withinTolerance: Statistic;
  /** Krippendorff's alpha of group totals, ratio metric, zeros included. */
  readonly alpha: Statistic;
  /** Cohen's kappa of the identifications given to birds both saw. */
  readonly kappa: Statistic;
  /** The same with the overlap of candidate sets (Jaccard) as weight. */
  readonly weightedKappa: Statistic;
  /** The same as if all identifications were as common as each other. */
  readonly adjustedKappa: Statistic;
}

export type NumberMeasures = Omit<AgreementMeasures, 'kappa' | 'weightedKappa' | 'adjustedKappa'>;

/** One group of a cell as two observers counted it: a point of the ratio plot. */
export interface RatioPoint {
  readonly cell: string;
  readonly group: string;
  /** Birds by a and by b, both over 0. */
  readonly a: number;
  readonly b: number;
  /** Geometric mean of both: how large the group is. */
  readonly mean: number;
  readonly ratio: number;
}

/** Limits of agreement of two observers' counts as ratios a : b, and the points they come from. */
export interface RatioPlot {
  readonly points: readonly RatioPoint[];
  readonly meanRatio: Statistic;
  /** Between these the middle 95 % of ratios are expected; intervals exact. */
  readonly lower: Statistic;
  readonly upper: Statistic;
}

/** What one called birds that the other called something: from the pairing balance. */
export interface ConfusionTable {
  /** All taxa in it, sorted. */
  readonly taxa: readonly string[];
  /** Numbers over 0; `null` = counted by the other only. May be fractional, as pairings are. */
  readonly entries: readonly {
    readonly a: string | null;
    readonly b: string | null;
    readonly number: number;
  }[];
}

/** Of birds that one observer gave a taxon and both saw, the share that the other gave it too. */
export interface Sensitivity {
  readonly taxon: string;
  /** Birds both saw that a, b, and both gave the taxon. */
  readonly byA: number;
  readonly byB: number;
  readonly byBoth: number;
  /** Of b's, what a gave it too; and of a's, what b did. */
  readonly ofA: Statistic;
  readonly ofB: Statistic;
}

export interface PairAgreement extends AgreementMeasures {
  readonly a: string;
  readonly b: string;
  readonly ratios: RatioPlot;
  readonly confusion: ConfusionTable;
  readonly sensitivities: readonly Sensitivity[];
}

/** The six forms of the intraclass correlation of ln totals of groups that all of a set counted. */
export interface Intraclass {
  readonly observers: readonly string[];
  readonly oneWaySingle: Statistic;
  readonly oneWayMean: Statistic;
  readonly agreementSingle: Statistic;
  readonly agreementMean: Statistic;
  readonly consistencySingle: Statistic;
  readonly consistencyMean: Statistic;
}

/** ln total = group + observer + residual, by restricted maximum likelihood. For leaders only. */
export interface ObserverModel {
  /** Totals it rests on, and the groups they are of. */
  readonly n: number;
  readonly groups: number;
  /** Variances of ln totals. */
  readonly betweenGroups: Statistic;
  readonly betweenObservers: Statistic;
  readonly residual: Statistic;
  /** To the geometric mean of the observers of the same set; others cannot be compared. */
  readonly observers: readonly {
    readonly observer: string;
    readonly ratio: Statistic;
    readonly set: number;
  }[];
}

/** Mandel's h and k of ln ratios to the mean of the group. For leaders only. */
export interface ObserverConsistency {
  /** Groups that all of these observers counted: values of each. */
  readonly groups: number;
  readonly hCritical: CriticalValues;
  readonly kCritical: CriticalValues;
  readonly observers: readonly {
    readonly observer: string;
    /** How far its mean stands apart: |h| above a critical value is. */
    readonly h: number | null;
    /** How its spread stands to that of all: k above a critical value is apart. */
    readonly k: number | null;
  }[];
}

/** Above `questioned` (5 %) and `serious` (1 %) an observer stands apart (ISO 5725-2). */
export interface CriticalValues {
  readonly questioned: number;
  readonly serious: number;
}

/** How many flocks some observers missed, from those that they saw alone and together. An estimate. */
export interface Detection<Text = Saying> {
  readonly observers: readonly string[];
  readonly cells: readonly string[];
  /** Flocks that one or more of them saw, and that two or more did. */
  readonly seen: number;
  readonly matched: number;
  readonly byObserver: readonly {
    readonly observer: string;
    readonly flocks: number;
    /** The chance that this observer sees a flock that another saw. */
    readonly chance: Statistic;
  }[];
  /** Flocks there: Chapman's estimate of two observers, Huggins' of more. */
  readonly flocks: Statistic;
  /** Share of flocks that all of them missed. */
  readonly missedByAll: Statistic;
  /** By Huggins' likelihood with what makes a flock easier to see; `null` where it cannot be fitted. */
  readonly model: DetectionModel | null;
  /** What to bear in mind, in a sentence; `null` where nothing speaks against it. */
  readonly warning: Text | null;
}

export interface DetectionModel {
  readonly slopes: readonly {
    /** `ln-size` of the flock, or `distance` in kilometres from where the observer stood. */
    readonly covariate: 'ln-size' | 'distance';
    /** Change of the logit of the chance. */
    readonly slope: number;
    readonly standardError: number;
  }[];
  readonly flocks: Statistic;
  readonly birds: Statistic;
  readonly missedByAll: Statistic;
}

export interface Agreement<Text = Saying> {
  readonly overall: AgreementMeasures;
  readonly byPair: readonly PairAgreement[];
  readonly byTaxon: readonly ({
    readonly taxon: string;
    /** Of birds that one of two gave the taxon and both saw, the share that the other gave it too. */
    readonly sensitivity: Statistic;
  } & NumberMeasures)[];
  readonly bySection: readonly ({ readonly place: readonly string[] } & AgreementMeasures)[];
  /** Each observer's ratio to those who counted the same groups. For leaders only, as the next two. */
  readonly observers: readonly { readonly observer: string; readonly ratio: Statistic }[];
  readonly observerModel: ObserverModel | null;
  readonly observerConsistency: readonly ObserverConsistency[];
  readonly intraclass: readonly Intraclass[];
  /** Birds of all pairs of observers, each way round counted half: symmetric. */
  readonly confusion: ConfusionTable;
  readonly detection: readonly Detection<Text>[];
}

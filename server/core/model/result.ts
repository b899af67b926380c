import type { Agreement } from './agreement.js';
import type { Protocol, Rule } from './protocol.js';
import type { Saying } from './saying.js';
import type { Species } from './snapshot.js';

/**
 * `reconcile`'s answer. Key order is the order written here; numbers are plain. Its sentences are
 * sayings, or strings where `wordedResult` has put it into a language.
 */
export interface Result<Text = Saying> {
  readonly count: string;
  /** A window id, or the count id where windows are averaged. */
  readonly reported: string;
  readonly protocol: Protocol;
  readonly cells: readonly Cell<Text>[];
  readonly disagreements: readonly Disagreement<Text>[];
  readonly links: readonly Link<Text>[];
  readonly agreement: Agreement<Text>;
  readonly compiled: readonly CompiledLine[];
  /** Estimates beside the compiled count, never part of it. */
  readonly allocation: readonly AllocatedSpecies[];
  readonly ledger: readonly Posting[];
  readonly rulings: readonly RulingOutcome<Text>[];
  readonly faults: readonly string[];
}

export interface Cell<Text = Saying> {
  readonly id: string;
  /** Section ids, sorted. */
  readonly place: readonly string[];
  readonly window: string;
  /** Birds using the waterbody, or birds that only flew through: compared and reported apart. */
  readonly layer: 'using' | 'flying-through';
  readonly tallies: readonly CellTally[];
  readonly pairings: readonly Pairing[];
  readonly bounds: readonly Bound[];
  /** False: no single truth fits all tallies, even within their counting error. */
  readonly feasible: boolean;
  /**
   * The fewest birds that must have been missed, added or misnamed, whatever the truth was; a bird
   * that two observers got wrong counts twice.
   */
  readonly birdsInConflict: number;
  /** A sentence that says why no single truth fits, with observers, species and numbers. */
  readonly witness: Text | null;
  readonly groups: readonly Group[];
}

export interface CellTally {
  /** Tally ids joined by `+`. */
  readonly tally: string;
  /** Observer id; ids joined by `+` where several together cover the place. */
  readonly observer: string;
  readonly total: number;
  /** 1 = all of the place was seen. */
  readonly coverage: number;
  /** Enters consensus and agreement. */
  readonly counted: boolean;
  readonly lines: readonly {
    readonly taxon: string;
    readonly candidates: readonly Species[];
    readonly number: number;
    /** Ids of the tally lines added up here. */
    readonly lines: readonly string[];
  }[];
}

/** The pairing balance of two observers, a < b by id. */
export interface Pairing {
  readonly a: string;
  readonly b: string;
  readonly agreed: number;
  readonly compatible: number;
  readonly differently: number;
  readonly onlyA: number;
  readonly onlyB: number;
  /** Birds of the one that the other did not set out to count: no claim, so not compared. */
  readonly outsideScopeA: number;
  readonly outsideScopeB: number;
  /** Share a member, so compared but never used as two. */
  readonly independent: boolean;
  /** Both saw the same sections in full; otherwise birds of one only are no disagreement. */
  readonly complete: boolean;
  /** What was paired with what; numbers may be fractional where several pairings are equally good. */
  readonly flows: readonly PairingFlow[];
}

export interface PairingFlow {
  readonly kind: 'agreed' | 'compatible' | 'differently' | 'only-a' | 'only-b';
  /** Taxon strings; `null` on the side that has no such bird. */
  readonly a: string | null;
  readonly b: string | null;
  readonly number: number;
}

export interface Bound {
  readonly species: Species;
  readonly observer: string;
  readonly atLeast: number;
  readonly atMost: number;
}

export interface Group {
  readonly id: string;
  /** The candidate sets that belong together here. */
  readonly identifications: readonly (readonly Species[])[];
  /** The same as taxon strings, sorted: how rulings name the group. */
  readonly taxa: readonly string[];
  /** `stated`: the observer wrote a zero or named the taxon, rather than passing over it. */
  readonly totals: readonly {
    readonly observer: string;
    readonly number: number;
    readonly stated: boolean;
  }[];
  readonly consensus: Consensus;
  /** What the tallies say of it: what a ruling made now would record as its basis. */
  readonly basis: readonly string[];
  /** Whole birds; add up to `consensus.number`, or to the ruling's own numbers. */
  readonly lines: readonly { readonly candidates: readonly Species[]; readonly number: number }[];
}

export interface Consensus {
  readonly rule: Rule;
  /**
   * What the number rests on: several independent full counts; one; partial tallies only (a lower
   * bound); a compiler's ruling; or nobody saw any.
   */
  readonly basis: 'several' | 'single' | 'partial' | 'ruling' | 'none';
  readonly number: number;
  readonly low: number;
  readonly high: number;
  /** Cochran's Q, between-observer variance (ln scale) and I² in per cent; null with under two counts. */
  readonly q: number | null;
  readonly tau2: number | null;
  /** The same variance by Paule & Mandel; `tau2` is by DerSimonian & Laird. */
  readonly tau2PauleMandel: number | null;
  readonly i2: number | null;
  /** Where one more observer's count would lie, in birds (95 %); null with under three counts. */
  readonly predicted: { readonly low: number; readonly high: number } | null;
  /** What each rule would give. */
  readonly byRule: Readonly<Partial<Record<Rule, number>>>;
  /** The observers whose totals entered. */
  readonly observers: readonly string[];
}

export const DISAGREEMENT_KINDS = [
  'count-spread',
  'seen-by-one',
  'identified-differently',
  'resolution-gap',
  'over-resolved',
  'coverage-gap',
  'time-mismatch',
  'not-counted',
  'possible-double-count',
  'sub-counts',
  'implausible',
] as const;
export type DisagreementKind = (typeof DISAGREEMENT_KINDS)[number];

export type Severity = 'note' | 'questioned' | 'serious';

export interface Disagreement<Text = Saying> {
  /** Stable while the same observers disagree on the same birds. */
  readonly id: string;
  readonly kind: DisagreementKind;
  readonly severity: Severity;
  /** Birds at stake. */
  readonly birds: number;
  readonly cell: string | null;
  /** The group's taxon strings, if it is about one. */
  readonly group: readonly string[] | null;
  readonly link: string | null;
  readonly observers: readonly string[];
  /** Tally line ids it stands on. */
  readonly lines: readonly string[];
  /** One plain sentence that says what happened. */
  readonly text: Text;
  readonly proposals: readonly Proposal<Text>[];
  /** What a ruling made now would record as its basis. */
  readonly basis: readonly string[];
  /** The ruling that settles it, if any. */
  readonly ruledBy: string | null;
}

/** A ruling the engine suggests: applied as it stands, it settles the disagreement. */
export interface Proposal<Text = Saying> {
  readonly text: Text;
  readonly target: import('./ruling.js').RulingTarget;
  readonly decision: import('./ruling.js').Decision;
}

/** Two sightings in different sections that may be one flock. */
export interface Link<Text = Saying> {
  readonly id: string;
  readonly kind: 'overlap' | 'movement';
  /** All tally line ids of both sightings. */
  readonly lines: readonly string[];
  readonly first: Sighting;
  readonly second: Sighting;
  readonly probability: number;
  /** Birds of the flock: all or a part of either sighting, as rulings on their groups have it. */
  readonly birds: number;
  readonly proposed: boolean;
  readonly ruling: 'confirmed' | 'rejected' | null;
  readonly deducted: boolean;
  /**
   * What is taken off which lines of the second sighting's cell; of a link that is not deducted, what
   * would be, as the other links stand. Fewer than `birds` where other links or a ruling have left
   * fewer, or observers who missed the flock have halved it in their mean; none where one of the cells
   * is not compiled.
   */
  readonly deduction: readonly LinkDeduction[];
  /** What spoke for and against, in words, strongest first, each with its log-likelihood ratio. */
  readonly evidence: readonly LinkEvidence<Text>[];
}

/** Birds of one compiled identification that a link says were counted elsewhere. */
export interface LinkDeduction {
  readonly taxon: string;
  readonly candidates: readonly Species[];
  readonly number: number;
}

/** What speaks for or against a link; the order is that in which a compiler would ask. */
export const LINK_EVIDENCE = [
  'size',
  'kind',
  'mixture',
  'sexes',
  'travel',
  'heading',
  'stated',
  'seen-flying',
  'seen-by',
  'observer',
  'alternatives',
  'learned',
] as const;

/** One term of a link's score: above 0 it speaks for one flock. */
export interface LinkEvidence<Text = Saying> {
  readonly name: (typeof LINK_EVIDENCE)[number];
  readonly text: Text;
  /** Log-likelihood ratio. */
  readonly weight: number;
}

/** One flock in one section: one line, or the lines of several observers matched to one another. */
export interface Sighting {
  readonly cell: string;
  readonly section: string;
  readonly lines: readonly string[];
  readonly observers: readonly string[];
  readonly taxon: string;
  readonly candidates: readonly Species[];
  readonly number: number;
  readonly start: string | null;
  readonly end: string | null;
  readonly position: readonly [number, number] | null;
}

export interface CompiledLine {
  readonly taxon: string;
  readonly candidates: readonly Species[];
  readonly number: number;
  readonly low: number;
  readonly high: number;
  /** Birds recorded at exactly this level. */
  readonly atLeast: number;
  /** The same and every bird recorded at a coarser level that includes it. */
  readonly atMost: number;
  /** Birds that only flew through, never part of `number`. */
  readonly flyingThrough: number;
  /** Seen but not counted by someone: the number is at least one too few. */
  readonly presentNotCounted: boolean;
}

/**
 * An estimate, not a count: a species' birds if those of pairs and groups are shared out by the
 * identified share. Only species that some compiled pair or group may be.
 */
export interface AllocatedSpecies {
  readonly species: Species;
  /** Birds compiled as this species alone: a count. */
  readonly identified: number;
  /** Identified birds and the shares in `of`; `null` where nothing says how any of `of` divides. */
  readonly estimated: number | null;
  readonly low: number;
  readonly high: number;
  /** `bootstrap`: a 95 % interval over cells. `bounds`: too few cells for one, so all that is possible. */
  readonly interval: 'bootstrap' | 'bounds';
  /**
   * Birds of `of` that cannot be shared out: not all their candidates were identified, or observers
   * named them, but not alike.
   */
  readonly undetermined: number;
  /** The compiled pairs and groups that may be this species; `number` is all their birds. */
  readonly of: readonly {
    readonly taxon: string;
    readonly number: number;
    /** Birds of `number` that observers named differently: not shared out. */
    readonly disputed: number;
    /** Whole birds taken to be this species; of a pair or group they add up to `number` − `disputed`. */
    readonly estimated: number | null;
  }[];
}

export interface Posting {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly taxon: string;
  readonly number: number;
  readonly because: {
    readonly kind:
      | 'agreed'
      | 'compatible'
      | 'differently'
      | 'only-one'
      | 'single'
      | 'rule'
      | 'link'
      | 'ruling'
      | 'window';
    /**
     * For birds from tallies: tally line ids, an observer's joined by `+`, those that were paired
     * with them after `=` (`a1+a4=b2`). Otherwise a rule, a link id, a ruling id or a window id.
     */
    readonly ref: string;
  };
}

export interface RulingOutcome<Text = Saying> {
  readonly id: string;
  readonly state: 'applied' | 'stale' | 'without-target';
  readonly text: Text;
}

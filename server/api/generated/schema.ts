// Generated from server/api/schema by `npm run generate`. Do not edit.
import type { GraphQLResolveInfo, GraphQLScalarType, GraphQLScalarTypeConfig } from 'graphql';
export type Maybe<T> = T | null;
export type InputMaybe<T> = T | null | undefined;
export type RequireFields<T, K extends keyof T> = Omit<T, K> & { [P in K]-?: NonNullable<T[P]> };
/** All built-in and custom scalars, mapped to their actual values */
export type Scalars = {
  ID: { input: string; output: string; }
  String: { input: string; output: string; }
  Boolean: { input: boolean; output: boolean; }
  Int: { input: number; output: number; }
  Float: { input: number; output: number; }
  /** An RFC 3339 instant with offset. */
  Instant: { input: string; output: string; }
};

/** An act that the policy table knows. */
export type Act =
  /** Answer a query put to oneself. */
  | 'ANSWER'
  | 'ASK'
  | 'CLOSE_WINDOW'
  | 'INVITE'
  | 'PLAN'
  /** Get an assignment's field sheet on paper: an observer that of their own. */
  | 'PRINT_FIELD_SHEET'
  | 'REVIEW'
  | 'RULE'
  | 'SEAL'
  /** Second another person's ruling. */
  | 'SECOND'
  | 'SEE_AUDIT'
  | 'SEE_COMPILED'
  | 'SEE_COVERAGE'
  /** See how one agrees oneself with those who counted the same. */
  | 'SEE_OWN_AGREEMENT'
  /** See the tallies of others: an observer once their own of the cell is in. */
  | 'SEE_TALLIES'
  | 'SIGN_OFF'
  | 'SUBMIT_TALLY';

/** How well the observers agree, overall and in parts. */
export type Agreement = {
  __typename?: 'Agreement';
  byPair: Array<PairAgreement>;
  bySection: Array<SectionAgreement>;
  byTaxon: Array<TaxonAgreement>;
  /** What observers called birds that others called something, all pairs together: symmetric. */
  confusion: ConfusionTable;
  /** How many flocks were missed: estimates beside the count, never part of it. */
  detection: Array<Detection>;
  /** The six forms of the intraclass correlation, by set of observers. */
  intraclass: Array<Intraclass>;
  /** Fewest groups for a number (of one taxon: cells; of detection: flocks); below it there is no value. */
  minimumUnits: Scalars['Int']['output'];
  /** Leaders only; empty for everyone else. One a set of three observers or more who counted the same groups. */
  observerConsistency: Array<ObserverConsistency>;
  /** Leaders only; null for everyone else, and where there is too little. */
  observerModel?: Maybe<ObserverModel>;
  /** Leaders only; empty for everyone else. */
  observers: Array<ObserverRatio>;
  overall: AgreementMeasures;
};

/** The agreement statistics of one comparison. */
export type AgreementMeasures = {
  __typename?: 'AgreementMeasures';
  /** The same as if all identifications were as common as each other. */
  adjustedKappa: Statistic;
  /** Krippendorff's alpha of totals, ratio metric, zeros included. */
  alpha: Statistic;
  /** 1 less the dissimilarity of Bray and Curtis over totals of groups. */
  brayCurtisSimilarity: Statistic;
  /** Lin's concordance of logarithms of totals. */
  concordance: Statistic;
  /** Cohen's kappa of identifications of birds that both saw. */
  kappa: Statistic;
  /** Share of birds on which identification and number agree to the bird. */
  percentAgreement: Statistic;
  /** The same with the overlap of candidate sets as weight. */
  weightedKappa: Statistic;
  /** Share of groups whose smaller total is at least 80 % of the larger. */
  withinTolerance: Statistic;
};

/** A compiled pair or group and the part of it that is taken to be one species. */
export type AllocatedShare = {
  __typename?: 'AllocatedShare';
  /** Those of them that observers named differently: not shared out. */
  disputed: Scalars['Int']['output'];
  estimated?: Maybe<Scalars['Int']['output']>;
  /** All birds of the pair or group. */
  number: Scalars['Int']['output'];
  taxon: Scalars['String']['output'];
};

/** A species' birds if those of pairs and groups are shared out by the identified share: an estimate, not a count. */
export type AllocatedSpecies = {
  __typename?: 'AllocatedSpecies';
  englishName: Scalars['String']['output'];
  /** Null where nothing says how any of its pairs and groups divides. */
  estimated?: Maybe<Scalars['Int']['output']>;
  high: Scalars['Int']['output'];
  /** Birds compiled as this species alone: a count. */
  identified: Scalars['Int']['output'];
  /** bootstrap: a 95 % interval over cells; bounds: too few cells for one, so all that is possible. */
  interval: Scalars['String']['output'];
  low: Scalars['Int']['output'];
  of: Array<AllocatedShare>;
  species: Scalars['String']['output'];
  /** Birds that may be this species and cannot be shared out: not all their candidates were identified, or observers named them, but not alike. */
  undetermined: Scalars['Int']['output'];
};

/** A question to an observer. */
export type AskQueryInput = {
  countId: Scalars['ID']['input'];
  disagreementId?: InputMaybe<Scalars['ID']['input']>;
  id: Scalars['ID']['input'];
  question: Scalars['String']['input'];
  toPersonId: Scalars['ID']['input'];
};

/** Observer, sections and window of a new assignment. */
export type AssignInput = {
  countId: Scalars['ID']['input'];
  id: Scalars['ID']['input'];
  personId: Scalars['ID']['input'];
  sectionIds: Array<Scalars['ID']['input']>;
  vantageId?: InputMaybe<Scalars['ID']['input']>;
  windowId: Scalars['ID']['input'];
};

/** Observer, section and window. */
export type Assignment = {
  __typename?: 'Assignment';
  id: Scalars['ID']['output'];
  person: Person;
  sections: Array<Section>;
  submitted: Scalars['Boolean']['output'];
  /** The tally that fulfils it, if submitted and if the viewer may see it. */
  tally?: Maybe<Tally>;
  vantage?: Maybe<VantagePoint>;
  window: Window;
};

/** One recorded act. */
export type AuditEntry = {
  __typename?: 'AuditEntry';
  act: Scalars['String']['output'];
  at: Scalars['Instant']['output'];
  /** Canonical JSON (RFC 8785) that was hashed. */
  body: Scalars['String']['output'];
  by?: Maybe<Person>;
  hash: Scalars['String']['output'];
  previous: Scalars['String']['output'];
  seq: Scalars['Int']['output'];
  /** One plain sentence. */
  text: Scalars['String']['output'];
};

/** The recorded acts of a count, each linked to the one before by its hash. */
export type AuditTrail = {
  __typename?: 'AuditTrail';
  /** Newest first. */
  entries: Array<AuditEntry>;
  /** False if any entry does not follow from the one before. */
  intact: Scalars['Boolean']['output'];
  size: Scalars['Int']['output'];
};

/** The least and the most birds of a species that an observer's tally allows. */
export type Bound = {
  __typename?: 'Bound';
  atLeast: Scalars['Int']['output'];
  atMost: Scalars['Int']['output'];
  observer: Scalars['ID']['output'];
  species: Scalars['String']['output'];
};

/** The aligned place and window that observers are compared on. */
export type Cell = {
  __typename?: 'Cell';
  /** The fewest birds that must have been missed, added or misnamed; one that two observers got wrong counts twice. */
  birdsInConflict: Scalars['Int']['output'];
  bounds: Array<Bound>;
  feasible: Scalars['Boolean']['output'];
  groups: Array<Group>;
  id: Scalars['ID']['output'];
  layer: Scalars['String']['output'];
  pairings: Array<Pairing>;
  sections: Array<Section>;
  tallies: Array<CellTally>;
  window: Window;
  /** Why no single truth fits all tallies: a sentence with observers, species and numbers. */
  witness?: Maybe<Scalars['String']['output']>;
};

/** What one observer's tallies say about a cell. */
export type CellTally = {
  __typename?: 'CellTally';
  /** What it was like to count, for each of the tallies that noted it. */
  conditions: Array<Conditions>;
  counted: Scalars['Boolean']['output'];
  coverage: Scalars['Float']['output'];
  lines: Array<CellTallyLine>;
  /** Observer ids, joined by +. */
  observer: Scalars['ID']['output'];
  observerName: Scalars['String']['output'];
  /** What was seen, for each of the tallies that drew it: rings of [lon, lat]. */
  seenAreas: Array<Array<Array<Array<Scalars['Float']['output']>>>>;
  /** Ids of the tallies, joined by +. */
  tally: Scalars['ID']['output'];
  total: Scalars['Int']['output'];
};

/** One identification of an observer in a cell, with the tally lines it adds up. */
export type CellTallyLine = {
  __typename?: 'CellTallyLine';
  candidates: Array<Scalars['String']['output']>;
  lines: Array<Scalars['ID']['output']>;
  number: Scalars['Int']['output'];
  taxon: Scalars['String']['output'];
};

/** The compiled count: one line a taxon, and how each is made up. */
export type CompiledCount = {
  __typename?: 'CompiledCount';
  /** An estimate beside the count: species that some compiled pair or group may be, with its birds shared out. */
  allocation: Array<AllocatedSpecies>;
  countId: Scalars['ID']['output'];
  draft: Scalars['Boolean']['output'];
  flyingThroughTotal: Scalars['Int']['output'];
  /** The ledger, or one taxon of it, in order. */
  ledger: Array<Posting>;
  line?: Maybe<CompiledLine>;
  lines: Array<CompiledLine>;
  /** A window id, or the count id where windows are averaged. */
  reported: Scalars['ID']['output'];
  seal?: Maybe<Seal>;
  signOffs: Array<SignOff>;
  total: Scalars['Int']['output'];
};


/** The compiled count: one line a taxon, and how each is made up. */
export type CompiledCountLedgerArgs = {
  taxon?: InputMaybe<Scalars['String']['input']>;
};


/** The compiled count: one line a taxon, and how each is made up. */
export type CompiledCountLineArgs = {
  taxon: Scalars['String']['input'];
};

/** One taxon of the compiled count, with its interval and its bounds. */
export type CompiledLine = {
  __typename?: 'CompiledLine';
  atLeast: Scalars['Int']['output'];
  atMost: Scalars['Int']['output'];
  candidates: Array<Scalars['String']['output']>;
  /** English name, or a pair or group in English words. */
  englishName: Scalars['String']['output'];
  flyingThrough: Scalars['Int']['output'];
  high: Scalars['Int']['output'];
  low: Scalars['Int']['output'];
  number: Scalars['Int']['output'];
  presentNotCounted: Scalars['Boolean']['output'];
  taxon: Scalars['String']['output'];
};

/** What it was like to count; each null where it was not noted. */
export type Conditions = {
  __typename?: 'Conditions';
  /** Beaufort force, 0 to 12. */
  beaufort?: Maybe<Scalars['Int']['output']>;
  disturbance?: Maybe<Scalars['String']['output']>;
  /** none, some or strong. */
  glare?: Maybe<Scalars['String']['output']>;
  /** Share of the sections under ice, 0 to 1. */
  iceCover?: Maybe<Scalars['Float']['output']>;
  optics?: Maybe<Scalars['String']['output']>;
  /** State of the sea, 0 to 9 (WMO code table 3700). */
  seaState?: Maybe<Scalars['Int']['output']>;
  /** good, moderate, poor or very-poor, as in marine forecasts. */
  visibility?: Maybe<Scalars['String']['output']>;
};

/** What it was like to count, as in the columns of tallies.csv. */
export type ConditionsInput = {
  beaufort?: InputMaybe<Scalars['Int']['input']>;
  disturbance?: InputMaybe<Scalars['String']['input']>;
  glare?: InputMaybe<Scalars['String']['input']>;
  iceCover?: InputMaybe<Scalars['Float']['input']>;
  optics?: InputMaybe<Scalars['String']['input']>;
  seaState?: InputMaybe<Scalars['Int']['input']>;
  visibility?: InputMaybe<Scalars['String']['input']>;
};

/** So many birds that a called one thing and b another; null = counted by the other only. */
export type ConfusionEntry = {
  __typename?: 'ConfusionEntry';
  a?: Maybe<Scalars['String']['output']>;
  b?: Maybe<Scalars['String']['output']>;
  number: Scalars['Float']['output'];
};

/** What one observer called birds that the other called something, from the pairing balance. */
export type ConfusionTable = {
  __typename?: 'ConfusionTable';
  /** Numbers over 0; others are 0. */
  entries: Array<ConfusionEntry>;
  /** Rows and columns, sorted. */
  taxa: Array<Scalars['String']['output']>;
};

/** The number that the protocol's rule gives for a group, and what other rules would give. */
export type Consensus = {
  __typename?: 'Consensus';
  /** What the number rests on: several, single, partial, ruling or none. */
  basis: Scalars['String']['output'];
  byRule: Array<RuleNumber>;
  high: Scalars['Int']['output'];
  i2?: Maybe<Scalars['Float']['output']>;
  low: Scalars['Int']['output'];
  number: Scalars['Int']['output'];
  /** Where one more observer's count would lie (95 %), in birds; null with under three counts. */
  predicted?: Maybe<Predicted>;
  /** How far the observers differ: Cochran's Q, variance between them on the ln scale (DerSimonian & Laird, Paule & Mandel) and I² in per cent. */
  q?: Maybe<Scalars['Float']['output']>;
  rule: Scalars['String']['output'];
  tau2?: Maybe<Scalars['Float']['output']>;
  tau2PauleMandel?: Maybe<Scalars['Float']['output']>;
};

/** One observer's h and k. */
export type ConsistentObserver = {
  __typename?: 'ConsistentObserver';
  h?: Maybe<Scalars['Float']['output']>;
  k?: Maybe<Scalars['Float']['output']>;
  observer: Person;
};

/** One waterbody, one day or tide, one or more windows. */
export type Count = {
  __typename?: 'Count';
  /** Leaders and compilers see all; an observer their own. */
  assignments: Array<Assignment>;
  auditTrail: AuditTrail;
  /** The compiled count as it stands in the newest seal, or the draft for those who may see the review. */
  compiled: CompiledCount;
  /** Leaders and compilers: who has counted what, one entry a section and window. */
  coverage: Array<Coverage>;
  date: Scalars['String']['output'];
  /** Taxa of earlier years of this count, most expected first; empty where nothing is known of any. */
  expectedTaxa: Array<ExpectedTaxon>;
  id: Scalars['ID']['output'];
  /** What the signed-in person may do now; pages show only these. */
  may: Array<Act>;
  /** What the signed-in person is in this count. */
  myRoles: Array<Role>;
  /** The signed-in person's own tallies, newest versions. */
  myTallies: Array<Tally>;
  name: Scalars['String']['output'];
  /** An observer, once all windows are closed: how they agree with those who counted the same, and no more. */
  ownAgreement: OwnAgreement;
  people: Array<Participant>;
  protocol: Protocol;
  /** Queries put to the signed-in person, or all of them for compilers and leaders. */
  queries: Array<ObserverQuery>;
  /** The reconciliation of all that was submitted so far; compilers, and leaders once windows are closed. */
  review: Review;
  sections: Array<Section>;
  /** Empty where none was given. */
  shoreline: Array<ShorePart>;
  state: CountState;
  timeZone: Scalars['String']['output'];
  vantages: Array<VantagePoint>;
  waterbody: Scalars['String']['output'];
  windows: Array<Window>;
};


/** One waterbody, one day or tide, one or more windows. */
export type CountAuditTrailArgs = {
  before?: InputMaybe<Scalars['Int']['input']>;
  first?: InputMaybe<Scalars['Int']['input']>;
};

/** How far a count has come; it only moves forward. */
export type CountState =
  /** All windows are closed; compilers review. */
  | 'CLOSED'
  /** Windows are open and tallies come in. */
  | 'OPEN'
  /** Frozen and hashed. */
  | 'SEALED'
  /** All required sign-offs are given. */
  | 'SIGNED';

/** Who was to count a section in a window, and who has. */
export type Coverage = {
  __typename?: 'Coverage';
  assigned: Array<Person>;
  /** Independent full tallies so far. */
  independentTallies: Scalars['Int']['output'];
  /** Submitted tallies that saw only part of the section. */
  partial: Array<Person>;
  section: Section;
  submitted: Array<Person>;
  window: Window;
};

/** Above questioned (5 %) and serious (1 %) an observer stands apart; of h either way. */
export type CriticalValues = {
  __typename?: 'CriticalValues';
  questioned: Scalars['Float']['output'];
  serious: Scalars['Float']['output'];
};

/** What was decided; the fields that its kind uses are set. */
export type Decision = {
  __typename?: 'Decision';
  from?: Maybe<Array<Scalars['String']['output']>>;
  /** let-stand, accept-observer, set-numbers, take-rule, identify-as, merge-groups, split-group, identify-line, exclude, confirm-link, reject-link. */
  kind: Scalars['String']['output'];
  numbers?: Maybe<Array<SetNumber>>;
  observer?: Maybe<Scalars['ID']['output']>;
  /** The parts that it is taken apart into. */
  parts?: Maybe<Array<Array<Scalars['String']['output']>>>;
  rule?: Maybe<Scalars['String']['output']>;
  to?: Maybe<Array<Scalars['String']['output']>>;
  /** The taxa of the group that it is settled together with. */
  with?: Maybe<Array<Scalars['String']['output']>>;
};

/** What is decided; set the fields that its kind uses. */
export type DecisionInput = {
  /** Taxa as in tallies: names, alpha codes, pairs, groups. */
  from?: InputMaybe<Scalars['String']['input']>;
  kind: Scalars['String']['input'];
  numbers?: InputMaybe<Array<SetNumberInput>>;
  observer?: InputMaybe<Scalars['ID']['input']>;
  /** For split-group: parts of the group's taxa, together all of them. */
  parts?: InputMaybe<Array<Array<Scalars['String']['input']>>>;
  rule?: InputMaybe<Scalars['String']['input']>;
  to?: InputMaybe<Scalars['String']['input']>;
  /** For merge-groups: the taxa of the other group, as the review names them. */
  with?: InputMaybe<Array<Scalars['String']['input']>>;
};

/** Flocks that a set of independent observers saw alone and together, and how many they missed. */
export type Detection = {
  __typename?: 'Detection';
  /** Leaders only; empty for everyone else. */
  byObserver: Array<ObserverDetection>;
  /** Flocks there: Chapman's estimate of two observers, Huggins' of more. */
  flocks: Statistic;
  matched: Scalars['Int']['output'];
  /** Share of flocks that all of them missed. */
  missedByAll: Statistic;
  /** With what makes a flock easier to see; null where the flocks are too few for it. */
  model?: Maybe<DetectionModel>;
  observers: Array<Person>;
  sections: Array<Section>;
  /** Flocks that one or more of them saw, and that two or more did. */
  seen: Scalars['Int']['output'];
  /** What to bear in mind, in a sentence. */
  warning?: Maybe<Scalars['String']['output']>;
};

/** Huggins' conditional likelihood with size and distance of flocks. */
export type DetectionModel = {
  __typename?: 'DetectionModel';
  /** Birds in flocks, those missed by all included. */
  birds: Statistic;
  flocks: Statistic;
  missedByAll: Statistic;
  slopes: Array<DetectionSlope>;
};

/** How the chance of seeing a flock changes, on the logit scale. */
export type DetectionSlope = {
  __typename?: 'DetectionSlope';
  /** ln-size, or distance (kilometres). */
  covariate: Scalars['String']['output'];
  slope: Scalars['Float']['output'];
  standardError: Scalars['Float']['output'];
};

/** One flagged difference, with the birds at stake. */
export type Disagreement = {
  __typename?: 'Disagreement';
  /** Birds at stake. */
  birds: Scalars['Int']['output'];
  cell?: Maybe<Cell>;
  group?: Maybe<Group>;
  id: Scalars['ID']['output'];
  kind: Scalars['String']['output'];
  /** The tally lines that it stands on. */
  lines: Array<SourceLine>;
  link?: Maybe<Link>;
  observers: Array<Person>;
  proposals: Array<Proposal>;
  queries: Array<ObserverQuery>;
  /** The ruling that settles it, or that waits for a second person. */
  ruling?: Maybe<Ruling>;
  severity: Severity;
  /** One plain sentence that says what happened. */
  text: Scalars['String']['output'];
};

/** One reason for or against a link. */
export type Evidence = {
  __typename?: 'Evidence';
  /** What it is about: size, kind, mixture, travel, heading, stated, seen-flying, seen-by, observer or alternatives. */
  name: Scalars['String']['output'];
  text: Scalars['String']['output'];
  /** Log-likelihood ratio: above 0 speaks for one flock. */
  weight: Scalars['Float']['output'];
};

/** How often a taxon was met in the earlier years of a count. */
export type ExpectedTaxon = {
  __typename?: 'ExpectedTaxon';
  /** Birds a year, over all earlier years. */
  meanNumber: Scalars['Float']['output'];
  taxon: Scalars['String']['output'];
  /** Years in which there were any. */
  years: Scalars['Int']['output'];
};

/** Birds that one observer recorded together: one tally line, or those that share a flock label. */
export type Flock = {
  __typename?: 'Flock';
  end: Scalars['Instant']['output'];
  lines: Array<Scalars['ID']['output']>;
  number: Scalars['Int']['output'];
  observer: Person;
  /** Lon and lat, if they were noted. */
  position?: Maybe<Array<Scalars['Float']['output']>>;
  /** One, unless the tally does not say which. */
  sections: Array<Section>;
  /** When it was seen; if that was not noted, the span of its tally. */
  start: Scalars['Instant']['output'];
  taxon: Scalars['String']['output'];
  timeNoted: Scalars['Boolean']['output'];
  window: Window;
};

/** One file of a count folder. */
export type FolderFileInput = {
  /** count.json, places.geojson, tallies.csv … */
  name: Scalars['String']['input'];
  text: Scalars['String']['input'];
};

/** The finest set of identifications whose numbers can be settled together. */
export type Group = {
  __typename?: 'Group';
  consensus: Consensus;
  id: Scalars['ID']['output'];
  lines: Array<GroupLine>;
  taxa: Array<Scalars['String']['output']>;
  totals: Array<GroupTotal>;
};

/** One identification of a group as it enters the compiled count. */
export type GroupLine = {
  __typename?: 'GroupLine';
  candidates: Array<Scalars['String']['output']>;
  number: Scalars['Int']['output'];
  taxon: Scalars['String']['output'];
};

/** How many birds of a group an observer counted. */
export type GroupTotal = {
  __typename?: 'GroupTotal';
  number: Scalars['Int']['output'];
  observer: Scalars['ID']['output'];
  observerName: Scalars['String']['output'];
  stated: Scalars['Boolean']['output'];
};

/** Intraclass correlation of logarithms of totals that all of these observers counted (Shrout and Fleiss). */
export type Intraclass = {
  __typename?: 'Intraclass';
  agreementMean: Statistic;
  agreementSingle: Statistic;
  consistencyMean: Statistic;
  consistencySingle: Statistic;
  observers: Array<Person>;
  oneWayMean: Statistic;
  oneWaySingle: Statistic;
};

/** A link that signs an observer in. */
export type Invite = {
  __typename?: 'Invite';
  /** Path of the page to open, such as /invite/…; shown once. */
  path: Scalars['String']['output'];
  person: Person;
};

/** Two sightings in different sections taken for one flock. */
export type Link = {
  __typename?: 'Link';
  /** Birds of the flock: all or a part of either sighting, as rulings on their groups have it. */
  birds: Scalars['Int']['output'];
  deducted: Scalars['Boolean']['output'];
  /** What is taken off which compiled lines; of a link that is not deducted, what would be. */
  deduction: Array<LinkDeduction>;
  evidence: Array<Evidence>;
  first: Sighting;
  id: Scalars['ID']['output'];
  kind: Scalars['String']['output'];
  probability: Scalars['Float']['output'];
  proposed: Scalars['Boolean']['output'];
  /** confirmed, rejected, or null while no ruling is applied. */
  ruling?: Maybe<Scalars['String']['output']>;
  second: Sighting;
};

/** Birds of one compiled taxon that a link says were counted elsewhere. */
export type LinkDeduction = {
  __typename?: 'LinkDeduction';
  number: Scalars['Int']['output'];
  taxon: Scalars['String']['output'];
};

/** An observer's ratio to the geometric mean of the observers of the same set. */
export type ModelledObserver = {
  __typename?: 'ModelledObserver';
  observer: Person;
  ratio: Statistic;
  /** Observers of different sets never counted the same groups, and cannot be compared. */
  set: Scalars['Int']['output'];
};

export type Mutation = {
  __typename?: 'Mutation';
  /** Signs in an observer by the token of an invite link. */
  acceptInvite: Person;
  /** The observer who was asked: answers. */
  answerQuery: ObserverQuery;
  /** Compiler: asks an observer about a disagreement. */
  askQuery: ObserverQuery;
  /** Leader: says who counts which sections in which window. */
  assign: Assignment;
  /** Leader: closes a window; no tally is taken for it from then on, and blindness ends for its cells. */
  closeWindow: Count;
  /** Compiler: gives a ruling with its reason. On a cell of one's own tally it waits for a second person. */
  giveRuling: Ruling;
  /** Leader: takes in a whole count folder; refused as a whole if anything in it is wrong. */
  importCount: Count;
  /** Leader: makes a new invite link for a person of the count; earlier links of that person stop working. */
  invite: Invite;
  /** Leader: plans a count from scratch. */
  planCount: Count;
  /** Compiler: runs the reconciliation on what is there now. Unchanged input is a look-up. */
  reconcile: Review;
  /** Compiler or leader: freezes the signed count with its bytes and hashes. */
  seal: Seal;
  /** Another compiler or the leader: seconds a ruling that its author could not give alone. */
  secondRuling: Ruling;
  /** Sets one's own password; the current one is asked for if there is one. A leader or compiler who came by invite does this first. */
  setPassword: Person;
  /** Signs in a leader or compiler with the name they were given and a password. */
  signIn: Person;
  /** Compiler or leader: approves the count as it stands; refused while matters are open, which are named. */
  signOff: Count;
  /** Ends the session. */
  signOut: Scalars['Boolean']['output'];
  /**
   * Observer: submits a tally. The id is made by the phone (UUIDv7): the same id with the same content
   * is taken once, however often it is sent; with other content it is refused. A correction names the
   * tally that it replaces and says why; the earlier version stays on record.
   */
  submitTally: Tally;
  /** Leader: takes an assignment back. */
  unassign: Scalars['Boolean']['output'];
  /** Compiler: takes a ruling back, with a reason; it stays on record. */
  withdrawRuling: Ruling;
};


export type MutationAcceptInviteArgs = {
  token: Scalars['String']['input'];
};


export type MutationAnswerQueryArgs = {
  answer: Scalars['String']['input'];
  queryId: Scalars['ID']['input'];
};


export type MutationAskQueryArgs = {
  input: AskQueryInput;
};


export type MutationAssignArgs = {
  input: AssignInput;
};


export type MutationCloseWindowArgs = {
  countId: Scalars['ID']['input'];
  windowId: Scalars['ID']['input'];
};


export type MutationGiveRulingArgs = {
  input: RulingInput;
};


export type MutationImportCountArgs = {
  files: Array<FolderFileInput>;
};


export type MutationInviteArgs = {
  countId: Scalars['ID']['input'];
  personId: Scalars['ID']['input'];
};


export type MutationPlanCountArgs = {
  input: PlanCountInput;
};


export type MutationReconcileArgs = {
  countId: Scalars['ID']['input'];
};


export type MutationSealArgs = {
  countId: Scalars['ID']['input'];
};


export type MutationSecondRulingArgs = {
  rulingId: Scalars['ID']['input'];
};


export type MutationSetPasswordArgs = {
  current?: InputMaybe<Scalars['String']['input']>;
  new: Scalars['String']['input'];
};


export type MutationSignInArgs = {
  name: Scalars['String']['input'];
  password: Scalars['String']['input'];
};


export type MutationSignOffArgs = {
  as: Role;
  countId: Scalars['ID']['input'];
  inputHash: Scalars['String']['input'];
};


export type MutationSubmitTallyArgs = {
  input: TallyInput;
};


export type MutationUnassignArgs = {
  assignmentId: Scalars['ID']['input'];
};


export type MutationWithdrawRulingArgs = {
  reason: Scalars['String']['input'];
  rulingId: Scalars['ID']['input'];
};

/** A field mark as it was seen, by the names of its key. */
export type NotedMark = {
  __typename?: 'NotedMark';
  mark: Scalars['String']['output'];
  state: Scalars['String']['output'];
};

/** A field mark as it was seen, by the names of its key. */
export type NotedMarkInput = {
  mark: Scalars['String']['input'];
  state: Scalars['String']['input'];
};

/** Mandel's h and k: who stands apart by the mean, and who by the spread (ISO 5725-2). */
export type ObserverConsistency = {
  __typename?: 'ObserverConsistency';
  groups: Scalars['Int']['output'];
  hCritical: CriticalValues;
  kCritical: CriticalValues;
  observers: Array<ConsistentObserver>;
};

/** How one observer does on flocks that another saw. */
export type ObserverDetection = {
  __typename?: 'ObserverDetection';
  chance: Statistic;
  flocks: Scalars['Int']['output'];
  observer: Person;
};

/** Logarithm of total = group + observer + residual, by restricted maximum likelihood. */
export type ObserverModel = {
  __typename?: 'ObserverModel';
  /** Variances. */
  betweenGroups: Statistic;
  betweenObservers: Statistic;
  groups: Scalars['Int']['output'];
  n: Scalars['Int']['output'];
  observers: Array<ModelledObserver>;
  residual: Statistic;
};

/** A compiler's question to an observer, and the answer. */
export type ObserverQuery = {
  __typename?: 'ObserverQuery';
  /** The disagreement's sentence when it was asked, without other observers' numbers for the one asked. */
  about: Scalars['String']['output'];
  answer?: Maybe<Scalars['String']['output']>;
  answeredAt?: Maybe<Scalars['Instant']['output']>;
  askedAt: Scalars['Instant']['output'];
  askedBy: Person;
  countId: Scalars['ID']['output'];
  disagreementId?: Maybe<Scalars['ID']['output']>;
  id: Scalars['ID']['output'];
  question: Scalars['String']['output'];
  to: Person;
};

/** An observer's counts against the others': 1 is level, under 1 runs low. */
export type ObserverRatio = {
  __typename?: 'ObserverRatio';
  observer: Person;
  ratio: Statistic;
};

/** An observer's own agreement with those who counted the same. */
export type OwnAgreement = {
  __typename?: 'OwnAgreement';
  /** The pairs that the observer is one of, as a. */
  byPair: Array<PairAgreement>;
  /** Fewest groups for a number; below it there is no value. */
  minimumUnits: Scalars['Int']['output'];
  /** The observer's ratio to the others; several where they also counted jointly with somebody. */
  ratios: Array<ObserverRatio>;
};

/** Agreement of two observers. */
export type PairAgreement = {
  __typename?: 'PairAgreement';
  a: Person;
  b: Person;
  confusion: ConfusionTable;
  measures: AgreementMeasures;
  ratios: RatioPlot;
  sensitivities: Array<Sensitivity>;
};

/** The pairing balance of two observers. */
export type Pairing = {
  __typename?: 'Pairing';
  a: Scalars['ID']['output'];
  aName: Scalars['String']['output'];
  agreed: Scalars['Int']['output'];
  b: Scalars['ID']['output'];
  bName: Scalars['String']['output'];
  compatible: Scalars['Int']['output'];
  /** Both saw the same sections in full; otherwise birds of one only are no disagreement. */
  complete: Scalars['Boolean']['output'];
  differently: Scalars['Int']['output'];
  flows: Array<PairingFlow>;
  independent: Scalars['Boolean']['output'];
  onlyA: Scalars['Int']['output'];
  onlyB: Scalars['Int']['output'];
  outsideScopeA: Scalars['Int']['output'];
  outsideScopeB: Scalars['Int']['output'];
};

/** Birds of one observer paired with birds of another, or with none. */
export type PairingFlow = {
  __typename?: 'PairingFlow';
  a?: Maybe<Scalars['String']['output']>;
  b?: Maybe<Scalars['String']['output']>;
  /** agreed, compatible, differently, only-a or only-b. */
  kind: Scalars['String']['output'];
  number: Scalars['Float']['output'];
};

/** A person's part in one count. */
export type Participant = {
  __typename?: 'Participant';
  /** True once the person has signed in; leaders see it to know whose invite is still open. */
  hasJoined: Scalars['Boolean']['output'];
  person: Person;
  roles: Array<Role>;
};

/** Someone who takes part in counts. */
export type Person = {
  __typename?: 'Person';
  id: Scalars['ID']['output'];
  name: Scalars['String']['output'];
};

/** A person of a count that is being planned. */
export type PersonInput = {
  id: Scalars['ID']['input'];
  name: Scalars['String']['input'];
  roles: Array<Role>;
};

/** A count from scratch. */
export type PlanCountInput = {
  date: Scalars['String']['input'];
  id: Scalars['ID']['input'];
  name: Scalars['String']['input'];
  people: Array<PersonInput>;
  /** A GeoJSON FeatureCollection as text: sections, vantage points, views, and a shoreline if there is one. */
  places: Scalars['String']['input'];
  /** Protocol settings as JSON text; every key has a default. */
  protocol?: InputMaybe<Scalars['String']['input']>;
  timeZone: Scalars['String']['input'];
  waterbody: Scalars['String']['input'];
  windows: Array<WindowInput>;
};

/** Whole birds moved from one account to another, and why. */
export type Posting = {
  __typename?: 'Posting';
  becauseKind: Scalars['String']['output'];
  becauseRef: Scalars['String']['output'];
  from: Scalars['String']['output'];
  id: Scalars['ID']['output'];
  /** The tally lines it stands on, if any. */
  lines: Array<SourceLine>;
  number: Scalars['Int']['output'];
  taxon: Scalars['String']['output'];
  /** One plain sentence: what this posting says. */
  text: Scalars['String']['output'];
  to: Scalars['String']['output'];
};

/** Where one more observer's count would lie. */
export type Predicted = {
  __typename?: 'Predicted';
  high: Scalars['Float']['output'];
  low: Scalars['Float']['output'];
};

/** A ruling that would settle a disagreement, ready to be given. */
export type Proposal = {
  __typename?: 'Proposal';
  decision: Decision;
  target: RulingTarget;
  text: Scalars['String']['output'];
};

/** The count's settings: rules, thresholds, required sign-offs. */
export type Protocol = {
  __typename?: 'Protocol';
  deductLinks: Scalars['String']['output'];
  linkThreshold: Scalars['Float']['output'];
  questionedAt: Scalars['Float']['output'];
  resolution: Scalars['String']['output'];
  rule: Scalars['String']['output'];
  seriousAt: Scalars['Float']['output'];
  signOffs: Array<Role>;
  windows: Scalars['String']['output'];
  zeros: Scalars['String']['output'];
};

export type Query = {
  __typename?: 'Query';
  /** One count that the signed-in person takes part in. */
  count: Count;
  /** The counts that the signed-in person takes part in, newest first. */
  counts: Array<Count>;
  /** Whether the signed-in person may plan or import a new count. */
  mayPlan: Scalars['Boolean']['output'];
  /** Who is signed in; null when nobody is. */
  me?: Maybe<Person>;
  /** One version of a tally, for those who may see it. Give the count where the id is in use in several of one's counts. */
  tally: Tally;
};


export type QueryCountArgs = {
  id: Scalars['ID']['input'];
};


export type QueryTallyArgs = {
  countId?: InputMaybe<Scalars['ID']['input']>;
  id: Scalars['ID']['input'];
};

/** Two observers' totals as ratios a : b, with the limits that the middle 95 % lie between (Bland and Altman). */
export type RatioPlot = {
  __typename?: 'RatioPlot';
  lower: Statistic;
  meanRatio: Statistic;
  points: Array<RatioPoint>;
  upper: Statistic;
};

/** One group of a cell: how large it is, and the ratio of the two totals. */
export type RatioPoint = {
  __typename?: 'RatioPoint';
  a: Scalars['Float']['output'];
  b: Scalars['Float']['output'];
  cell: Scalars['ID']['output'];
  group: Scalars['ID']['output'];
  /** Geometric mean of both. */
  mean: Scalars['Float']['output'];
  ratio: Scalars['Float']['output'];
  /** The taxa of the group. */
  taxa: Array<Scalars['String']['output']>;
};

/** What the engine made of all tallies and rulings. */
export type Review = {
  __typename?: 'Review';
  agreement: Agreement;
  cells: Array<Cell>;
  countId: Scalars['ID']['output'];
  disagreement?: Maybe<Disagreement>;
  disagreements: Array<Disagreement>;
  /** The flocks that tallies recorded apart, each as its observer has it, earliest first. */
  flocks: Array<Flock>;
  /** SHA-256 of the input; the same input gives the same bytes. */
  inputHash: Scalars['String']['output'];
  links: Array<Link>;
  /** Why a sign-off would be refused now; empty when nothing stands in its way. */
  openMatters: Array<Scalars['String']['output']>;
  rulings: Array<Ruling>;
  /** What is left out of this review because the viewer still owes a tally there; a sentence each. */
  withheld: Array<Scalars['String']['output']>;
};


/** What the engine made of all tallies and rulings. */
export type ReviewDisagreementArgs = {
  id: Scalars['ID']['input'];
};


/** What the engine made of all tallies and rulings. */
export type ReviewDisagreementsArgs = {
  cell?: InputMaybe<Scalars['ID']['input']>;
  kind?: InputMaybe<Scalars['String']['input']>;
};

/** What a person is in a count; one person may be several. */
export type Role =
  | 'COMPILER'
  | 'LEADER'
  | 'OBSERVER';

/** The number that one rule gives. */
export type RuleNumber = {
  __typename?: 'RuleNumber';
  number: Scalars['Int']['output'];
  rule: Scalars['String']['output'];
};

/** A compiler's decision, with a reason. */
export type Ruling = {
  __typename?: 'Ruling';
  at: Scalars['Instant']['output'];
  by: Person;
  decision: Decision;
  id: Scalars['ID']['output'];
  /** The hash of the review that this answer is part of: after a ruling of one's own, what the next is given with. */
  inputHash: Scalars['String']['output'];
  reason: Scalars['String']['output'];
  replaces?: Maybe<Scalars['ID']['output']>;
  secondedBy?: Maybe<Person>;
  state: RulingState;
  target: RulingTarget;
  text: Scalars['String']['output'];
};

/** A ruling to give; the id is made by the client, so that it can be sent again safely. */
export type RulingInput = {
  countId: Scalars['ID']['input'];
  decision: DecisionInput;
  /** The disagreement that it settles; its target and basis are taken from there if target is left out. */
  disagreementId?: InputMaybe<Scalars['ID']['input']>;
  id: Scalars['ID']['input'];
  /** The hash of the review that was looked at: if given and no longer the present one, the ruling is refused as STALE. */
  inputHash?: InputMaybe<Scalars['String']['input']>;
  reason: Scalars['String']['input'];
  /** A ruling on the same target that this one takes the place of. */
  replaces?: InputMaybe<Scalars['ID']['input']>;
  target?: InputMaybe<RulingTargetInput>;
};

/** Whether a ruling enters the compiled count, and if not, why. */
export type RulingState =
  /** Enters the compiled count. */
  | 'APPLIED'
  /** Waits for another person, since its author counted there. */
  | 'NEEDS_SECOND'
  /** A later ruling took its place; it is not applied. */
  | 'REPLACED'
  /** Its tallies have changed since; it is not applied. */
  | 'STALE'
  /** Taken back by its author; it is not applied. */
  | 'WITHDRAWN'
  /** What it was about is no longer there; it is not applied. */
  | 'WITHOUT_TARGET';

/** What a ruling is about: exactly one of group (with cell), link, tally or line is set. */
export type RulingTarget = {
  __typename?: 'RulingTarget';
  cell?: Maybe<Scalars['ID']['output']>;
  group?: Maybe<Array<Scalars['String']['output']>>;
  kind: Scalars['String']['output'];
  line?: Maybe<Scalars['ID']['output']>;
  link?: Maybe<Scalars['ID']['output']>;
  tally?: Maybe<Scalars['ID']['output']>;
};

/** What a ruling is about: exactly one of group (with cell), link, tally or line is set. */
export type RulingTargetInput = {
  cell?: InputMaybe<Scalars['ID']['input']>;
  group?: InputMaybe<Array<Scalars['String']['input']>>;
  kind: Scalars['String']['input'];
  line?: InputMaybe<Scalars['ID']['input']>;
  link?: InputMaybe<Scalars['ID']['input']>;
  tally?: InputMaybe<Scalars['ID']['input']>;
};

/** Birds of one identification in one small count inside a raft. */
export type ScanSample = {
  __typename?: 'ScanSample';
  number: Scalars['Int']['output'];
  /** The flock label of the raft's lines. */
  raft: Scalars['String']['output'];
  /** The observer's own number or name of the small count. */
  sample: Scalars['String']['output'];
  taxon: Scalars['String']['output'];
};

/** Birds of one identification in one small count inside a raft; 0 says that none was seen in it. */
export type ScanSampleInput = {
  number: Scalars['Int']['input'];
  raft: Scalars['String']['input'];
  sample: Scalars['String']['input'];
  taxon: Scalars['String']['input'];
};

/** A frozen, hashed version. */
export type Seal = {
  __typename?: 'Seal';
  at: Scalars['Instant']['output'];
  /** Merkle root (RFC 9162) of the audit chain at the seal. */
  auditRoot: Scalars['String']['output'];
  auditSize: Scalars['Int']['output'];
  by: Person;
  id: Scalars['ID']['output'];
  inputHash: Scalars['String']['output'];
  resultHash: Scalars['String']['output'];
};

/** A named part of the waterbody. */
export type Section = {
  __typename?: 'Section';
  id: Scalars['ID']['output'];
  name: Scalars['String']['output'];
  /** Rings of [lon, lat] positions, as in RFC 7946. */
  polygon: Array<Array<Array<Scalars['Float']['output']>>>;
};

/** Agreement on one section, or on sections that could only be compared together. */
export type SectionAgreement = {
  __typename?: 'SectionAgreement';
  measures: AgreementMeasures;
  sections: Array<Section>;
};

/** How well each of two observers finds a taxon that the other finds; neither is the truth. */
export type Sensitivity = {
  __typename?: 'Sensitivity';
  /** Birds both saw that a, b and both gave the taxon. */
  byA: Scalars['Float']['output'];
  byB: Scalars['Float']['output'];
  byBoth: Scalars['Float']['output'];
  /** Of b's birds of the taxon, the share that a gave it too. */
  ofA: Statistic;
  /** Of a's birds of the taxon, the share that b gave it too. */
  ofB: Statistic;
  taxon: Scalars['String']['output'];
};

/** A taxon and the number that a ruling sets for it. */
export type SetNumber = {
  __typename?: 'SetNumber';
  number: Scalars['Int']['output'];
  taxon: Scalars['String']['output'];
};

/** A taxon and the number to set for it. */
export type SetNumberInput = {
  number: Scalars['Int']['input'];
  taxon: Scalars['String']['input'];
};

/** How much a disagreement asks for attention. */
export type Severity =
  | 'NOTE'
  | 'QUESTIONED'
  | 'SERIOUS';

/** A piece of the shore, drawn under the sections. */
export type ShorePart = {
  __typename?: 'ShorePart';
  /** True for closed rings, the first the outside; false for one line. */
  isArea: Scalars['Boolean']['output'];
  lines: Array<Array<Array<Scalars['Float']['output']>>>;
};

/** Birds of one taxon that were recorded together in one section. */
export type Sighting = {
  __typename?: 'Sighting';
  cell: Scalars['ID']['output'];
  end?: Maybe<Scalars['Instant']['output']>;
  lines: Array<Scalars['ID']['output']>;
  number: Scalars['Int']['output'];
  observers: Array<Person>;
  position?: Maybe<Array<Scalars['Float']['output']>>;
  section: Section;
  start?: Maybe<Scalars['Instant']['output']>;
  taxon: Scalars['String']['output'];
};

/** A person's approval of the count as its input hash names it. */
export type SignOff = {
  __typename?: 'SignOff';
  as: Role;
  at: Scalars['Instant']['output'];
  by: Person;
  inputHash: Scalars['String']['output'];
};

/** A tally line with the tally it came from. */
export type SourceLine = {
  __typename?: 'SourceLine';
  line: TallyLine;
  tally: Tally;
};

/** A statistic with its 95 % interval and the number of units behind it; no value where there are too few. */
export type Statistic = {
  __typename?: 'Statistic';
  /** Null beside a value where there is no upper limit. */
  high?: Maybe<Scalars['Float']['output']>;
  low?: Maybe<Scalars['Float']['output']>;
  n: Scalars['Int']['output'];
  value?: Maybe<Scalars['Float']['output']>;
};

/** One observer's submission for an assignment. */
export type Tally = {
  __typename?: 'Tally';
  /** Null where none were noted. */
  conditions?: Maybe<Conditions>;
  coverage: Scalars['Float']['output'];
  end?: Maybe<Scalars['Instant']['output']>;
  id: Scalars['ID']['output'];
  lines: Array<TallyLine>;
  observer: Person;
  party: Array<Person>;
  reason?: Maybe<Scalars['String']['output']>;
  replaces?: Maybe<Scalars['ID']['output']>;
  /** Small counts by identification inside its rafts. */
  samples: Array<ScanSample>;
  /** all-waterbirds, waterfowl, or a list of taxa joined by commas. */
  scope: Scalars['String']['output'];
  sections: Array<Section>;
  /** One outline of what was seen, as it was drawn: rings of [lon, lat], as in GeoJSON. Null where nothing was drawn. */
  seenArea?: Maybe<Array<Array<Array<Scalars['Float']['output']>>>>;
  start?: Maybe<Scalars['Instant']['output']>;
  submittedAt: Scalars['Instant']['output'];
  total: Scalars['Int']['output'];
  vantage?: Maybe<VantagePoint>;
  /** 1 for the first submission, then up by one with each correction. */
  version: Scalars['Int']['output'];
  window: Window;
};

/** A tally to submit. */
export type TallyInput = {
  conditions?: InputMaybe<ConditionsInput>;
  countId: Scalars['ID']['input'];
  coverage: Scalars['Float']['input'];
  end?: InputMaybe<Scalars['Instant']['input']>;
  id: Scalars['ID']['input'];
  lines: Array<TallyLineInput>;
  /** Whose tally it is, as the phone has it: refused if somebody else is signed in by now. */
  observerId?: InputMaybe<Scalars['ID']['input']>;
  /** Everyone who contributed; the signed-in observer is always in it. */
  partyIds?: InputMaybe<Array<Scalars['ID']['input']>>;
  reason?: InputMaybe<Scalars['String']['input']>;
  replaces?: InputMaybe<Scalars['ID']['input']>;
  /** Each raft is a flock label of the tally's lines; fields as in samples.csv. */
  samples?: InputMaybe<Array<ScanSampleInput>>;
  scope: Scalars['String']['input'];
  sectionIds: Array<Scalars['ID']['input']>;
  /** One closed outline of what was seen: rings of [lon, lat], as in GeoJSON. */
  seenArea?: InputMaybe<Array<Array<Array<Scalars['Float']['input']>>>>;
  start?: InputMaybe<Scalars['Instant']['input']>;
  vantageId?: InputMaybe<Scalars['ID']['input']>;
  windowId: Scalars['ID']['input'];
};

/** One row of a tally. */
export type TallyLine = {
  __typename?: 'TallyLine';
  activity: Scalars['String']['output'];
  adult?: Maybe<Scalars['Int']['output']>;
  block?: Maybe<Scalars['Int']['output']>;
  candidates: Array<Scalars['String']['output']>;
  certainty: Scalars['String']['output'];
  female?: Maybe<Scalars['Int']['output']>;
  flock?: Maybe<Scalars['String']['output']>;
  from?: Maybe<Scalars['ID']['output']>;
  heading?: Maybe<Scalars['Float']['output']>;
  high?: Maybe<Scalars['Int']['output']>;
  id: Scalars['ID']['output'];
  immature?: Maybe<Scalars['Int']['output']>;
  lat?: Maybe<Scalars['Float']['output']>;
  lon?: Maybe<Scalars['Float']['output']>;
  low?: Maybe<Scalars['Int']['output']>;
  male?: Maybe<Scalars['Int']['output']>;
  /** Field marks noted for its birds. */
  marks: Array<NotedMark>;
  method: Scalars['String']['output'];
  note?: Maybe<Scalars['String']['output']>;
  number?: Maybe<Scalars['Int']['output']>;
  /** Seen but not counted. */
  present: Scalars['Boolean']['output'];
  /** The compiled name: a species' scientific name, a pair as Genus a/b, or a group name. */
  taxon: Scalars['String']['output'];
  time?: Maybe<Scalars['Instant']['output']>;
  to?: Maybe<Scalars['ID']['output']>;
  /** For method sample: how the birds of the whole raft were counted: block, one-by-one or guess. */
  totalMethod?: Maybe<Scalars['String']['output']>;
  /** As the observer wrote it. */
  written: Scalars['String']['output'];
};

/** Every field is as in tallies.csv and checked with the same sentences. */
export type TallyLineInput = {
  activity?: InputMaybe<Scalars['String']['input']>;
  adult?: InputMaybe<Scalars['Int']['input']>;
  block?: InputMaybe<Scalars['Int']['input']>;
  certainty?: InputMaybe<Scalars['String']['input']>;
  female?: InputMaybe<Scalars['Int']['input']>;
  flock?: InputMaybe<Scalars['String']['input']>;
  from?: InputMaybe<Scalars['ID']['input']>;
  heading?: InputMaybe<Scalars['Float']['input']>;
  high?: InputMaybe<Scalars['Int']['input']>;
  id: Scalars['ID']['input'];
  immature?: InputMaybe<Scalars['Int']['input']>;
  lat?: InputMaybe<Scalars['Float']['input']>;
  lon?: InputMaybe<Scalars['Float']['input']>;
  low?: InputMaybe<Scalars['Int']['input']>;
  male?: InputMaybe<Scalars['Int']['input']>;
  /** One state of a mark; fields as in marks.csv. */
  marks?: InputMaybe<Array<NotedMarkInput>>;
  method: Scalars['String']['input'];
  note?: InputMaybe<Scalars['String']['input']>;
  number?: InputMaybe<Scalars['Int']['input']>;
  taxon: Scalars['String']['input'];
  time?: InputMaybe<Scalars['Instant']['input']>;
  to?: InputMaybe<Scalars['ID']['input']>;
  /** For method sample: how the birds of the whole raft were counted: block, one-by-one or guess. */
  totalMethod?: InputMaybe<Scalars['String']['input']>;
};

/** Agreement on one taxon. */
export type TaxonAgreement = {
  __typename?: 'TaxonAgreement';
  alpha: Statistic;
  brayCurtisSimilarity: Statistic;
  concordance: Statistic;
  percentAgreement: Statistic;
  /** Of birds that one of two observers gave the taxon and both saw, the share that the other gave it too. */
  sensitivity: Statistic;
  taxon: Scalars['String']['output'];
  withinTolerance: Statistic;
};

/** Where an observer stands, and what can be seen from there. */
export type VantagePoint = {
  __typename?: 'VantagePoint';
  id: Scalars['ID']['output'];
  name: Scalars['String']['output'];
  position: Array<Scalars['Float']['output']>;
  /** Visible areas, each as rings of positions. */
  views: Array<Array<Array<Array<Scalars['Float']['output']>>>>;
};

/** The time span in which all sections are counted at once. */
export type Window = {
  __typename?: 'Window';
  closed: Scalars['Boolean']['output'];
  end: Scalars['Instant']['output'];
  id: Scalars['ID']['output'];
  slackMinutes: Scalars['Int']['output'];
  start: Scalars['Instant']['output'];
};

/** A window of a count that is being planned. */
export type WindowInput = {
  end: Scalars['Instant']['input'];
  id: Scalars['ID']['input'];
  slackMinutes?: InputMaybe<Scalars['Int']['input']>;
  start: Scalars['Instant']['input'];
};



export type ResolverTypeWrapper<T> = Promise<T> | T;


export type ResolverWithResolve<TResult, TParent, TContext, TArgs> = {
  resolve: ResolverFn<TResult, TParent, TContext, TArgs>;
};
export type Resolver<TResult, TParent = Record<PropertyKey, never>, TContext = Record<PropertyKey, never>, TArgs = Record<PropertyKey, never>> = ResolverFn<TResult, TParent, TContext, TArgs> | ResolverWithResolve<TResult, TParent, TContext, TArgs>;

export type ResolverFn<TResult, TParent, TContext, TArgs> = (
  parent: TParent,
  args: TArgs,
  context: TContext,
  info: GraphQLResolveInfo
) => Promise<TResult> | TResult;

export type SubscriptionSubscribeFn<TResult, TParent, TContext, TArgs> = (
  parent: TParent,
  args: TArgs,
  context: TContext,
  info: GraphQLResolveInfo
) => AsyncIterable<TResult> | Promise<AsyncIterable<TResult>>;

export type SubscriptionResolveFn<TResult, TParent, TContext, TArgs> = (
  parent: TParent,
  args: TArgs,
  context: TContext,
  info: GraphQLResolveInfo
) => TResult | Promise<TResult>;

export interface SubscriptionSubscriberObject<TResult, TKey extends string, TParent, TContext, TArgs> {
  subscribe: SubscriptionSubscribeFn<{ [key in TKey]: TResult }, TParent, TContext, TArgs>;
  resolve?: SubscriptionResolveFn<TResult, { [key in TKey]: TResult }, TContext, TArgs>;
}

export interface SubscriptionResolverObject<TResult, TParent, TContext, TArgs> {
  subscribe: SubscriptionSubscribeFn<any, TParent, TContext, TArgs>;
  resolve: SubscriptionResolveFn<TResult, any, TContext, TArgs>;
}

export type SubscriptionObject<TResult, TKey extends string, TParent, TContext, TArgs> =
  | SubscriptionSubscriberObject<TResult, TKey, TParent, TContext, TArgs>
  | SubscriptionResolverObject<TResult, TParent, TContext, TArgs>;

export type SubscriptionResolver<TResult, TKey extends string, TParent = Record<PropertyKey, never>, TContext = Record<PropertyKey, never>, TArgs = Record<PropertyKey, never>> =
  | ((...args: any[]) => SubscriptionObject<TResult, TKey, TParent, TContext, TArgs>)
  | SubscriptionObject<TResult, TKey, TParent, TContext, TArgs>;

export type TypeResolveFn<TTypes, TParent = Record<PropertyKey, never>, TContext = Record<PropertyKey, never>> = (
  parent: TParent,
  context: TContext,
  info: GraphQLResolveInfo
) => Maybe<TTypes> | Promise<Maybe<TTypes>>;

export type IsTypeOfResolverFn<T = Record<PropertyKey, never>, TContext = Record<PropertyKey, never>> = (obj: T, context: TContext, info: GraphQLResolveInfo) => boolean | Promise<boolean>;

export type NextResolverFn<T> = () => Promise<T>;

export type DirectiveResolverFn<TResult = Record<PropertyKey, never>, TParent = Record<PropertyKey, never>, TContext = Record<PropertyKey, never>, TArgs = Record<PropertyKey, never>> = (
  next: NextResolverFn<TResult>,
  parent: TParent,
  args: TArgs,
  context: TContext,
  info: GraphQLResolveInfo
) => TResult | Promise<TResult>;





/** Mapping between all available schema types and the resolvers types */
export type ResolversTypes = {
  Act: Act;
  Agreement: ResolverTypeWrapper<Agreement>;
  AgreementMeasures: ResolverTypeWrapper<AgreementMeasures>;
  AllocatedShare: ResolverTypeWrapper<AllocatedShare>;
  AllocatedSpecies: ResolverTypeWrapper<AllocatedSpecies>;
  AskQueryInput: AskQueryInput;
  AssignInput: AssignInput;
  Assignment: ResolverTypeWrapper<Assignment>;
  AuditEntry: ResolverTypeWrapper<AuditEntry>;
  AuditTrail: ResolverTypeWrapper<AuditTrail>;
  Boolean: ResolverTypeWrapper<Scalars['Boolean']['output']>;
  Bound: ResolverTypeWrapper<Bound>;
  Cell: ResolverTypeWrapper<Cell>;
  CellTally: ResolverTypeWrapper<CellTally>;
  CellTallyLine: ResolverTypeWrapper<CellTallyLine>;
  CompiledCount: ResolverTypeWrapper<CompiledCount>;
  CompiledLine: ResolverTypeWrapper<CompiledLine>;
  Conditions: ResolverTypeWrapper<Conditions>;
  ConditionsInput: ConditionsInput;
  ConfusionEntry: ResolverTypeWrapper<ConfusionEntry>;
  ConfusionTable: ResolverTypeWrapper<ConfusionTable>;
  Consensus: ResolverTypeWrapper<Consensus>;
  ConsistentObserver: ResolverTypeWrapper<ConsistentObserver>;
  Count: ResolverTypeWrapper<Count>;
  CountState: CountState;
  Coverage: ResolverTypeWrapper<Coverage>;
  CriticalValues: ResolverTypeWrapper<CriticalValues>;
  Decision: ResolverTypeWrapper<Decision>;
  DecisionInput: DecisionInput;
  Detection: ResolverTypeWrapper<Detection>;
  DetectionModel: ResolverTypeWrapper<DetectionModel>;
  DetectionSlope: ResolverTypeWrapper<DetectionSlope>;
  Disagreement: ResolverTypeWrapper<Disagreement>;
  Evidence: ResolverTypeWrapper<Evidence>;
  ExpectedTaxon: ResolverTypeWrapper<ExpectedTaxon>;
  Float: ResolverTypeWrapper<Scalars['Float']['output']>;
  Flock: ResolverTypeWrapper<Flock>;
  FolderFileInput: FolderFileInput;
  Group: ResolverTypeWrapper<Group>;
  GroupLine: ResolverTypeWrapper<GroupLine>;
  GroupTotal: ResolverTypeWrapper<GroupTotal>;
  ID: ResolverTypeWrapper<Scalars['ID']['output']>;
  Instant: ResolverTypeWrapper<Scalars['Instant']['output']>;
  Int: ResolverTypeWrapper<Scalars['Int']['output']>;
  Intraclass: ResolverTypeWrapper<Intraclass>;
  Invite: ResolverTypeWrapper<Invite>;
  Link: ResolverTypeWrapper<Link>;
  LinkDeduction: ResolverTypeWrapper<LinkDeduction>;
  ModelledObserver: ResolverTypeWrapper<ModelledObserver>;
  Mutation: ResolverTypeWrapper<Record<PropertyKey, never>>;
  NotedMark: ResolverTypeWrapper<NotedMark>;
  NotedMarkInput: NotedMarkInput;
  ObserverConsistency: ResolverTypeWrapper<ObserverConsistency>;
  ObserverDetection: ResolverTypeWrapper<ObserverDetection>;
  ObserverModel: ResolverTypeWrapper<ObserverModel>;
  ObserverQuery: ResolverTypeWrapper<ObserverQuery>;
  ObserverRatio: ResolverTypeWrapper<ObserverRatio>;
  OwnAgreement: ResolverTypeWrapper<OwnAgreement>;
  PairAgreement: ResolverTypeWrapper<PairAgreement>;
  Pairing: ResolverTypeWrapper<Pairing>;
  PairingFlow: ResolverTypeWrapper<PairingFlow>;
  Participant: ResolverTypeWrapper<Participant>;
  Person: ResolverTypeWrapper<Person>;
  PersonInput: PersonInput;
  PlanCountInput: PlanCountInput;
  Posting: ResolverTypeWrapper<Posting>;
  Predicted: ResolverTypeWrapper<Predicted>;
  Proposal: ResolverTypeWrapper<Proposal>;
  Protocol: ResolverTypeWrapper<Protocol>;
  Query: ResolverTypeWrapper<Record<PropertyKey, never>>;
  RatioPlot: ResolverTypeWrapper<RatioPlot>;
  RatioPoint: ResolverTypeWrapper<RatioPoint>;
  Review: ResolverTypeWrapper<Review>;
  Role: Role;
  RuleNumber: ResolverTypeWrapper<RuleNumber>;
  Ruling: ResolverTypeWrapper<Ruling>;
  RulingInput: RulingInput;
  RulingState: RulingState;
  RulingTarget: ResolverTypeWrapper<RulingTarget>;
  RulingTargetInput: RulingTargetInput;
  ScanSample: ResolverTypeWrapper<ScanSample>;
  ScanSampleInput: ScanSampleInput;
  Seal: ResolverTypeWrapper<Seal>;
  Section: ResolverTypeWrapper<Section>;
  SectionAgreement: ResolverTypeWrapper<SectionAgreement>;
  Sensitivity: ResolverTypeWrapper<Sensitivity>;
  SetNumber: ResolverTypeWrapper<SetNumber>;
  SetNumberInput: SetNumberInput;
  Severity: Severity;
  ShorePart: ResolverTypeWrapper<ShorePart>;
  Sighting: ResolverTypeWrapper<Sighting>;
  SignOff: ResolverTypeWrapper<SignOff>;
  SourceLine: ResolverTypeWrapper<SourceLine>;
  Statistic: ResolverTypeWrapper<Statistic>;
  String: ResolverTypeWrapper<Scalars['String']['output']>;
  Tally: ResolverTypeWrapper<Tally>;
  TallyInput: TallyInput;
  TallyLine: ResolverTypeWrapper<TallyLine>;
  TallyLineInput: TallyLineInput;
  TaxonAgreement: ResolverTypeWrapper<TaxonAgreement>;
  VantagePoint: ResolverTypeWrapper<VantagePoint>;
  Window: ResolverTypeWrapper<Window>;
  WindowInput: WindowInput;
};

/** Mapping between all available schema types and the resolvers parents */
export type ResolversParentTypes = {
  Agreement: Agreement;
  AgreementMeasures: AgreementMeasures;
  AllocatedShare: AllocatedShare;
  AllocatedSpecies: AllocatedSpecies;
  AskQueryInput: AskQueryInput;
  AssignInput: AssignInput;
  Assignment: Assignment;
  AuditEntry: AuditEntry;
  AuditTrail: AuditTrail;
  Boolean: Scalars['Boolean']['output'];
  Bound: Bound;
  Cell: Cell;
  CellTally: CellTally;
  CellTallyLine: CellTallyLine;
  CompiledCount: CompiledCount;
  CompiledLine: CompiledLine;
  Conditions: Conditions;
  ConditionsInput: ConditionsInput;
  ConfusionEntry: ConfusionEntry;
  ConfusionTable: ConfusionTable;
  Consensus: Consensus;
  ConsistentObserver: ConsistentObserver;
  Count: Count;
  Coverage: Coverage;
  CriticalValues: CriticalValues;
  Decision: Decision;
  DecisionInput: DecisionInput;
  Detection: Detection;
  DetectionModel: DetectionModel;
  DetectionSlope: DetectionSlope;
  Disagreement: Disagreement;
  Evidence: Evidence;
  ExpectedTaxon: ExpectedTaxon;
  Float: Scalars['Float']['output'];
  Flock: Flock;
  FolderFileInput: FolderFileInput;
  Group: Group;
  GroupLine: GroupLine;
  GroupTotal: GroupTotal;
  ID: Scalars['ID']['output'];
  Instant: Scalars['Instant']['output'];
  Int: Scalars['Int']['output'];
  Intraclass: Intraclass;
  Invite: Invite;
  Link: Link;
  LinkDeduction: LinkDeduction;
  ModelledObserver: ModelledObserver;
  Mutation: Record<PropertyKey, never>;
  NotedMark: NotedMark;
  NotedMarkInput: NotedMarkInput;
  ObserverConsistency: ObserverConsistency;
  ObserverDetection: ObserverDetection;
  ObserverModel: ObserverModel;
  ObserverQuery: ObserverQuery;
  ObserverRatio: ObserverRatio;
  OwnAgreement: OwnAgreement;
  PairAgreement: PairAgreement;
  Pairing: Pairing;
  PairingFlow: PairingFlow;
  Participant: Participant;
  Person: Person;
  PersonInput: PersonInput;
  PlanCountInput: PlanCountInput;
  Posting: Posting;
  Predicted: Predicted;
  Proposal: Proposal;
  Protocol: Protocol;
  Query: Record<PropertyKey, never>;
  RatioPlot: RatioPlot;
  RatioPoint: RatioPoint;
  Review: Review;
  RuleNumber: RuleNumber;
  Ruling: Ruling;
  RulingInput: RulingInput;
  RulingTarget: RulingTarget;
  RulingTargetInput: RulingTargetInput;
  ScanSample: ScanSample;
  ScanSampleInput: ScanSampleInput;
  Seal: Seal;
  Section: Section;
  SectionAgreement: SectionAgreement;
  Sensitivity: Sensitivity;
  SetNumber: SetNumber;
  SetNumberInput: SetNumberInput;
  ShorePart: ShorePart;
  Sighting: Sighting;
  SignOff: SignOff;
  SourceLine: SourceLine;
  Statistic: Statistic;
  String: Scalars['String']['output'];
  Tally: Tally;
  TallyInput: TallyInput;
  TallyLine: TallyLine;
  TallyLineInput: TallyLineInput;
  TaxonAgreement: TaxonAgreement;
  VantagePoint: VantagePoint;
  Window: Window;
  WindowInput: WindowInput;
};

export type AgreementResolvers<ContextType = any, ParentType extends ResolversParentTypes['Agreement'] = ResolversParentTypes['Agreement']> = {
  byPair?: Resolver<Array<ResolversTypes['PairAgreement']>, ParentType, ContextType>;
  bySection?: Resolver<Array<ResolversTypes['SectionAgreement']>, ParentType, ContextType>;
  byTaxon?: Resolver<Array<ResolversTypes['TaxonAgreement']>, ParentType, ContextType>;
  confusion?: Resolver<ResolversTypes['ConfusionTable'], ParentType, ContextType>;
  detection?: Resolver<Array<ResolversTypes['Detection']>, ParentType, ContextType>;
  intraclass?: Resolver<Array<ResolversTypes['Intraclass']>, ParentType, ContextType>;
  minimumUnits?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  observerConsistency?: Resolver<Array<ResolversTypes['ObserverConsistency']>, ParentType, ContextType>;
  observerModel?: Resolver<Maybe<ResolversTypes['ObserverModel']>, ParentType, ContextType>;
  observers?: Resolver<Array<ResolversTypes['ObserverRatio']>, ParentType, ContextType>;
  overall?: Resolver<ResolversTypes['AgreementMeasures'], ParentType, ContextType>;
};

export type AgreementMeasuresResolvers<ContextType = any, ParentType extends ResolversParentTypes['AgreementMeasures'] = ResolversParentTypes['AgreementMeasures']> = {
  adjustedKappa?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  alpha?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  brayCurtisSimilarity?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  concordance?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  kappa?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  percentAgreement?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  weightedKappa?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  withinTolerance?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
};

export type AllocatedShareResolvers<ContextType = any, ParentType extends ResolversParentTypes['AllocatedShare'] = ResolversParentTypes['AllocatedShare']> = {
  disputed?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  estimated?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type AllocatedSpeciesResolvers<ContextType = any, ParentType extends ResolversParentTypes['AllocatedSpecies'] = ResolversParentTypes['AllocatedSpecies']> = {
  englishName?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  estimated?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  high?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  identified?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  interval?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  low?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  of?: Resolver<Array<ResolversTypes['AllocatedShare']>, ParentType, ContextType>;
  species?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  undetermined?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
};

export type AssignmentResolvers<ContextType = any, ParentType extends ResolversParentTypes['Assignment'] = ResolversParentTypes['Assignment']> = {
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  person?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  sections?: Resolver<Array<ResolversTypes['Section']>, ParentType, ContextType>;
  submitted?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  tally?: Resolver<Maybe<ResolversTypes['Tally']>, ParentType, ContextType>;
  vantage?: Resolver<Maybe<ResolversTypes['VantagePoint']>, ParentType, ContextType>;
  window?: Resolver<ResolversTypes['Window'], ParentType, ContextType>;
};

export type AuditEntryResolvers<ContextType = any, ParentType extends ResolversParentTypes['AuditEntry'] = ResolversParentTypes['AuditEntry']> = {
  act?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  at?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  body?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  by?: Resolver<Maybe<ResolversTypes['Person']>, ParentType, ContextType>;
  hash?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  previous?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  seq?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  text?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type AuditTrailResolvers<ContextType = any, ParentType extends ResolversParentTypes['AuditTrail'] = ResolversParentTypes['AuditTrail']> = {
  entries?: Resolver<Array<ResolversTypes['AuditEntry']>, ParentType, ContextType>;
  intact?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  size?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
};

export type BoundResolvers<ContextType = any, ParentType extends ResolversParentTypes['Bound'] = ResolversParentTypes['Bound']> = {
  atLeast?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  atMost?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  observer?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  species?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type CellResolvers<ContextType = any, ParentType extends ResolversParentTypes['Cell'] = ResolversParentTypes['Cell']> = {
  birdsInConflict?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  bounds?: Resolver<Array<ResolversTypes['Bound']>, ParentType, ContextType>;
  feasible?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  groups?: Resolver<Array<ResolversTypes['Group']>, ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  layer?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  pairings?: Resolver<Array<ResolversTypes['Pairing']>, ParentType, ContextType>;
  sections?: Resolver<Array<ResolversTypes['Section']>, ParentType, ContextType>;
  tallies?: Resolver<Array<ResolversTypes['CellTally']>, ParentType, ContextType>;
  window?: Resolver<ResolversTypes['Window'], ParentType, ContextType>;
  witness?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
};

export type CellTallyResolvers<ContextType = any, ParentType extends ResolversParentTypes['CellTally'] = ResolversParentTypes['CellTally']> = {
  conditions?: Resolver<Array<ResolversTypes['Conditions']>, ParentType, ContextType>;
  counted?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  coverage?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  lines?: Resolver<Array<ResolversTypes['CellTallyLine']>, ParentType, ContextType>;
  observer?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  observerName?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  seenAreas?: Resolver<Array<Array<Array<Array<ResolversTypes['Float']>>>>, ParentType, ContextType>;
  tally?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  total?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
};

export type CellTallyLineResolvers<ContextType = any, ParentType extends ResolversParentTypes['CellTallyLine'] = ResolversParentTypes['CellTallyLine']> = {
  candidates?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
  lines?: Resolver<Array<ResolversTypes['ID']>, ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type CompiledCountResolvers<ContextType = any, ParentType extends ResolversParentTypes['CompiledCount'] = ResolversParentTypes['CompiledCount']> = {
  allocation?: Resolver<Array<ResolversTypes['AllocatedSpecies']>, ParentType, ContextType>;
  countId?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  draft?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  flyingThroughTotal?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  ledger?: Resolver<Array<ResolversTypes['Posting']>, ParentType, ContextType, Partial<CompiledCountLedgerArgs>>;
  line?: Resolver<Maybe<ResolversTypes['CompiledLine']>, ParentType, ContextType, RequireFields<CompiledCountLineArgs, 'taxon'>>;
  lines?: Resolver<Array<ResolversTypes['CompiledLine']>, ParentType, ContextType>;
  reported?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  seal?: Resolver<Maybe<ResolversTypes['Seal']>, ParentType, ContextType>;
  signOffs?: Resolver<Array<ResolversTypes['SignOff']>, ParentType, ContextType>;
  total?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
};

export type CompiledLineResolvers<ContextType = any, ParentType extends ResolversParentTypes['CompiledLine'] = ResolversParentTypes['CompiledLine']> = {
  atLeast?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  atMost?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  candidates?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
  englishName?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  flyingThrough?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  high?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  low?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  presentNotCounted?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type ConditionsResolvers<ContextType = any, ParentType extends ResolversParentTypes['Conditions'] = ResolversParentTypes['Conditions']> = {
  beaufort?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  disturbance?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  glare?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  iceCover?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  optics?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  seaState?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  visibility?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
};

export type ConfusionEntryResolvers<ContextType = any, ParentType extends ResolversParentTypes['ConfusionEntry'] = ResolversParentTypes['ConfusionEntry']> = {
  a?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  b?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
};

export type ConfusionTableResolvers<ContextType = any, ParentType extends ResolversParentTypes['ConfusionTable'] = ResolversParentTypes['ConfusionTable']> = {
  entries?: Resolver<Array<ResolversTypes['ConfusionEntry']>, ParentType, ContextType>;
  taxa?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
};

export type ConsensusResolvers<ContextType = any, ParentType extends ResolversParentTypes['Consensus'] = ResolversParentTypes['Consensus']> = {
  basis?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  byRule?: Resolver<Array<ResolversTypes['RuleNumber']>, ParentType, ContextType>;
  high?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  i2?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  low?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  predicted?: Resolver<Maybe<ResolversTypes['Predicted']>, ParentType, ContextType>;
  q?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  rule?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  tau2?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  tau2PauleMandel?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
};

export type ConsistentObserverResolvers<ContextType = any, ParentType extends ResolversParentTypes['ConsistentObserver'] = ResolversParentTypes['ConsistentObserver']> = {
  h?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  k?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  observer?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
};

export type CountResolvers<ContextType = any, ParentType extends ResolversParentTypes['Count'] = ResolversParentTypes['Count']> = {
  assignments?: Resolver<Array<ResolversTypes['Assignment']>, ParentType, ContextType>;
  auditTrail?: Resolver<ResolversTypes['AuditTrail'], ParentType, ContextType, RequireFields<CountAuditTrailArgs, 'first'>>;
  compiled?: Resolver<ResolversTypes['CompiledCount'], ParentType, ContextType>;
  coverage?: Resolver<Array<ResolversTypes['Coverage']>, ParentType, ContextType>;
  date?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  expectedTaxa?: Resolver<Array<ResolversTypes['ExpectedTaxon']>, ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  may?: Resolver<Array<ResolversTypes['Act']>, ParentType, ContextType>;
  myRoles?: Resolver<Array<ResolversTypes['Role']>, ParentType, ContextType>;
  myTallies?: Resolver<Array<ResolversTypes['Tally']>, ParentType, ContextType>;
  name?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  ownAgreement?: Resolver<ResolversTypes['OwnAgreement'], ParentType, ContextType>;
  people?: Resolver<Array<ResolversTypes['Participant']>, ParentType, ContextType>;
  protocol?: Resolver<ResolversTypes['Protocol'], ParentType, ContextType>;
  queries?: Resolver<Array<ResolversTypes['ObserverQuery']>, ParentType, ContextType>;
  review?: Resolver<ResolversTypes['Review'], ParentType, ContextType>;
  sections?: Resolver<Array<ResolversTypes['Section']>, ParentType, ContextType>;
  shoreline?: Resolver<Array<ResolversTypes['ShorePart']>, ParentType, ContextType>;
  state?: Resolver<ResolversTypes['CountState'], ParentType, ContextType>;
  timeZone?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  vantages?: Resolver<Array<ResolversTypes['VantagePoint']>, ParentType, ContextType>;
  waterbody?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  windows?: Resolver<Array<ResolversTypes['Window']>, ParentType, ContextType>;
};

export type CoverageResolvers<ContextType = any, ParentType extends ResolversParentTypes['Coverage'] = ResolversParentTypes['Coverage']> = {
  assigned?: Resolver<Array<ResolversTypes['Person']>, ParentType, ContextType>;
  independentTallies?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  partial?: Resolver<Array<ResolversTypes['Person']>, ParentType, ContextType>;
  section?: Resolver<ResolversTypes['Section'], ParentType, ContextType>;
  submitted?: Resolver<Array<ResolversTypes['Person']>, ParentType, ContextType>;
  window?: Resolver<ResolversTypes['Window'], ParentType, ContextType>;
};

export type CriticalValuesResolvers<ContextType = any, ParentType extends ResolversParentTypes['CriticalValues'] = ResolversParentTypes['CriticalValues']> = {
  questioned?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  serious?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
};

export type DecisionResolvers<ContextType = any, ParentType extends ResolversParentTypes['Decision'] = ResolversParentTypes['Decision']> = {
  from?: Resolver<Maybe<Array<ResolversTypes['String']>>, ParentType, ContextType>;
  kind?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  numbers?: Resolver<Maybe<Array<ResolversTypes['SetNumber']>>, ParentType, ContextType>;
  observer?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  parts?: Resolver<Maybe<Array<Array<ResolversTypes['String']>>>, ParentType, ContextType>;
  rule?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  to?: Resolver<Maybe<Array<ResolversTypes['String']>>, ParentType, ContextType>;
  with?: Resolver<Maybe<Array<ResolversTypes['String']>>, ParentType, ContextType>;
};

export type DetectionResolvers<ContextType = any, ParentType extends ResolversParentTypes['Detection'] = ResolversParentTypes['Detection']> = {
  byObserver?: Resolver<Array<ResolversTypes['ObserverDetection']>, ParentType, ContextType>;
  flocks?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  matched?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  missedByAll?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  model?: Resolver<Maybe<ResolversTypes['DetectionModel']>, ParentType, ContextType>;
  observers?: Resolver<Array<ResolversTypes['Person']>, ParentType, ContextType>;
  sections?: Resolver<Array<ResolversTypes['Section']>, ParentType, ContextType>;
  seen?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  warning?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
};

export type DetectionModelResolvers<ContextType = any, ParentType extends ResolversParentTypes['DetectionModel'] = ResolversParentTypes['DetectionModel']> = {
  birds?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  flocks?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  missedByAll?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  slopes?: Resolver<Array<ResolversTypes['DetectionSlope']>, ParentType, ContextType>;
};

export type DetectionSlopeResolvers<ContextType = any, ParentType extends ResolversParentTypes['DetectionSlope'] = ResolversParentTypes['DetectionSlope']> = {
  covariate?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  slope?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  standardError?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
};

export type DisagreementResolvers<ContextType = any, ParentType extends ResolversParentTypes['Disagreement'] = ResolversParentTypes['Disagreement']> = {
  birds?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  cell?: Resolver<Maybe<ResolversTypes['Cell']>, ParentType, ContextType>;
  group?: Resolver<Maybe<ResolversTypes['Group']>, ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  kind?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  lines?: Resolver<Array<ResolversTypes['SourceLine']>, ParentType, ContextType>;
  link?: Resolver<Maybe<ResolversTypes['Link']>, ParentType, ContextType>;
  observers?: Resolver<Array<ResolversTypes['Person']>, ParentType, ContextType>;
  proposals?: Resolver<Array<ResolversTypes['Proposal']>, ParentType, ContextType>;
  queries?: Resolver<Array<ResolversTypes['ObserverQuery']>, ParentType, ContextType>;
  ruling?: Resolver<Maybe<ResolversTypes['Ruling']>, ParentType, ContextType>;
  severity?: Resolver<ResolversTypes['Severity'], ParentType, ContextType>;
  text?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type EvidenceResolvers<ContextType = any, ParentType extends ResolversParentTypes['Evidence'] = ResolversParentTypes['Evidence']> = {
  name?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  text?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  weight?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
};

export type ExpectedTaxonResolvers<ContextType = any, ParentType extends ResolversParentTypes['ExpectedTaxon'] = ResolversParentTypes['ExpectedTaxon']> = {
  meanNumber?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  years?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
};

export type FlockResolvers<ContextType = any, ParentType extends ResolversParentTypes['Flock'] = ResolversParentTypes['Flock']> = {
  end?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  lines?: Resolver<Array<ResolversTypes['ID']>, ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  observer?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  position?: Resolver<Maybe<Array<ResolversTypes['Float']>>, ParentType, ContextType>;
  sections?: Resolver<Array<ResolversTypes['Section']>, ParentType, ContextType>;
  start?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  timeNoted?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  window?: Resolver<ResolversTypes['Window'], ParentType, ContextType>;
};

export type GroupResolvers<ContextType = any, ParentType extends ResolversParentTypes['Group'] = ResolversParentTypes['Group']> = {
  consensus?: Resolver<ResolversTypes['Consensus'], ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  lines?: Resolver<Array<ResolversTypes['GroupLine']>, ParentType, ContextType>;
  taxa?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
  totals?: Resolver<Array<ResolversTypes['GroupTotal']>, ParentType, ContextType>;
};

export type GroupLineResolvers<ContextType = any, ParentType extends ResolversParentTypes['GroupLine'] = ResolversParentTypes['GroupLine']> = {
  candidates?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type GroupTotalResolvers<ContextType = any, ParentType extends ResolversParentTypes['GroupTotal'] = ResolversParentTypes['GroupTotal']> = {
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  observer?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  observerName?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  stated?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
};

export interface InstantScalarConfig extends GraphQLScalarTypeConfig<ResolversTypes['Instant'], any> {
  name: 'Instant';
}

export type IntraclassResolvers<ContextType = any, ParentType extends ResolversParentTypes['Intraclass'] = ResolversParentTypes['Intraclass']> = {
  agreementMean?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  agreementSingle?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  consistencyMean?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  consistencySingle?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  observers?: Resolver<Array<ResolversTypes['Person']>, ParentType, ContextType>;
  oneWayMean?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  oneWaySingle?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
};

export type InviteResolvers<ContextType = any, ParentType extends ResolversParentTypes['Invite'] = ResolversParentTypes['Invite']> = {
  path?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  person?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
};

export type LinkResolvers<ContextType = any, ParentType extends ResolversParentTypes['Link'] = ResolversParentTypes['Link']> = {
  birds?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  deducted?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  deduction?: Resolver<Array<ResolversTypes['LinkDeduction']>, ParentType, ContextType>;
  evidence?: Resolver<Array<ResolversTypes['Evidence']>, ParentType, ContextType>;
  first?: Resolver<ResolversTypes['Sighting'], ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  kind?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  probability?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  proposed?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  ruling?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  second?: Resolver<ResolversTypes['Sighting'], ParentType, ContextType>;
};

export type LinkDeductionResolvers<ContextType = any, ParentType extends ResolversParentTypes['LinkDeduction'] = ResolversParentTypes['LinkDeduction']> = {
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type ModelledObserverResolvers<ContextType = any, ParentType extends ResolversParentTypes['ModelledObserver'] = ResolversParentTypes['ModelledObserver']> = {
  observer?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  ratio?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  set?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
};

export type MutationResolvers<ContextType = any, ParentType extends ResolversParentTypes['Mutation'] = ResolversParentTypes['Mutation']> = {
  acceptInvite?: Resolver<ResolversTypes['Person'], ParentType, ContextType, RequireFields<MutationAcceptInviteArgs, 'token'>>;
  answerQuery?: Resolver<ResolversTypes['ObserverQuery'], ParentType, ContextType, RequireFields<MutationAnswerQueryArgs, 'answer' | 'queryId'>>;
  askQuery?: Resolver<ResolversTypes['ObserverQuery'], ParentType, ContextType, RequireFields<MutationAskQueryArgs, 'input'>>;
  assign?: Resolver<ResolversTypes['Assignment'], ParentType, ContextType, RequireFields<MutationAssignArgs, 'input'>>;
  closeWindow?: Resolver<ResolversTypes['Count'], ParentType, ContextType, RequireFields<MutationCloseWindowArgs, 'countId' | 'windowId'>>;
  giveRuling?: Resolver<ResolversTypes['Ruling'], ParentType, ContextType, RequireFields<MutationGiveRulingArgs, 'input'>>;
  importCount?: Resolver<ResolversTypes['Count'], ParentType, ContextType, RequireFields<MutationImportCountArgs, 'files'>>;
  invite?: Resolver<ResolversTypes['Invite'], ParentType, ContextType, RequireFields<MutationInviteArgs, 'countId' | 'personId'>>;
  planCount?: Resolver<ResolversTypes['Count'], ParentType, ContextType, RequireFields<MutationPlanCountArgs, 'input'>>;
  reconcile?: Resolver<ResolversTypes['Review'], ParentType, ContextType, RequireFields<MutationReconcileArgs, 'countId'>>;
  seal?: Resolver<ResolversTypes['Seal'], ParentType, ContextType, RequireFields<MutationSealArgs, 'countId'>>;
  secondRuling?: Resolver<ResolversTypes['Ruling'], ParentType, ContextType, RequireFields<MutationSecondRulingArgs, 'rulingId'>>;
  setPassword?: Resolver<ResolversTypes['Person'], ParentType, ContextType, RequireFields<MutationSetPasswordArgs, 'new'>>;
  signIn?: Resolver<ResolversTypes['Person'], ParentType, ContextType, RequireFields<MutationSignInArgs, 'name' | 'password'>>;
  signOff?: Resolver<ResolversTypes['Count'], ParentType, ContextType, RequireFields<MutationSignOffArgs, 'as' | 'countId' | 'inputHash'>>;
  signOut?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  submitTally?: Resolver<ResolversTypes['Tally'], ParentType, ContextType, RequireFields<MutationSubmitTallyArgs, 'input'>>;
  unassign?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType, RequireFields<MutationUnassignArgs, 'assignmentId'>>;
  withdrawRuling?: Resolver<ResolversTypes['Ruling'], ParentType, ContextType, RequireFields<MutationWithdrawRulingArgs, 'reason' | 'rulingId'>>;
};

export type NotedMarkResolvers<ContextType = any, ParentType extends ResolversParentTypes['NotedMark'] = ResolversParentTypes['NotedMark']> = {
  mark?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  state?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type ObserverConsistencyResolvers<ContextType = any, ParentType extends ResolversParentTypes['ObserverConsistency'] = ResolversParentTypes['ObserverConsistency']> = {
  groups?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  hCritical?: Resolver<ResolversTypes['CriticalValues'], ParentType, ContextType>;
  kCritical?: Resolver<ResolversTypes['CriticalValues'], ParentType, ContextType>;
  observers?: Resolver<Array<ResolversTypes['ConsistentObserver']>, ParentType, ContextType>;
};

export type ObserverDetectionResolvers<ContextType = any, ParentType extends ResolversParentTypes['ObserverDetection'] = ResolversParentTypes['ObserverDetection']> = {
  chance?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  flocks?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  observer?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
};

export type ObserverModelResolvers<ContextType = any, ParentType extends ResolversParentTypes['ObserverModel'] = ResolversParentTypes['ObserverModel']> = {
  betweenGroups?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  betweenObservers?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  groups?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  n?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  observers?: Resolver<Array<ResolversTypes['ModelledObserver']>, ParentType, ContextType>;
  residual?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
};

export type ObserverQueryResolvers<ContextType = any, ParentType extends ResolversParentTypes['ObserverQuery'] = ResolversParentTypes['ObserverQuery']> = {
  about?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  answer?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  answeredAt?: Resolver<Maybe<ResolversTypes['Instant']>, ParentType, ContextType>;
  askedAt?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  askedBy?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  countId?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  disagreementId?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  question?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  to?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
};

export type ObserverRatioResolvers<ContextType = any, ParentType extends ResolversParentTypes['ObserverRatio'] = ResolversParentTypes['ObserverRatio']> = {
  observer?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  ratio?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
};

export type OwnAgreementResolvers<ContextType = any, ParentType extends ResolversParentTypes['OwnAgreement'] = ResolversParentTypes['OwnAgreement']> = {
  byPair?: Resolver<Array<ResolversTypes['PairAgreement']>, ParentType, ContextType>;
  minimumUnits?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  ratios?: Resolver<Array<ResolversTypes['ObserverRatio']>, ParentType, ContextType>;
};

export type PairAgreementResolvers<ContextType = any, ParentType extends ResolversParentTypes['PairAgreement'] = ResolversParentTypes['PairAgreement']> = {
  a?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  b?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  confusion?: Resolver<ResolversTypes['ConfusionTable'], ParentType, ContextType>;
  measures?: Resolver<ResolversTypes['AgreementMeasures'], ParentType, ContextType>;
  ratios?: Resolver<ResolversTypes['RatioPlot'], ParentType, ContextType>;
  sensitivities?: Resolver<Array<ResolversTypes['Sensitivity']>, ParentType, ContextType>;
};

export type PairingResolvers<ContextType = any, ParentType extends ResolversParentTypes['Pairing'] = ResolversParentTypes['Pairing']> = {
  a?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  aName?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  agreed?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  b?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  bName?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  compatible?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  complete?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  differently?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  flows?: Resolver<Array<ResolversTypes['PairingFlow']>, ParentType, ContextType>;
  independent?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  onlyA?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  onlyB?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  outsideScopeA?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  outsideScopeB?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
};

export type PairingFlowResolvers<ContextType = any, ParentType extends ResolversParentTypes['PairingFlow'] = ResolversParentTypes['PairingFlow']> = {
  a?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  b?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  kind?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
};

export type ParticipantResolvers<ContextType = any, ParentType extends ResolversParentTypes['Participant'] = ResolversParentTypes['Participant']> = {
  hasJoined?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  person?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  roles?: Resolver<Array<ResolversTypes['Role']>, ParentType, ContextType>;
};

export type PersonResolvers<ContextType = any, ParentType extends ResolversParentTypes['Person'] = ResolversParentTypes['Person']> = {
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  name?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type PostingResolvers<ContextType = any, ParentType extends ResolversParentTypes['Posting'] = ResolversParentTypes['Posting']> = {
  becauseKind?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  becauseRef?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  from?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  lines?: Resolver<Array<ResolversTypes['SourceLine']>, ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  text?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  to?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type PredictedResolvers<ContextType = any, ParentType extends ResolversParentTypes['Predicted'] = ResolversParentTypes['Predicted']> = {
  high?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  low?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
};

export type ProposalResolvers<ContextType = any, ParentType extends ResolversParentTypes['Proposal'] = ResolversParentTypes['Proposal']> = {
  decision?: Resolver<ResolversTypes['Decision'], ParentType, ContextType>;
  target?: Resolver<ResolversTypes['RulingTarget'], ParentType, ContextType>;
  text?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type ProtocolResolvers<ContextType = any, ParentType extends ResolversParentTypes['Protocol'] = ResolversParentTypes['Protocol']> = {
  deductLinks?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  linkThreshold?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  questionedAt?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  resolution?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  rule?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  seriousAt?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  signOffs?: Resolver<Array<ResolversTypes['Role']>, ParentType, ContextType>;
  windows?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  zeros?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type QueryResolvers<ContextType = any, ParentType extends ResolversParentTypes['Query'] = ResolversParentTypes['Query']> = {
  count?: Resolver<ResolversTypes['Count'], ParentType, ContextType, RequireFields<QueryCountArgs, 'id'>>;
  counts?: Resolver<Array<ResolversTypes['Count']>, ParentType, ContextType>;
  mayPlan?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  me?: Resolver<Maybe<ResolversTypes['Person']>, ParentType, ContextType>;
  tally?: Resolver<ResolversTypes['Tally'], ParentType, ContextType, RequireFields<QueryTallyArgs, 'id'>>;
};

export type RatioPlotResolvers<ContextType = any, ParentType extends ResolversParentTypes['RatioPlot'] = ResolversParentTypes['RatioPlot']> = {
  lower?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  meanRatio?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  points?: Resolver<Array<ResolversTypes['RatioPoint']>, ParentType, ContextType>;
  upper?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
};

export type RatioPointResolvers<ContextType = any, ParentType extends ResolversParentTypes['RatioPoint'] = ResolversParentTypes['RatioPoint']> = {
  a?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  b?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  cell?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  group?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  mean?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  ratio?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  taxa?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
};

export type ReviewResolvers<ContextType = any, ParentType extends ResolversParentTypes['Review'] = ResolversParentTypes['Review']> = {
  agreement?: Resolver<ResolversTypes['Agreement'], ParentType, ContextType>;
  cells?: Resolver<Array<ResolversTypes['Cell']>, ParentType, ContextType>;
  countId?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  disagreement?: Resolver<Maybe<ResolversTypes['Disagreement']>, ParentType, ContextType, RequireFields<ReviewDisagreementArgs, 'id'>>;
  disagreements?: Resolver<Array<ResolversTypes['Disagreement']>, ParentType, ContextType, Partial<ReviewDisagreementsArgs>>;
  flocks?: Resolver<Array<ResolversTypes['Flock']>, ParentType, ContextType>;
  inputHash?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  links?: Resolver<Array<ResolversTypes['Link']>, ParentType, ContextType>;
  openMatters?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
  rulings?: Resolver<Array<ResolversTypes['Ruling']>, ParentType, ContextType>;
  withheld?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
};

export type RuleNumberResolvers<ContextType = any, ParentType extends ResolversParentTypes['RuleNumber'] = ResolversParentTypes['RuleNumber']> = {
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  rule?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type RulingResolvers<ContextType = any, ParentType extends ResolversParentTypes['Ruling'] = ResolversParentTypes['Ruling']> = {
  at?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  by?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  decision?: Resolver<ResolversTypes['Decision'], ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  inputHash?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  reason?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  replaces?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  secondedBy?: Resolver<Maybe<ResolversTypes['Person']>, ParentType, ContextType>;
  state?: Resolver<ResolversTypes['RulingState'], ParentType, ContextType>;
  target?: Resolver<ResolversTypes['RulingTarget'], ParentType, ContextType>;
  text?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type RulingTargetResolvers<ContextType = any, ParentType extends ResolversParentTypes['RulingTarget'] = ResolversParentTypes['RulingTarget']> = {
  cell?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  group?: Resolver<Maybe<Array<ResolversTypes['String']>>, ParentType, ContextType>;
  kind?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  line?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  link?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  tally?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
};

export type ScanSampleResolvers<ContextType = any, ParentType extends ResolversParentTypes['ScanSample'] = ResolversParentTypes['ScanSample']> = {
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  raft?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  sample?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type SealResolvers<ContextType = any, ParentType extends ResolversParentTypes['Seal'] = ResolversParentTypes['Seal']> = {
  at?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  auditRoot?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  auditSize?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  by?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  inputHash?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  resultHash?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type SectionResolvers<ContextType = any, ParentType extends ResolversParentTypes['Section'] = ResolversParentTypes['Section']> = {
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  name?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  polygon?: Resolver<Array<Array<Array<ResolversTypes['Float']>>>, ParentType, ContextType>;
};

export type SectionAgreementResolvers<ContextType = any, ParentType extends ResolversParentTypes['SectionAgreement'] = ResolversParentTypes['SectionAgreement']> = {
  measures?: Resolver<ResolversTypes['AgreementMeasures'], ParentType, ContextType>;
  sections?: Resolver<Array<ResolversTypes['Section']>, ParentType, ContextType>;
};

export type SensitivityResolvers<ContextType = any, ParentType extends ResolversParentTypes['Sensitivity'] = ResolversParentTypes['Sensitivity']> = {
  byA?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  byB?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  byBoth?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  ofA?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  ofB?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type SetNumberResolvers<ContextType = any, ParentType extends ResolversParentTypes['SetNumber'] = ResolversParentTypes['SetNumber']> = {
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type ShorePartResolvers<ContextType = any, ParentType extends ResolversParentTypes['ShorePart'] = ResolversParentTypes['ShorePart']> = {
  isArea?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  lines?: Resolver<Array<Array<Array<ResolversTypes['Float']>>>, ParentType, ContextType>;
};

export type SightingResolvers<ContextType = any, ParentType extends ResolversParentTypes['Sighting'] = ResolversParentTypes['Sighting']> = {
  cell?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  end?: Resolver<Maybe<ResolversTypes['Instant']>, ParentType, ContextType>;
  lines?: Resolver<Array<ResolversTypes['ID']>, ParentType, ContextType>;
  number?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  observers?: Resolver<Array<ResolversTypes['Person']>, ParentType, ContextType>;
  position?: Resolver<Maybe<Array<ResolversTypes['Float']>>, ParentType, ContextType>;
  section?: Resolver<ResolversTypes['Section'], ParentType, ContextType>;
  start?: Resolver<Maybe<ResolversTypes['Instant']>, ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type SignOffResolvers<ContextType = any, ParentType extends ResolversParentTypes['SignOff'] = ResolversParentTypes['SignOff']> = {
  as?: Resolver<ResolversTypes['Role'], ParentType, ContextType>;
  at?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  by?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  inputHash?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type SourceLineResolvers<ContextType = any, ParentType extends ResolversParentTypes['SourceLine'] = ResolversParentTypes['SourceLine']> = {
  line?: Resolver<ResolversTypes['TallyLine'], ParentType, ContextType>;
  tally?: Resolver<ResolversTypes['Tally'], ParentType, ContextType>;
};

export type StatisticResolvers<ContextType = any, ParentType extends ResolversParentTypes['Statistic'] = ResolversParentTypes['Statistic']> = {
  high?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  low?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  n?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  value?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
};

export type TallyResolvers<ContextType = any, ParentType extends ResolversParentTypes['Tally'] = ResolversParentTypes['Tally']> = {
  conditions?: Resolver<Maybe<ResolversTypes['Conditions']>, ParentType, ContextType>;
  coverage?: Resolver<ResolversTypes['Float'], ParentType, ContextType>;
  end?: Resolver<Maybe<ResolversTypes['Instant']>, ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  lines?: Resolver<Array<ResolversTypes['TallyLine']>, ParentType, ContextType>;
  observer?: Resolver<ResolversTypes['Person'], ParentType, ContextType>;
  party?: Resolver<Array<ResolversTypes['Person']>, ParentType, ContextType>;
  reason?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  replaces?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  samples?: Resolver<Array<ResolversTypes['ScanSample']>, ParentType, ContextType>;
  scope?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  sections?: Resolver<Array<ResolversTypes['Section']>, ParentType, ContextType>;
  seenArea?: Resolver<Maybe<Array<Array<Array<ResolversTypes['Float']>>>>, ParentType, ContextType>;
  start?: Resolver<Maybe<ResolversTypes['Instant']>, ParentType, ContextType>;
  submittedAt?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  total?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  vantage?: Resolver<Maybe<ResolversTypes['VantagePoint']>, ParentType, ContextType>;
  version?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  window?: Resolver<ResolversTypes['Window'], ParentType, ContextType>;
};

export type TallyLineResolvers<ContextType = any, ParentType extends ResolversParentTypes['TallyLine'] = ResolversParentTypes['TallyLine']> = {
  activity?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  adult?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  block?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  candidates?: Resolver<Array<ResolversTypes['String']>, ParentType, ContextType>;
  certainty?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  female?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  flock?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  from?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  heading?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  high?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  immature?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  lat?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  lon?: Resolver<Maybe<ResolversTypes['Float']>, ParentType, ContextType>;
  low?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  male?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  marks?: Resolver<Array<ResolversTypes['NotedMark']>, ParentType, ContextType>;
  method?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  note?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  number?: Resolver<Maybe<ResolversTypes['Int']>, ParentType, ContextType>;
  present?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  time?: Resolver<Maybe<ResolversTypes['Instant']>, ParentType, ContextType>;
  to?: Resolver<Maybe<ResolversTypes['ID']>, ParentType, ContextType>;
  totalMethod?: Resolver<Maybe<ResolversTypes['String']>, ParentType, ContextType>;
  written?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
};

export type TaxonAgreementResolvers<ContextType = any, ParentType extends ResolversParentTypes['TaxonAgreement'] = ResolversParentTypes['TaxonAgreement']> = {
  alpha?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  brayCurtisSimilarity?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  concordance?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  percentAgreement?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  sensitivity?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
  taxon?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  withinTolerance?: Resolver<ResolversTypes['Statistic'], ParentType, ContextType>;
};

export type VantagePointResolvers<ContextType = any, ParentType extends ResolversParentTypes['VantagePoint'] = ResolversParentTypes['VantagePoint']> = {
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  name?: Resolver<ResolversTypes['String'], ParentType, ContextType>;
  position?: Resolver<Array<ResolversTypes['Float']>, ParentType, ContextType>;
  views?: Resolver<Array<Array<Array<Array<ResolversTypes['Float']>>>>, ParentType, ContextType>;
};

export type WindowResolvers<ContextType = any, ParentType extends ResolversParentTypes['Window'] = ResolversParentTypes['Window']> = {
  closed?: Resolver<ResolversTypes['Boolean'], ParentType, ContextType>;
  end?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
  id?: Resolver<ResolversTypes['ID'], ParentType, ContextType>;
  slackMinutes?: Resolver<ResolversTypes['Int'], ParentType, ContextType>;
  start?: Resolver<ResolversTypes['Instant'], ParentType, ContextType>;
};

export type Resolvers<ContextType = any> = {
  Agreement?: AgreementResolvers<ContextType>;
  AgreementMeasures?: AgreementMeasuresResolvers<ContextType>;
  AllocatedShare?: AllocatedShareResolvers<ContextType>;
  AllocatedSpecies?: AllocatedSpeciesResolvers<ContextType>;
  Assignment?: AssignmentResolvers<ContextType>;
  AuditEntry?: AuditEntryResolvers<ContextType>;
  AuditTrail?: AuditTrailResolvers<ContextType>;
  Bound?: BoundResolvers<ContextType>;
  Cell?: CellResolvers<ContextType>;
  CellTally?: CellTallyResolvers<ContextType>;
  CellTallyLine?: CellTallyLineResolvers<ContextType>;
  CompiledCount?: CompiledCountResolvers<ContextType>;
  CompiledLine?: CompiledLineResolvers<ContextType>;
  Conditions?: ConditionsResolvers<ContextType>;
  ConfusionEntry?: ConfusionEntryResolvers<ContextType>;
  ConfusionTable?: ConfusionTableResolvers<ContextType>;
  Consensus?: ConsensusResolvers<ContextType>;
  ConsistentObserver?: ConsistentObserverResolvers<ContextType>;
  Count?: CountResolvers<ContextType>;
  Coverage?: CoverageResolvers<ContextType>;
  CriticalValues?: CriticalValuesResolvers<ContextType>;
  Decision?: DecisionResolvers<ContextType>;
  Detection?: DetectionResolvers<ContextType>;
  DetectionModel?: DetectionModelResolvers<ContextType>;
  DetectionSlope?: DetectionSlopeResolvers<ContextType>;
  Disagreement?: DisagreementResolvers<ContextType>;
  Evidence?: EvidenceResolvers<ContextType>;
  ExpectedTaxon?: ExpectedTaxonResolvers<ContextType>;
  Flock?: FlockResolvers<ContextType>;
  Group?: GroupResolvers<ContextType>;
  GroupLine?: GroupLineResolvers<ContextType>;
  GroupTotal?: GroupTotalResolvers<ContextType>;
  Instant?: GraphQLScalarType;
  Intraclass?: IntraclassResolvers<ContextType>;
  Invite?: InviteResolvers<ContextType>;
  Link?: LinkResolvers<ContextType>;
  LinkDeduction?: LinkDeductionResolvers<ContextType>;
  ModelledObserver?: ModelledObserverResolvers<ContextType>;
  Mutation?: MutationResolvers<ContextType>;
  NotedMark?: NotedMarkResolvers<ContextType>;
  ObserverConsistency?: ObserverConsistencyResolvers<ContextType>;
  ObserverDetection?: ObserverDetectionResolvers<ContextType>;
  ObserverModel?: ObserverModelResolvers<ContextType>;
  ObserverQuery?: ObserverQueryResolvers<ContextType>;
  ObserverRatio?: ObserverRatioResolvers<ContextType>;
  OwnAgreement?: OwnAgreementResolvers<ContextType>;
  PairAgreement?: PairAgreementResolvers<ContextType>;
  Pairing?: PairingResolvers<ContextType>;
  PairingFlow?: PairingFlowResolvers<ContextType>;
  Participant?: ParticipantResolvers<ContextType>;
  Person?: PersonResolvers<ContextType>;
  Posting?: PostingResolvers<ContextType>;
  Predicted?: PredictedResolvers<ContextType>;
  Proposal?: ProposalResolvers<ContextType>;
  Protocol?: ProtocolResolvers<ContextType>;
  Query?: QueryResolvers<ContextType>;
  RatioPlot?: RatioPlotResolvers<ContextType>;
  RatioPoint?: RatioPointResolvers<ContextType>;
  Review?: ReviewResolvers<ContextType>;
  RuleNumber?: RuleNumberResolvers<ContextType>;
  Ruling?: RulingResolvers<ContextType>;
  RulingTarget?: RulingTargetResolvers<ContextType>;
  ScanSample?: ScanSampleResolvers<ContextType>;
  Seal?: SealResolvers<ContextType>;
  Section?: SectionResolvers<ContextType>;
  SectionAgreement?: SectionAgreementResolvers<ContextType>;
  Sensitivity?: SensitivityResolvers<ContextType>;
  SetNumber?: SetNumberResolvers<ContextType>;
  ShorePart?: ShorePartResolvers<ContextType>;
  Sighting?: SightingResolvers<ContextType>;
  SignOff?: SignOffResolvers<ContextType>;
  SourceLine?: SourceLineResolvers<ContextType>;
  Statistic?: StatisticResolvers<ContextType>;
  Tally?: TallyResolvers<ContextType>;
  TallyLine?: TallyLineResolvers<ContextType>;
  TaxonAgreement?: TaxonAgreementResolvers<ContextType>;
  VantagePoint?: VantagePointResolvers<ContextType>;
  Window?: WindowResolvers<ContextType>;
};


import { defaultProtocol } from '../../server/core/model/default-protocol.js';
import type { Protocol, Rule } from '../../server/core/model/protocol.js';
import { reconcile } from '../../server/core/reconcile.js';
import type { GroupScore, Ground } from '../../server/core/score/group-score.js';
import type { LinkCounts } from '../../server/core/score/link-score.js';
import type { PlantedKind } from '../../server/core/score/truth.js';
import { scoreCount, type Score } from '../../server/core/score/score.js';
import { RUNNING_LOW } from '../../server/core/simulate/model.js';
import { DEFAULT_OPTIONS, type SimulationOptions } from '../../server/core/simulate/options.js';
import { simulate } from '../../server/core/simulate/simulate.js';

export interface Setting {
  readonly name: string;
  readonly options: Partial<SimulationOptions>;
}

const nothingElse: Partial<SimulationOptions> = {
  detection: 1,
  misidentified: 0,
  leftCoarse: 0,
  placing: 0,
  moving: 0,
};

/**
 * What the goals were set for: every tally of a whole section by one observer alone. A setting of its
 * own measures partial coverage, merged sections and parties.
 */
const wholeAndAlone: Partial<SimulationOptions> = { partial: 0, merged: 0, parties: 0 };

const { partial, merged, parties } = DEFAULT_OPTIONS;

export const SETTINGS: readonly Setting[] = [
  { name: 'two observers', options: {} },
  { name: 'two observers who find and name all', options: nothingElse },
  { name: 'three observers', options: { observers: 6, perSection: 3 } },
  { name: 'mixed methods, two observers', options: { observers: 3, methods: 'mixed' } },
  {
    name: 'mixed methods, two observers who find and name all',
    options: { ...nothingElse, observers: 3, methods: 'mixed' },
  },
  { name: 'two observers with ratios of their own (10 %)', options: { observerSpread: 0.1 } },
  { name: 'all running low', options: { bias: RUNNING_LOW } },
  { name: 'slips on 2 % of lines', options: { slips: 0.02 } },
  {
    name: 'two observers; partial, merged, in parties 5 % each',
    options: { partial, merged, parties },
  },
];

const protocol: Protocol = { ...defaultProtocol, rule: 'weighted-mean' };

export const RULES_COMPARED = [
  'highest',
  'mean',
  'median',
  'random-effects',
  'weighted-mean',
] as const;

/** Coverage over many counts: groups, and how many of them were covered at each level. */
export interface Covered {
  groups: number;
  readonly covered: number[];
  readonly coveredRounded: number[];
}

/** Totals of many planted or shown things, and how many of them were right. */
export interface Found {
  planted: number;
  foundOfAll: number;
  findable: number;
  found: number;
  shown: number;
  shownRight: number;
}

export interface Accuracy {
  readonly coverage: Map<Ground, Covered>;
  /** Relative errors of the sum over groups, one a count, by rule. */
  readonly totals: Map<Rule, number[]>;
  /** The same over groups that rest on several counts with counting error. */
  readonly severalTotals: Map<Rule, number[]>;
  readonly compiled: number[];
  readonly planted: Map<`${PlantedKind} ${number}`, Found>;
  readonly links: Record<keyof LinkCounts, number>;
}

const PLANTED_SUMS = ['planted', 'foundOfAll', 'findable', 'found', 'shown', 'shownRight'] as const;

/** Simulates, reconciles and scores so many counts of a setting, seeds from 1. */
export function accuracyOf({ options }: Setting, counts: number): Accuracy {
  const accuracy: Accuracy = {
    coverage: new Map(),
    totals: new Map(RULES_COMPARED.map((rule) => [rule, []])),
    severalTotals: new Map(RULES_COMPARED.map((rule) => [rule, []])),
    compiled: [],
    planted: new Map(),
    links: {
      trueLinks: 0,
      shown: 0,
      shownRight: 0,
      shownPartly: 0,
      shownFound: 0,
      proposed: 0,
      proposedRight: 0,
      proposedPartly: 0,
      proposedFound: 0,
      trueBirds: 0,
      birdsFound: 0,
      birdsRight: 0,
      birdsWrong: 0,
    },
  };
  for (let seed = 1; seed <= counts; seed += 1) {
    const { snapshot, truth } = simulate(
      { ...DEFAULT_OPTIONS, ...wholeAndAlone, ...options, seed },
      protocol,
    );
    const result = reconcile(snapshot, [], protocol);
    addCount(accuracy, scoreCount(snapshot, protocol, result, truth));
  }
  return accuracy;
}

function addCount(accuracy: Accuracy, score: Score): void {
  const { compiled, groups, coverage, links, planted } = score;
  accuracy.compiled.push(compiled.compiled / compiled.truth - 1);
  addTotals(accuracy.totals, groups);
  addTotals(
    accuracy.severalTotals,
    groups.filter(({ ground }) => ground === 'several'),
  );
  for (const each of coverage) {
    const sum = accuracy.coverage.get(each.ground) ?? {
      groups: 0,
      covered: each.covered.map(() => 0),
      coveredRounded: each.covered.map(() => 0),
    };
    accuracy.coverage.set(each.ground, sum);
    sum.groups += each.groups;
    each.covered.forEach((more, level) => (sum.covered[level] = (sum.covered[level] ?? 0) + more));
    each.coveredRounded.forEach(
      (more, level) => (sum.coveredRounded[level] = (sum.coveredRounded[level] ?? 0) + more),
    );
  }
  for (const key of Object.keys(accuracy.links) as (keyof LinkCounts)[]) {
    accuracy.links[key] += links[key];
  }
  for (const each of planted ?? []) {
    const key = `${each.kind} ${each.fewestBirds}` as const;
    const sum = accuracy.planted.get(key) ?? {
      planted: 0,
      foundOfAll: 0,
      findable: 0,
      found: 0,
      shown: 0,
      shownRight: 0,
    };
    accuracy.planted.set(key, sum);
    for (const what of PLANTED_SUMS) sum[what] += each[what];
  }
}

function addTotals(totals: Map<Rule, number[]>, groups: readonly GroupScore[]): void {
  const truth = groups.reduce((sum, group) => sum + group.truth, 0);
  if (truth === 0) return;
  for (const [rule, errors] of totals) {
    const number = groups.reduce((sum, group) => sum + (group.byRule[rule] ?? group.number), 0);
    errors.push(number / truth - 1);
  }
}

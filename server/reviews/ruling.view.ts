import type * as Api from '../api/generated/schema.js';
import type { Decision, RulingTarget } from '../core/model/ruling.js';
import type { Species } from '../core/model/snapshot.js';
import { describeTarget } from '../core/rulings/check-contradictions.js';
import { englishName } from '../core/taxa/taxon-name.js';
import { taxonName } from '../core/taxa/taxon-name.js';
import type { RulingRecord } from '../database/ruling-rows.js';
import { nameOf } from '../plans/count-access.js';
import { personView } from '../plans/plan.view.js';
import type { LoadedReview } from './loaded-review.js';
import { awaitsSecond, replacedRulings } from './rulings-in-force.js';

/** @param review the review that the ruling is part of, loaded after it was stored */
export function rulingView(review: LoadedReview, record: RulingRecord): Api.Ruling {
  const { ruling, at, second, replaces } = record;
  const people = review.access.record;
  return {
    id: ruling.id,
    by: personView(people, ruling.by),
    at,
    reason: ruling.reason,
    target: targetView(ruling.target),
    decision: decisionView(ruling.decision),
    state: stateOf(review, record),
    secondedBy: second && personView(people, second.by),
    replaces,
    text: `${describeDecision(ruling.decision, (id) => nameOf(people, id))}: ${describeTarget(ruling.target)}`,
    inputHash: review.reconciled.inputHash,
  };
}

const OUTCOME_STATES = {
  applied: 'APPLIED',
  stale: 'STALE',
  'without-target': 'WITHOUT_TARGET',
} as const;

function stateOf(review: LoadedReview, record: RulingRecord): Api.RulingState {
  if (record.withdrawal !== null) return 'WITHDRAWN';
  if (replacedRulings(review.rulings).has(record.ruling.id)) return 'REPLACED';
  if (awaitsSecond(record)) return 'NEEDS_SECOND';
  const outcome = review.result.rulings.find(({ id }) => id === record.ruling.id);
  return outcome === undefined ? 'WITHOUT_TARGET' : OUTCOME_STATES[outcome.state];
}

export function targetView(target: RulingTarget): Api.RulingTarget {
  return target.kind === 'group' ? { ...target, group: [...target.group] } : target;
}

export function decisionView(decision: Decision): Api.Decision {
  switch (decision.kind) {
    case 'set-numbers':
      return {
        kind: decision.kind,
        numbers: decision.lines.map(({ candidates, number }) => ({
          taxon: taxonName(candidates),
          number,
        })),
      };
    case 'identify-as':
      return { kind: decision.kind, from: [...decision.from], to: [...decision.to] };
    case 'identify-line':
      return { kind: decision.kind, to: [...decision.to] };
    case 'merge-groups':
      return { kind: decision.kind, with: [...decision.with] };
    case 'split-group':
      return { kind: decision.kind, parts: decision.parts.map((part) => [...part]) };
    default:
      return decision;
  }
}

function describeDecision(decision: Decision, name: (person: string) => string): string {
  const taxon = (candidates: readonly Species[]): string => englishName(candidates);
  switch (decision.kind) {
    case 'let-stand':
      return 'The drafted numbers stand';
    case 'accept-observer':
      return `The numbers of ${decision.observer.split('+').map(name).join(' and ')} are taken`;
    case 'set-numbers': {
      const numbers = decision.lines.map((line) => `${line.number} ${taxon(line.candidates)}`);
      return `Set to ${numbers.join(', ')}`;
    }
    case 'take-rule':
      return `Settled by the rule "${decision.rule}"`;
    case 'identify-as':
      return `${taxon(decision.from)} compiled as ${taxon(decision.to)}`;
    case 'identify-line':
      return `Read as ${taxon(decision.to)}`;
    case 'merge-groups':
      return `Settled together with ${decision.with.join(', ')}`;
    case 'split-group':
      return `Taken apart into ${decision.parts.map((part) => part.join(', ')).join(' and ')}`;
    case 'exclude':
      return 'Left out';
    case 'confirm-link':
      return 'One flock, counted once';
    case 'reject-link':
      return 'Two flocks, both counted';
  }
}

import type * as Api from '../api/generated/schema.js';
import type { Decision, RulingTarget } from '../core/model/ruling.js';
import { joined, saidIn, say, together, type Said, type Saying } from '../core/model/saying.js';
import type { Species } from '../core/model/snapshot.js';
import { targetSaying } from '../core/rulings/check-contradictions.js';
import { taxonName } from '../core/taxa/taxon-name.js';
import type { RulingRecord } from '../database/ruling-rows.js';
import { nameOf } from '../plans/count-access.js';
import { personView } from '../plans/plan.view.js';
import type { LoadedReview } from './loaded-review.js';
import { RULE_WORDS } from './rule-words.js';
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
    text: saidIn(
      say('{decision}: {target}', {
        decision: decisionSaying(ruling.decision, (id) => nameOf(people, id)),
        target: targetSaying(ruling.target),
      }),
      review.access.viewer.wording,
    ),
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

/** What was decided, whatever about. */
function decisionSaying(decision: Decision, name: (person: string) => string): Saying {
  const taxon = (candidates: readonly Species[]): Said => ({ taxon: candidates });
  switch (decision.kind) {
    case 'let-stand':
      return say('The drafted numbers stand');
    case 'accept-observer':
      return say('The numbers of {observer} are taken', {
        observer: together(decision.observer.split('+').map(name)),
      });
    case 'set-numbers': {
      const numbers = decision.lines.map(({ candidates, number }) =>
        say('{number} {taxon}', { number, taxon: taxon(candidates) }),
      );
      return say('Set to {numbers}', { numbers: joined(numbers, ', ') });
    }
    case 'take-rule':
      return say('Settled by the rule "{rule}"', { rule: RULE_WORDS[decision.rule] });
    case 'identify-as':
      return say('{from} compiled as {to}', {
        from: taxon(decision.from),
        to: taxon(decision.to),
      });
    case 'identify-line':
      return say('Read as {taxon}', { taxon: taxon(decision.to) });
    case 'merge-groups':
      return say('Settled together with {taxa}', { taxa: joined(decision.with, ', ') });
    case 'split-group':
      return say('Taken apart into {parts}', {
        parts: together(decision.parts.map((part) => joined(part, ', '))),
      });
    case 'exclude':
      return say('Left out');
    case 'confirm-link':
      return say('One flock, counted once');
    case 'reject-link':
      return say('Two flocks, both counted');
  }
}

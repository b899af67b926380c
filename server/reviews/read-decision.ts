import type * as Api from '../api/generated/schema.js';
import type { Fault } from '../core/model/fault.js';
import { RULES } from '../core/model/protocol.js';
import {
  DECISIONS_ON,
  TARGET_NOUNS,
  type Decision,
  type RulingTarget,
} from '../core/model/ruling.js';
import type { Species } from '../core/model/snapshot.js';
import { Refusal } from '../core/refusal.js';
import { parseTaxon } from '../core/taxa/parse-taxon.js';
import { joined, say, type Saying } from '../core/model/saying.js';

/**
 * Reads a decision as it comes in, its taxa written as anyone writes them.
 *
 * @param target what it is about
 * @throws Refusal BAD_INPUT with every fault
 */
export function readDecision(input: Api.DecisionInput, target: RulingTarget): Decision {
  const faults: Fault[] = [];
  const decision = read(input, target, faults);
  if (decision === null || faults.length > 0) throw Refusal.badInput(faults);
  return decision;
}

function read(input: Api.DecisionInput, target: RulingTarget, faults: Fault[]): Decision | null {
  const allowed: readonly Decision['kind'][] = DECISIONS_ON[target.kind];
  const kind = allowed.find((one) => one === input.kind);
  switch (kind) {
    case 'let-stand':
    case 'confirm-link':
    case 'reject-link':
    case 'exclude':
      return { kind };
    case 'accept-observer':
      if (input.observer) return { kind, observer: input.observer };
      faults.push(missing('observer', say('the id of the observer whose numbers are taken')));
      return null;
    case 'take-rule': {
      const rule = RULES.find((one) => one === input.rule);
      if (rule !== undefined) return { kind, rule };
      faults.push(wrong('rule', input.rule ?? null, say('not a rule'), joined(RULES, ', ')));
      return null;
    }
    case 'set-numbers':
      return { kind, lines: readNumbers(input.numbers ?? [], faults) };
    case 'identify-as':
      return {
        kind,
        from: readTaxon('from', input.from, null, faults),
        to: readTaxon('to', input.to, null, faults),
      };
    case 'identify-line':
      return { kind, to: readTaxon('to', input.to, null, faults) };
    case 'merge-groups':
      if (input.with && input.with.length > 0) return { kind, with: [...input.with].sort() };
      faults.push(missing('with', say('the taxa of the group that it is settled together with')));
      return null;
    case 'split-group':
      if (input.parts && input.parts.length > 1) {
        return { kind, parts: input.parts.map((part) => [...part].sort()) };
      }
      faults.push(missing('parts', say('two parts or more, each a list of taxa of the group')));
      return null;
    case undefined:
      faults.push(
        wrong(
          'kind',
          input.kind,
          say('"{kind}" is no decision on a {what}', {
            kind: input.kind,
            what: TARGET_NOUNS[target.kind],
          }),
          joined(DECISIONS_ON[target.kind], ', '),
        ),
      );
      return null;
  }
}

function readNumbers(
  numbers: readonly Api.SetNumberInput[],
  faults: Fault[],
): { readonly candidates: readonly Species[]; readonly number: number }[] {
  if (numbers.length === 0) {
    faults.push(
      missing('numbers', say('one line at least: a taxon and its whole number of birds')),
    );
  }
  const seen = new Set<string>();
  return numbers.map(({ taxon, number }, index) => {
    const row = index + 1;
    const candidates = readTaxon('taxon', taxon, row, faults);
    if (!Number.isSafeInteger(number) || number < 0) {
      const problem = say('{number} is not a number of birds', { number });
      faults.push({
        ...wrong('number', `${number}`, problem, say('a whole number, 0 or more')),
        row,
      });
    }
    const key = candidates.join('/');
    if (candidates.length > 0 && seen.has(key)) {
      const problem = say('"{taxon}" stands in an earlier line too', { taxon });
      faults.push({ ...wrong('taxon', taxon, problem, say('each taxon once')), row });
    }
    seen.add(key);
    return { candidates, number };
  });
}

function readTaxon(
  column: string,
  text: string | null | undefined,
  row: number | null,
  faults: Fault[],
): readonly Species[] {
  const parsed = parseTaxon(text ?? '');
  if (parsed.ok) return parsed.candidates;
  const { problem, expected, nearest } = parsed;
  faults.push({ ...wrong(column, text ?? null, problem, expected), row, nearest });
  return [];
}

function missing(column: string, expected: Saying): Fault {
  return { ...wrong(column, null, say('is missing'), expected), code: 'missing-value' };
}

function wrong(column: string, value: string | null, problem: Saying, expected: Saying): Fault {
  return {
    code: 'bad-decision',
    file: 'ruling',
    row: null,
    column,
    value,
    problem,
    expected,
    nearest: null,
  };
}

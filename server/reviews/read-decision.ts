import type * as Api from '../api/generated/schema.js';
import type { Fault } from '../core/model/fault.js';
import { RULES } from '../core/model/protocol.js';
import { DECISIONS_ON, type Decision, type RulingTarget } from '../core/model/ruling.js';
import type { Species } from '../core/model/snapshot.js';
import { Refusal } from '../core/refusal.js';
import { parseTaxon } from '../core/taxa/parse-taxon.js';

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
      faults.push(missing('observer', 'the id of the observer whose numbers are taken'));
      return null;
    case 'take-rule': {
      const rule = RULES.find((one) => one === input.rule);
      if (rule !== undefined) return { kind, rule };
      faults.push(wrong('rule', input.rule ?? null, 'not a rule', RULES.join(', ')));
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
      faults.push(missing('with', 'the taxa of the group that it is settled together with'));
      return null;
    case 'split-group':
      if (input.parts && input.parts.length > 1) {
        return { kind, parts: input.parts.map((part) => [...part].sort()) };
      }
      faults.push(missing('parts', 'two parts or more, each a list of taxa of the group'));
      return null;
    case undefined:
      faults.push(
        wrong(
          'kind',
          input.kind,
          `"${input.kind}" is no decision on a ${target.kind}`,
          DECISIONS_ON[target.kind].join(', '),
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
    faults.push(missing('numbers', 'one line at least: a taxon and its whole number of birds'));
  }
  const seen = new Set<string>();
  return numbers.map(({ taxon, number }, index) => {
    const row = index + 1;
    const candidates = readTaxon('taxon', taxon, row, faults);
    if (!Number.isSafeInteger(number) || number < 0) {
      const problem = `${number} is not a number of birds`;
      faults.push({ ...wrong('number', `${number}`, problem, 'a whole number, 0 or more'), row });
    }
    const key = candidates.join('/');
    if (candidates.length > 0 && seen.has(key)) {
      const problem = `"${taxon}" stands in an earlier line too`;
      faults.push({ ...wrong('taxon', taxon, problem, 'each taxon once'), row });
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

function missing(column: string, expected: string): Fault {
  return { ...wrong(column, null, 'is missing', expected), code: 'missing-value' };
}

function wrong(column: string, value: string | null, problem: string, expected: string): Fault {
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

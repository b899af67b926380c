import { parseTaxon } from '../taxa/parse-taxon.js';
import type { Checked } from './check-tally.js';
import { uniqueId } from './check-plan.js';
import type { Fault } from './fault.js';
import { KeyReader } from './key-reader.js';
import { RULES } from './protocol.js';
import { readKnownId } from './reading.js';
import {
  DECISIONS_ON,
  TARGET_NOUNS,
  type Decision,
  type Ruling,
  type RulingTarget,
} from './ruling.js';
import type { Snapshot, Species } from './snapshot.js';
import { joined, say } from './saying.js';

const TARGETS = ['group', 'link', 'tally', 'line'] as const;

const RULING_KEYS = ['id', 'by', 'reason', 'target', 'decision', 'basis'];

/**
 * Checks a list of rulings from outside, shaped as `Ruling`. Taxa may be written as anyone writes
 * them: `from` and `to` as text instead of a list of species, a line of `set-numbers` with `taxon`
 * instead of `candidates`; `basis` may be left out. Whether a cell, group or link exists is only
 * known when the count is reconciled: then a ruling without target is reported, not applied.
 *
 * @param file what faults call the input.
 */
export function checkRulings(
  value: unknown,
  snapshot: Snapshot,
  file: string,
): Checked<readonly Ruling[]> {
  const faults: Fault[] = [];
  const document = new KeyReader(file, '', { rulings: value }, faults);
  const entries = document.objects('rulings', say('a list of rulings')) ?? [];
  const ids = new Map<string, string>();
  const rulings = entries.map((entry) => checkRuling(entry, snapshot, ids));
  return faults.length > 0 ? { ok: false, faults } : { ok: true, value: rulings };
}

function checkRuling(entry: KeyReader, snapshot: Snapshot, ids: Map<string, string>): Ruling {
  entry.unknownKeys(RULING_KEYS, null);
  const people = snapshot.people.map(({ id }) => id);
  const person = (text: string) => readKnownId(text, people, say('person'));
  const target = checkTarget(entry, snapshot);
  return {
    id: uniqueId(entry, ids),
    by: entry.read('by', say('the id of the compiler'), person) ?? '',
    reason: entry.text('reason', say('why it was decided so')) ?? '',
    target: target ?? { kind: 'line', line: '' },
    decision: checkDecision(entry, target, people),
    basis: entry.value('basis') === undefined ? null : checkTexts(entry, 'basis', false),
  };
}

function checkTexts(reader: KeyReader, key: string, needed: boolean): readonly string[] | null {
  const list = reader.list(key, say('a list of texts'), needed);
  if (list === null) return null;
  const texts = list.filter((entry) => typeof entry === 'string');
  if (texts.length < list.length) {
    reader.fault(key, 'wrong-type', say('not every entry is a text'), say('a list of texts'));
  }
  return texts;
}

function checkTarget(entry: KeyReader, snapshot: Snapshot): RulingTarget | null {
  const target = entry.child(
    'target',
    say('what the ruling is about: kind {kinds}', { kinds: joined(TARGETS, ', ') }),
  );
  const kind = target?.word('kind', TARGETS, say('kind of target')) ?? null;
  if (target === null || kind === null) return null;
  if (kind === 'group') {
    target.unknownKeys(['kind', 'cell', 'group'], null);
    const cell = target.text('cell', say('the id of a cell')) ?? '';
    return { kind, cell, group: [...(checkTexts(target, 'group', true) ?? [])].sort() };
  }
  target.unknownKeys(['kind', kind], null);
  if (kind === 'link') return { kind, link: target.text('link', say('the id of a link')) ?? '' };
  const ids =
    kind === 'tally'
      ? snapshot.tallies.map(({ id }) => id)
      : snapshot.tallies.flatMap(({ lines }) => lines.map(({ id }) => id));
  const what = TARGET_NOUNS[kind];
  const id =
    target.read(kind, say('the id of a {what}', { what }), (text) =>
      readKnownId(text, ids, what),
    ) ?? '';
  return kind === 'tally' ? { kind, tally: id } : { kind, line: id };
}

function checkDecision(
  entry: KeyReader,
  target: RulingTarget | null,
  people: readonly string[],
): Decision {
  const nothing: Decision = { kind: 'let-stand' };
  const allowed: readonly Decision['kind'][] =
    target === null ? [...new Set(Object.values(DECISIONS_ON).flat())] : DECISIONS_ON[target.kind];
  const decision = entry.child(
    'decision',
    say('what was decided: kind {kinds}', { kinds: joined(allowed, ', ') }),
  );
  const about =
    target === null
      ? say('decision')
      : say('decision about a {what}', { what: TARGET_NOUNS[target.kind] });
  const kind = decision?.word('kind', allowed, about) ?? null;
  if (decision === null || kind === null) return nothing;
  switch (kind) {
    case 'accept-observer': {
      // Several who together cover a merged place are named by their ids joined by `+`.
      const observer = decision.text('observer', say('an observer id')) ?? '';
      const person = (text: string) => readKnownId(text, people, say('person'));
      if (!observer.includes('+')) decision.read('observer', say('an observer id'), person);
      return { kind, observer };
    }
    case 'merge-groups':
      return { kind, with: [...(checkTexts(decision, 'with', true) ?? [])].sort() };
    case 'split-group':
      return { kind, parts: checkParts(decision) };
    case 'take-rule':
      return { kind, rule: decision.word('rule', RULES, say('rule')) ?? 'mean' };
    case 'set-numbers':
      return { kind, lines: checkNumbers(decision) };
    case 'identify-as':
      return { kind, from: checkTaxon(decision, 'from'), to: checkTaxon(decision, 'to') };
    case 'identify-line':
      return { kind, to: checkTaxon(decision, 'to') };
    default:
      decision.unknownKeys(['kind'], null);
      return { kind };
  }
}

function checkNumbers(
  decision: KeyReader,
): readonly { readonly candidates: readonly Species[]; readonly number: number }[] {
  const lines = decision.objects('lines', say('a list of taxa with numbers')) ?? [];
  return lines.map((line) => ({
    candidates: checkTaxon(line, line.value('candidates') === undefined ? 'taxon' : 'candidates'),
    number: line.whole('number', say('a whole number of birds, 0 or more')) ?? 0,
  }));
}

function checkParts(decision: KeyReader): readonly (readonly string[])[] {
  const parts = decision.list('parts', say('a list of lists of taxa'), true) ?? [];
  const lists = parts.filter(
    (part): part is string[] =>
      Array.isArray(part) && part.length > 0 && part.every((taxon) => typeof taxon === 'string'),
  );
  if (lists.length < parts.length || lists.length < 2) {
    const problem = say('a group is taken apart into two parts or more, each a list of taxa');
    decision.fault('parts', 'wrong-type', problem, say('a list of lists of taxa'));
  }
  return lists.map((part) => [...part].sort());
}

/** A taxon as text, or a list of species. */
function checkTaxon(reader: KeyReader, key: string): readonly Species[] {
  const value = reader.value(key);
  const texts = Array.isArray(value)
    ? (checkTexts(reader, key, true) ?? [])
    : [reader.text(key, say('a taxon')) ?? ''];
  const all = new Set<Species>();
  for (const text of texts) {
    if (text === '') continue;
    const parsed = parseTaxon(text);
    if (parsed.ok) for (const name of parsed.candidates) all.add(name);
    else reader.fault(key, 'unknown-taxon', parsed.problem, parsed.expected, parsed.nearest);
  }
  if (Array.isArray(value) && value.length === 0) {
    reader.fault(key, 'missing-value', say('no taxon is given'), say('a taxon'));
  }
  return [...all].sort();
}

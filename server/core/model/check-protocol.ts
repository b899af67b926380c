import { parseTaxon } from '../taxa/parse-taxon.js';
import { defaultProtocol } from './default-protocol.js';
import type { Fault } from './fault.js';
import { isObject, KeyReader } from './key-reader.js';
import type { KnownIds } from './raw.js';
import { oneOf, readKnownId } from './reading.js';
import { nearestOf } from './nearest.js';
import {
  RULES,
  type CountingErrorStep,
  type CountingErrorTable,
  type Protocol,
} from './protocol.js';
import { METHODS, type Species } from './snapshot.js';
import { say } from './saying.js';

/**
 * Checks protocol settings; every key has a default, an unknown one is refused. `lookAlikes`, when
 * given, replaces the regional list; `countingError` replaces the methods that it names;
 * `designated` may be one person's id, for every section. The value counts only if no fault was
 * added.
 */
export function checkProtocol(
  value: unknown,
  file: string,
  known: KnownIds,
  faults: Fault[],
): Protocol {
  if (value === undefined || value === null) return defaultProtocol;
  if (!isObject(value)) {
    const whole = new KeyReader(file, '', { protocol: value }, faults);
    whole.fault(
      'protocol',
      'wrong-type',
      say('the protocol is not an object'),
      say('keys with settings'),
    );
    return defaultProtocol;
  }
  const reader = new KeyReader(file, 'protocol', value, faults);
  reader.unknownKeys(Object.keys(defaultProtocol), null);
  const positive = (key: NumberKey): number =>
    reader.decimal(key, { over: 0 }, say('a number above 0'), false) ?? defaultProtocol[key];
  const birds = (key: 'questionedBirds' | 'seriousBirds'): number =>
    reader.whole(key, say('whole birds, 0 or more'), false) ?? defaultProtocol[key];
  const choice = <Word extends string>(key: string, words: readonly Word[], usual: Word): Word =>
    reader.word(key, words, say('known setting'), false) ?? usual;
  const protocol: Protocol = {
    rule: choice('rule', RULES, defaultProtocol.rule),
    designated: checkDesignated(reader, known),
    questionedAt: positive('questionedAt'),
    seriousAt: positive('seriousAt'),
    questionedBirds: birds('questionedBirds'),
    seriousBirds: birds('seriousBirds'),
    zeros: choice('zeros', ['missed', 'absent'], defaultProtocol.zeros),
    resolution: choice('resolution', ['finer', 'coarser'], defaultProtocol.resolution),
    windows: checkWindowsRule(reader, known),
    lookAlikes: checkLookAlikes(reader),
    linkThreshold:
      reader.decimal('linkThreshold', { from: 0, to: 1 }, say('a probability, 0 to 1'), false) ??
      defaultProtocol.linkThreshold,
    deductLinks: choice('deductLinks', ['confirmed', 'proposed'], defaultProtocol.deductLinks),
    countingError: checkCountingError(reader),
    movingPerHour: positive('movingPerHour'),
    swimmingMaxKmh: positive('swimmingMaxKmh'),
    flyingMinKmh: positive('flyingMinKmh'),
    flyingMaxKmh: positive('flyingMaxKmh'),
    minimumYears:
      reader.whole('minimumYears', say('a whole number, 2 or more'), false) ??
      defaultProtocol.minimumYears,
    minimumUnits:
      reader.whole('minimumUnits', say('a whole number, 2 or more'), false) ??
      defaultProtocol.minimumUnits,
    signOffs: checkSignOffs(reader),
  };
  checkTogether(reader, protocol);
  return protocol;
}

type NumberKey =
  | 'questionedAt'
  | 'seriousAt'
  | 'movingPerHour'
  | 'swimmingMaxKmh'
  | 'flyingMinKmh'
  | 'flyingMaxKmh';

/** Settings that must fit one another. */
function checkTogether(reader: KeyReader, protocol: Protocol): void {
  for (const [low, high] of [
    ['questionedAt', 'seriousAt'],
    ['questionedBirds', 'seriousBirds'],
    ['flyingMinKmh', 'flyingMaxKmh'],
  ] as const) {
    if (protocol[low] <= protocol[high]) continue;
    const key = reader.value(high) === undefined ? low : high;
    const problem = say('{low} {lower} is above {high} {higher}', {
      low,
      lower: protocol[low],
      high,
      higher: protocol[high],
    });
    reader.fault(key, 'contradiction', problem, say('{low} not above {high}', { low, high }));
  }
  for (const key of ['minimumYears', 'minimumUnits'] as const) {
    if (protocol[key] >= 2) continue;
    const problem = say('{number} is too few for any statistic', { number: protocol[key] });
    reader.fault(key, 'out-of-range', problem, say('a whole number, 2 or more'));
  }
  if (protocol.rule === 'designated' && reader.value('designated') === undefined) {
    const problem = say('the rule is designated, but no observer is named');
    reader.fault(
      'designated',
      'missing-value',
      problem,
      say('a person id, or one for each section'),
    );
  }
}

function checkDesignated(reader: KeyReader, known: KnownIds): Protocol['designated'] {
  const value = reader.value('designated');
  if (value === undefined || value === null) return defaultProtocol.designated;
  const expected = say('a person id, or an object of section ids and person ids');
  if (typeof value !== 'string' && !isObject(value)) {
    reader.fault('designated', 'wrong-type', say('this names no observer'), expected);
    return defaultProtocol.designated;
  }
  const entries = typeof value === 'string' ? { '*': value } : value;
  const where = (section: string): string =>
    reader.at(typeof value === 'string' ? 'designated' : `designated.${section}`);
  const checked: [string, string][] = [];
  for (const [section, person] of Object.entries(entries)) {
    const readings = [
      section === '*' || known.sections === null
        ? null
        : readKnownId(section, known.sections, say('section')),
      known.people === null ? null : readKnownId(String(person), known.people, say('person')),
    ];
    for (const reading of readings) {
      if (reading?.ok === false) reader.faultAt(where(section), person, reading);
    }
    checked.push([section, String(person)]);
  }
  return Object.fromEntries(checked.sort(([a], [b]) => (a < b ? -1 : 1)));
}

function checkWindowsRule(reader: KeyReader, known: KnownIds): string {
  const text = reader.text('windows', say('highest, mean or a window id'), false);
  if (text === null || text === 'highest' || text === 'mean') {
    return text ?? defaultProtocol.windows;
  }
  if (known.windows !== null && !known.windows.includes(text)) {
    const options = ['highest', 'mean', ...known.windows];
    const problem = say('"{text}" is neither highest, mean nor a window of this count', { text });
    reader.fault('windows', 'unknown-id', problem, oneOf(options), nearestOf(text, options));
  }
  return text;
}

function checkLookAlikes(reader: KeyReader): Protocol['lookAlikes'] {
  const list = reader.list('lookAlikes', say('a list of pairs of species'), false);
  if (list === null) return defaultProtocol.lookAlikes;
  const pairs = new Map<string, readonly [Species, Species]>();
  for (const [index, entry] of list.entries()) {
    const where = reader.at(`lookAlikes[${index}]`);
    const expected = say('two different species, such as ["Aythya marila", "Aythya affinis"]');
    if (!Array.isArray(entry) || entry.length !== 2) {
      const problem = say('this is not a pair');
      reader.faultAt(where, entry, { code: 'wrong-type', problem, expected, nearest: null });
      continue;
    }
    const species = (entry as readonly unknown[]).map((name, side) =>
      checkSpecies(reader, `${where}[${side}]`, name),
    );
    const [first, second] = species.sort();
    if (first === undefined || second === undefined) continue;
    if (first === second && first !== '') {
      const problem = say('both are the same species');
      reader.faultAt(where, entry, { code: 'contradiction', problem, expected, nearest: null });
    }
    pairs.set(`${first}/${second}`, [first, second]);
  }
  return [...pairs.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, pair]) => pair);
}

function checkSpecies(reader: KeyReader, where: string, name: unknown): Species {
  const parsed = parseTaxon(typeof name === 'string' ? name : '');
  if (!parsed.ok) {
    reader.faultAt(where, name, { code: 'unknown-taxon', ...pick(parsed) });
    return '';
  }
  if (parsed.candidates.length > 1) {
    const problem = say('{name} stands for several species', { name: JSON.stringify(name) });
    const expected = say('one species');
    reader.faultAt(where, name, { code: 'not-one-species', problem, expected, nearest: null });
  }
  return parsed.candidates[0] ?? '';
}

function pick(parsed: Pick<Fault, 'problem' | 'expected' | 'nearest'>) {
  return { problem: parsed.problem, expected: parsed.expected, nearest: parsed.nearest };
}

function checkCountingError(reader: KeyReader): CountingErrorTable {
  const table = reader.child('countingError', say('steps for each method'), false);
  if (table === null) return defaultProtocol.countingError;
  table.unknownKeys(METHODS, null);
  const steps = METHODS.map((method) => [
    method,
    checkSteps(table, method) ?? defaultProtocol.countingError[method],
  ]);
  return Object.fromEntries(steps) as CountingErrorTable;
}

function checkSteps(table: KeyReader, method: string): readonly CountingErrorStep[] | null {
  const expected = say('steps with upTo (birds, rising; null for the last) and cv (0 or more)');
  const entries = table.objects(method, expected, false);
  if (entries === null) return null;
  let below = -1;
  const steps = entries.map((entry, index) => {
    entry.unknownKeys(['upTo', 'cv'], null);
    const isLast = index === entries.length - 1;
    const upTo = isLast ? null : entry.whole('upTo', say('whole birds'));
    if (isLast && entry.value('upTo') !== null) {
      const problem = say('the last step does not cover the largest flocks');
      entry.fault('upTo', 'contradiction', problem, say('null in the last step'));
    }
    if (upTo !== null && upTo <= below) {
      const problem = say('{upTo} is not above the step before', { upTo });
      entry.fault('upTo', 'contradiction', problem, say('steps that rise'));
    }
    below = upTo ?? below;
    return { upTo, cv: entry.decimal('cv', { from: 0, to: 5 }, say('a share such as 0.2')) ?? 0 };
  });
  if (steps.length === 0) {
    table.fault(method, 'missing-value', say('the list of steps is empty'), expected);
  }
  return steps;
}

function checkSignOffs(reader: KeyReader): Protocol['signOffs'] {
  const roles = ['leader', 'compiler'] as const;
  const expected = say('a list of {roles}, at least one', { roles: oneOf(roles) });
  const list = reader.list('signOffs', expected, false);
  if (list === null) return defaultProtocol.signOffs;
  for (const [index, role] of list.entries()) {
    if (roles.some((known) => known === role)) continue;
    const problem = say('{role} cannot sign off', { role: JSON.stringify(role) });
    const nearest = typeof role === 'string' ? nearestOf(role, roles) : null;
    const where = reader.at(`signOffs[${index}]`);
    reader.faultAt(where, role, { code: 'unknown-word', problem, expected, nearest });
  }
  if (list.length === 0)
    reader.fault('signOffs', 'missing-value', say('nobody signs off'), expected);
  return roles.filter((role) => list.includes(role));
}

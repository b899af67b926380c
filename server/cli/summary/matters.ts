import { kindWords } from '../../core/disagreements/kind-words.js';
import type { Words } from './words.js';
import type { Disagreement, Link, Result, Severity, Sighting } from '../../core/model/result.js';
import { wrap } from './layout.js';

/** Disagreements told in full; the rest is counted. */
const IN_FULL = 10;

const MARK: Readonly<Record<Severity, string>> = {
  serious: '!!',
  questioned: '! ',
  note: '  ',
};

/** Links have a section of their own. */
function isTold({ kind }: Disagreement<string>): boolean {
  return kind !== 'possible-double-count';
}

/** The open disagreements with the most birds at stake in full, the rest counted by kind. */
export function disagreementLines(result: Result<string>, words: Words): readonly string[] {
  const told = result.disagreements.filter(isTold);
  const open = told.filter(({ ruledBy }) => ruledBy === null);
  const settled = told.length - open.length;
  const byBirds = [...open].sort((one, other) => other.birds - one.birds);
  const full = byBirds.slice(0, IN_FULL);
  const rest = byBirds.slice(IN_FULL);
  const width = Math.max(0, ...full.map(({ birds }) => words.number(birds).length));
  return [
    ...(open.length === 0 ? ['Nothing is open.'] : []),
    ...full.flatMap(({ severity, birds, text }) =>
      wrap(text, `${MARK[severity]} ${words.number(birds).padStart(width)}  `),
    ),
    ...(rest.length > 0 ? wrap(`and ${rest.length} more: ${countedByKind(rest)}.`) : []),
    ...(settled > 0 ? wrap(`Settled by rulings: ${settled}.`) : []),
    ...(open.length > 0 ? ['', 'The number is birds at stake; ! is questioned, !! serious.'] : []),
  ];
}

/** "12 serious, 3 questioned, 1 note" of those that no ruling settles. */
export function countedBySeverity(result: Result<string>): string {
  const open = result.disagreements.filter((one) => isTold(one) && one.ruledBy === null);
  return (['serious', 'questioned', 'note'] as const)
    .map((severity) => [severity, open.filter((one) => one.severity === severity).length] as const)
    .filter(([, times]) => times > 0)
    .map(
      ([severity, times]) => `${times} ${severity}${severity === 'note' && times > 1 ? 's' : ''}`,
    )
    .join(', ');
}

function countedByKind(disagreements: readonly Disagreement<string>[]): string {
  const times = new Map<string, number>();
  for (const { kind } of disagreements) times.set(kind, (times.get(kind) ?? 0) + 1);
  return [...times]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([kind, count]) => `${count} ${kindWords(kind)}`)
    .join(', ');
}

/** Sightings that may be one flock, most probable first. */
export function linkLines(result: Result<string>, words: Words): readonly string[] {
  const links = [...result.links].sort(
    (one, other) => other.probability - one.probability || (one.id < other.id ? -1 : 1),
  );
  return links.flatMap((link) => {
    const way = link.kind === 'overlap' ? 'seen from both' : 'moved';
    const text = `${sighting(link.first, words)} and ${sighting(link.second, words)}: one flock, ${way}? ${standing(link, words)}`;
    return wrap(text, `  ${probability(link.probability).padStart(5)}  `);
  });
}

/** Two digits, and never a certainty that nobody has. */
function probability(value: number): string {
  if (value > 0.99) return '>0.99';
  return value < 0.01 ? '<0.01' : value.toFixed(2);
}

function sighting({ section, candidates, number, start }: Sighting, words: Words): string {
  const time = start === null ? '' : ` at ${start.slice(11, 16)}`;
  return `${words.number(number)} ${words.taxon(candidates)} in ${words.place([section])}${time}`;
}

function standing(link: Link<string>, words: Words): string {
  const taken = link.deduction.reduce((sum, { number }) => sum + number, 0);
  const birds = `${words.number(taken)} birds`;
  if (link.ruling === 'rejected') return 'Ruled to be two flocks.';
  if (link.ruling === 'confirmed') return `Ruled to be one: ${birds} taken off.`;
  if (link.deducted) return `By the protocol ${birds} are taken off.`;
  return link.proposed
    ? `Nothing is taken off before a ruling; it would be ${birds}.`
    : `Below the threshold: not proposed (${birds}).`;
}

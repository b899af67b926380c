import { listed, type Words } from '../disagreements/words.js';
import type { Claim, ConflictWitness } from './feasibility-witness.js';

/** So many identifications are named; of more the largest and how many others. */
const NAMED = 3;

/**
 * A sentence that says why the tallies do not fit one truth.
 *
 * With A's 85 Greater Scaup against B's 60 Lesser Scaup and 25 of the pair: "A's 85 Greater Scaup
 * cannot all be right if B's 60 Lesser Scaup are: A has at least 85 Greater Scaup, but B leaves
 * room for at most 25."
 */
export function witnessSentence(witness: ConflictWitness, words: Words): string {
  const [need] = witness.atLeast;
  const [room] = witness.atMost;
  return witness.looks.length === 2 && need !== undefined && room !== undefined
    ? sentenceOfPair(witness, need, room, words)
    : sentenceOfSeveral(witness, words);
}

function sentenceOfPair(witness: ConflictWitness, need: Claim, room: Claim, words: Words): string {
  const one = words.observer(need.look);
  const other = words.observer(room.look);
  const names = namesOf(need, words);
  const stated = need.lines.reduce((sum, line) => sum + line.number, 0);
  const { instead } = witness;
  const against =
    instead === null
      ? ''
      : `${one}'s ${words.number(Math.max(stated, need.birds))} ${names} cannot all be right if ` +
        `${other}'s ${words.number(instead.number)} ${words.taxon(instead.candidates)} are: `;
  const left =
    room.birds === 0 ? 'has none' : `leaves room for at most ${words.number(room.birds)}`;
  const evenSo = isStretched(witness) ? 'even within counting error ' : '';
  const numbers = `${one} has at least ${words.number(need.birds)} ${names}, but ${other} ${left}`;
  return against === '' ? `${capital(evenSo)}${numbers}.` : `${against}${evenSo}${numbers}.`;
}

function sentenceOfSeveral(witness: ConflictWitness, words: Words): string {
  const { looks, atLeast, atMost } = witness;
  const fewer = looks.length - 1;
  const opening =
    `Any ${inWords(fewer)} of ${words.observers(looks)} fit one truth, ` +
    `but not all ${inWords(looks.length)} together`;
  if (atLeast.length === 0) return `${opening}.`;
  const needs = atLeast.map(
    (claim) =>
      `${words.observer(claim.look)} has at least ${words.number(claim.birds)} ${namesOf(claim, words)}`,
  );
  const rooms = atMost.map((claim) => {
    const number = claim.birds === 0 ? 'no' : `at most ${words.number(claim.birds)}`;
    return `${words.observer(claim.look)} has ${number} ${words.taxon(claim.species)}`;
  });
  const evenSo = isStretched(witness) ? ', even within counting error' : '';
  return `${opening}${evenSo}: ${listed(needs)}, but ${listed(rooms)}.`;
}

/** Some line was given more or fewer birds than it has, to make it fit. */
function isStretched({ atLeast, atMost }: ConflictWitness): boolean {
  return [...atLeast, ...atMost].some(
    (claim) => claim.birds !== claim.lines.reduce((sum, line) => sum + line.number, 0),
  );
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** What the lines call the birds, the most birds first. */
function namesOf({ lines }: Claim, words: Words): string {
  const byNumber = [...lines].sort((one, other) => other.number - one.number);
  const names = byNumber.map((line) => words.taxon(line.candidates));
  if (names.length <= NAMED) return listed(names);
  return listed([...names.slice(0, NAMED), `${words.number(names.length - NAMED)} more`]);
}

function inWords(number: number): string {
  return ['none', 'one', 'two', 'three', 'four', 'five', 'six'][number] ?? String(number);
}

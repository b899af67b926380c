import type { Words } from '../disagreements/words.js';
import { listed, say, type Said, type Saying } from '../model/saying.js';
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
export function witnessSentence(witness: ConflictWitness, words: Words): Saying {
  const [need] = witness.atLeast;
  const [room] = witness.atMost;
  return witness.looks.length === 2 && need !== undefined && room !== undefined
    ? sentenceOfPair(witness, need, room, words)
    : sentenceOfSeveral(witness, words);
}

function sentenceOfPair(witness: ConflictWitness, need: Claim, room: Claim, words: Words): Saying {
  const one = words.observer(need.look);
  const other = words.observer(room.look);
  const names = namesOf(need, words);
  const stated = need.lines.reduce((sum, line) => sum + line.number, 0);
  const { instead } = witness;
  const least = words.number(need.birds);
  const numbers =
    room.birds === 0
      ? say('{one} has at least {least} {names}, but {other} has none', {
          one,
          least,
          names,
          other,
        })
      : say('{one} has at least {least} {names}, but {other} leaves room for at most {most}', {
          ...{ one, least, names, other },
          most: words.number(room.birds),
        });
  if (instead === null) {
    return isStretched(witness)
      ? say('Even within counting error {numbers}.', { numbers })
      : say('{numbers}.', { numbers });
  }
  const against = say("{one}'s {stated} {names} cannot all be right if {other}'s {instead} are", {
    ...{ one, names, other },
    stated: words.number(Math.max(stated, need.birds)),
    instead: words.birdsOf(instead),
  });
  return isStretched(witness)
    ? say('{against}: even within counting error {numbers}.', { against, numbers })
    : say('{against}: {numbers}.', { against, numbers });
}

function sentenceOfSeveral(witness: ConflictWitness, words: Words): Saying {
  const { looks, atLeast, atMost } = witness;
  const opening = say('Any {fewer} of {observers} fit one truth, but not all {all} together', {
    fewer: inWords(looks.length - 1),
    observers: words.observers(looks),
    all: inWords(looks.length),
  });
  if (atLeast.length === 0) return say('{opening}.', { opening });
  const needs = listed(
    atLeast.map((claim) =>
      say('{observer} has at least {number} {names}', {
        observer: words.observer(claim.look),
        number: words.number(claim.birds),
        names: namesOf(claim, words),
      }),
    ),
  );
  const rooms = listed(
    atMost.map((claim) => {
      const values = { observer: words.observer(claim.look), taxon: words.taxon(claim.species) };
      return claim.birds === 0
        ? say('{observer} has no {taxon}', values)
        : say('{observer} has at most {number} {taxon}', {
            ...values,
            number: words.number(claim.birds),
          });
    }),
  );
  return isStretched(witness)
    ? say('{opening}, even within counting error: {needs}, but {rooms}.', { opening, needs, rooms })
    : say('{opening}: {needs}, but {rooms}.', { opening, needs, rooms });
}

/** Some line was given more or fewer birds than it has, to make it fit. */
function isStretched({ atLeast, atMost }: ConflictWitness): boolean {
  return [...atLeast, ...atMost].some(
    (claim) => claim.birds !== claim.lines.reduce((sum, line) => sum + line.number, 0),
  );
}

/** What the lines call the birds, the most birds first. */
function namesOf({ lines }: Claim, words: Words): Said {
  const byNumber = [...lines].sort((one, other) => other.number - one.number);
  const names = byNumber.map((line) => words.taxon(line.candidates));
  if (names.length <= NAMED) return listed(names);
  const more = say('{number} more', { number: words.number(names.length - NAMED) });
  return listed([...names.slice(0, NAMED), more]);
}

function inWords(number: number): Said {
  switch (number) {
    case 1:
      return say('one');
    case 2:
      return say('two');
    case 3:
      return say('three');
    case 4:
      return say('four');
    case 5:
      return say('five');
    case 6:
      return say('six');
    default:
      return String(number);
  }
}

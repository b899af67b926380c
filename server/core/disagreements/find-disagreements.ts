import type { Protocol } from '../model/protocol.js';
import type { Disagreement, Link } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import type { Snapshot } from '../model/snapshot.js';
import type { GroupInQuestion } from './about-group.js';
import { implausibleNumbers, type CompiledCells } from './implausible.js';
import {
  possibleDoubleCounts,
  timeMismatches,
  uncountedSections,
  withoutSecondCount,
} from './of-cells.js';
import { disagreementsOfGroup } from './of-group.js';
import { markedLines, overResolvedOf, type MarkedLines } from './over-resolved.js';
import { subCountsOf } from './sub-counts.js';
import { wordsFor } from './words.js';

/**
 * Everything a compiler should know about where observers differ, most birds at stake first (ties
 * by id). A disagreement about a group is settled by the ruling on that group, one about a link by
 * the ruling on that link, one about a line by that on the line or its group.
 *
 * @param rulings none on a line or tally that is stale.
 */
export function findDisagreements(
  snapshot: Snapshot,
  compiled: CompiledCells,
  links: readonly Link[],
  rulings: readonly Ruling[],
  protocol: Protocol,
): Disagreement[] {
  const { cells } = compiled;
  const words = wordsFor(snapshot);
  const marked = markedLines(snapshot, rulings);
  const ofGroups = cells.flatMap(({ compared, flocks, groups }) =>
    groups.flatMap(({ group, draft, ruling }) =>
      everythingAbout({ compared, flocks, group, draft, protocol, words }, marked).map((each) => ({
        ...each,
        ruledBy: each.ruledBy ?? ruling?.id ?? null,
      })),
    ),
  );
  const rulingOn = (link: string | null): string | null =>
    rulings.find((ruling) => ruling.target.kind === 'link' && ruling.target.link === link)?.id ??
    null;
  const ofLinks = possibleDoubleCounts(links, snapshot, words, protocol).map((each) => {
    const applied = links.find((link) => link.id === each.link)?.ruling !== null;
    return { ...each, ruledBy: applied ? rulingOn(each.link) : null };
  });
  const ofCells = [
    ...cells
      .map(({ compared }) => withoutSecondCount(compared, words))
      .filter((each) => each !== null),
    ...timeMismatches(
      cells.map(({ compared }) => compared),
      snapshot,
      words,
    ),
    ...snapshot.windows.flatMap((window) => uncountedSections(snapshot, words, window)),
  ];
  const ofCount = implausibleNumbers(snapshot, compiled, protocol, words);
  return [...ofGroups, ...ofLinks, ...ofCells, ...ofCount].sort(
    (one, other) => other.birds - one.birds || (one.id < other.id ? -1 : 1),
  );
}

function everythingAbout(question: GroupInQuestion, marked: MarkedLines): Disagreement[] {
  return [
    ...disagreementsOfGroup(question),
    ...subCountsOf(question),
    ...overResolvedOf(question, marked),
  ];
}

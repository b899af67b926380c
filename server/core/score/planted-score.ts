import type { Protocol } from '../model/protocol.js';
import type { Disagreement, DisagreementKind, Result } from '../model/result.js';
import { PLANTED_KINDS, type Planted, type PlantedKind } from './truth.js';

/** The disagreements that an error of a kind may show up as. */
const SHOWS_AS: Readonly<Record<PlantedKind, readonly DisagreementKind[]>> = {
  misidentified: ['identified-differently'],
  'left-coarser': ['resolution-gap'],
  // The whole taxon, or some flocks of it.
  overlooked: ['seen-by-one', 'count-spread'],
  slip: ['count-spread'],
};

/** Found or not, of errors with at least so many birds. */
export interface PlantedScore {
  readonly kind: PlantedKind;
  readonly fewestBirds: number;
  /** Errors of the kind in the tallies, whoever could know of them. */
  readonly planted: number;
  /** Of these, found: with at least half of the birds concerned at stake. */
  readonly foundOfAll: number;
  /** Those of which another tally contradicts so many birds: the others cannot be found by comparing. */
  readonly findable: number;
  /** Of these, found: with at least half of the contradicted birds at stake. */
  readonly found: number;
  /** Disagreements, with at least so many birds at stake, that such an error would show up as. */
  readonly shown: number;
  /** Those that stand on errors of the kind for at least half of their birds. */
  readonly shownRight: number;
}

/**
 * Errors known to be in the tallies against the disagreements found. An error is found by a
 * disagreement of its kind that stands on one of its lines and on one of those that speak against
 * it, and has at least half of the birds at stake that it is judged by: all that are concerned, or
 * those that others contradict. A disagreement is right if the errors that it stands on come to at
 * least half of its birds, whether they were meant to be found or not.
 *
 * What the engine itself puts down to counting error is nothing that it found, and no false alarm.
 */
export function scorePlanted(
  result: Result,
  planted: readonly Planted[],
  protocol: Protocol,
): PlantedScore[] {
  const claimed = result.disagreements.filter((each) => isClaimed(each, protocol));
  return PLANTED_KINDS.flatMap((kind) =>
    [1, protocol.questionedBirds].map((fewest) => scoreKind(kind, fewest, claimed, planted)),
  );
}

/** False for a count spread, or names in so many birds, that are noted as within counting error. */
function isClaimed({ kind, severity, birds }: Disagreement, protocol: Protocol): boolean {
  if (severity !== 'note') return true;
  if (kind === 'identified-differently') return birds < protocol.questionedBirds;
  return kind !== 'count-spread';
}

function scoreKind(
  kind: PlantedKind,
  fewestBirds: number,
  claimed: readonly Disagreement[],
  planted: readonly Planted[],
): PlantedScore {
  const ofKind = planted.filter((error) => error.kind === kind);
  const large = ofKind.filter(({ birds }) => birds >= fewestBirds);
  const findable = large.filter(({ contradicted }) => contradicted >= fewestBirds);
  const disagreements = claimed.filter((each) => SHOWS_AS[kind].includes(each.kind));
  const shown = disagreements.filter(({ birds }) => birds >= fewestBirds);
  const isFound = (error: Planted, birds: number): boolean =>
    disagreements.some((each) => isAbout(error, each) && 2 * each.birds >= birds);
  return {
    kind,
    fewestBirds,
    planted: large.length,
    foundOfAll: large.filter((error) => isFound(error, error.birds)).length,
    findable: findable.length,
    found: findable.filter((error) => isFound(error, error.contradicted)).length,
    shown: shown.length,
    shownRight: shown.filter((each) => {
      const standsOn = ofKind.filter((error) => isAbout(error, each));
      return 2 * standsOn.reduce((sum, { birds }) => sum + birds, 0) >= each.birds;
    }).length,
  };
}

function isAbout({ lines, against, observer }: Planted, disagreement: Disagreement): boolean {
  const standsOn = new Set(disagreement.lines);
  return (
    disagreement.observers.includes(observer) &&
    (lines.length === 0 || lines.some((line) => standsOn.has(line))) &&
    against.some((line) => standsOn.has(line))
  );
}

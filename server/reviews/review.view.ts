import type * as Api from '../api/generated/schema.js';
import { RULES } from '../core/model/protocol.js';
import type { Cell, Consensus, Disagreement, Group, Link, Sighting } from '../core/model/result.js';
import { saidIn, say, type Saying } from '../core/model/saying.js';
import type { Section } from '../core/model/snapshot.js';
import { targetKey } from '../core/rulings/check-contradictions.js';
import { taxonName } from '../core/taxa/taxon-name.js';
import { isHidden } from '../plans/count-access.js';
import { sectionViews, windowView } from '../plans/plan.view.js';
import { agreementView } from './agreement.view.js';
import { flockViews } from './flock.view.js';
import type { LoadedReview } from './loaded-review.js';
import { openMatters } from './open-matters.js';
import { namesOf, peopleView } from './people.view.js';
import { queryView } from './query.view.js';
import { awaitsSecond, standingRulings } from './rulings-in-force.js';
import { decisionView, rulingView, targetView } from './ruling.view.js';
import { targetOfDisagreement } from './ruling-target.js';
import { sourceLines, type SourceLines } from './source-lines.js';

/** A review whose disagreements are all there: its resolvers pick from them. */
export type ReviewView = Omit<Api.Review, 'disagreements' | 'disagreement'> & {
  readonly disagreements: readonly Api.Disagreement[];
};

/** The engine's answer in the shape of the API: names beside ids, and everything linked up. */
export function reviewView(review: LoadedReview): ReviewView {
  const { access, result, reconciled, rulings } = review;
  const { record } = access;
  const cells = new Map(result.cells.map((cell) => [cell.id, cellView(review, cell)]));
  const links = new Map(result.links.map((link) => [link.id, linkView(review, link)]));
  const lines = sourceLines(review);
  const withheld = withheldPieces(review);
  // To the engine a section that is withheld looks as if nobody had counted it.
  const withheldGaps = new Set(
    withheld.map(({ section, window }) => `coverage-gap:${section.id}:${window}`),
  );
  return {
    countId: record.id,
    inputHash: reconciled.inputHash,
    cells: [...cells.values()],
    disagreements: result.disagreements
      .filter(({ id }) => !withheldGaps.has(id))
      .map((disagreement) => disagreementView(review, disagreement, { cells, links, lines })),
    links: [...links.values()],
    flocks: flockViews(review),
    agreement: agreementView(review),
    rulings: rulings.map((ruling) => rulingView(review, ruling)),
    withheld: withheld.map(({ section, window }) =>
      said(
        review,
        say(
          '{section} in window {window}: you see it once your own tally there is in, or the window is closed.',
          { section: section.name, window },
        ),
      ),
    ),
    openMatters: openMatters(review).map((matter) => said(review, matter)),
  };
}

/** In the language of whoever looks at the review. */
function said({ access }: LoadedReview, saying: Saying): string {
  return saidIn(saying, access.viewer.wording);
}

/** Sections and windows that the viewer is still blind to. */
function withheldPieces({ access }: LoadedReview): readonly WithheldPiece[] {
  const { windows, sections } = access.record;
  return windows.flatMap(({ id: window }) =>
    sections
      .filter((section) => isHidden(access, { sections: [section.id], window }))
      .map((section) => ({ section, window })),
  );
}

interface WithheldPiece {
  readonly section: Section;
  readonly window: string;
}

function cellView(review: LoadedReview, cell: Cell): Api.Cell {
  const { record } = review.access;
  return {
    id: cell.id,
    sections: sectionViews(record, cell.place),
    window: windowView(record, cell.window),
    layer: cell.layer,
    tallies: cell.tallies.map((tally) => ({
      ...tally,
      observerName: namesOf(review, tally.observer),
      seenAreas: seenAreasOf(review, tally.tally.split('+')),
      conditions: conditionsOf(review, tally.tally.split('+')),
      lines: tally.lines.map((line) => ({
        ...line,
        candidates: [...line.candidates],
        lines: [...line.lines],
      })),
    })),
    pairings: cell.pairings.map((pairing) => ({
      ...pairing,
      aName: namesOf(review, pairing.a),
      bName: namesOf(review, pairing.b),
      flows: pairing.flows.map((flow) => ({ ...flow })),
    })),
    bounds: cell.bounds.map((bound) => ({ ...bound })),
    feasible: cell.feasible,
    birdsInConflict: cell.birdsInConflict,
    witness: cell.witness && said(review, cell.witness),
    groups: cell.groups.map((group) => groupView(review, group)),
  };
}

function conditionsOf(review: LoadedReview, tallies: readonly string[]): Api.Conditions[] {
  return review.access.record.tallies.flatMap(({ id, conditions }) =>
    tallies.includes(id) && conditions !== undefined ? [conditions] : [],
  );
}

function seenAreasOf(review: LoadedReview, tallies: readonly string[]): number[][][][] {
  return review.access.record.tallies.flatMap(({ id, seenArea }) =>
    tallies.includes(id) && seenArea !== undefined
      ? [seenArea.map((ring) => ring.map((position) => [...position]))]
      : [],
  );
}

function groupView(review: LoadedReview, group: Group): Api.Group {
  return {
    id: group.id,
    taxa: [...group.taxa],
    totals: group.totals.map((total) => ({
      ...total,
      observerName: namesOf(review, total.observer),
    })),
    consensus: consensusView(group.consensus),
    lines: group.lines.map(({ candidates, number }) => ({
      taxon: taxonName(candidates),
      candidates: [...candidates],
      number,
    })),
  };
}

function consensusView({ byRule, observers: _, ...consensus }: Consensus): Api.Consensus {
  return {
    ...consensus,
    byRule: RULES.flatMap((rule) => {
      const number = byRule[rule];
      return number === undefined ? [] : [{ rule, number }];
    }),
  };
}

interface Linked {
  readonly cells: ReadonlyMap<string, Api.Cell>;
  readonly links: ReadonlyMap<string, Api.Link>;
  readonly lines: SourceLines;
}

function disagreementView(
  review: LoadedReview,
  disagreement: Disagreement,
  { cells, links, lines }: Linked,
): Api.Disagreement {
  const { id, cell, group, link } = disagreement;
  const cellFound = cell === null ? undefined : cells.get(cell);
  const key = group?.join('\n');
  return {
    id,
    kind: disagreement.kind,
    severity: disagreement.severity.toUpperCase() as Api.Severity,
    birds: disagreement.birds,
    cell: cellFound ?? null,
    group: cellFound?.groups.find(({ taxa }) => taxa.join('\n') === key) ?? null,
    link: (link === null ? undefined : links.get(link)) ?? null,
    observers: disagreement.observers.map((ids) => peopleView(review, ids)),
    lines: lines.of(disagreement.lines),
    text: said(review, disagreement.text),
    proposals: disagreement.proposals.map(({ text, target, decision }) => ({
      text: said(review, text),
      target: targetView(target),
      decision: decisionView(decision),
    })),
    ruling: rulingOf(review, disagreement),
    queries: review.queries
      .filter((query) => query.disagreement === id)
      .map((query) => queryView(review.access, query, disagreement)),
  };
}

/** The ruling that settles it, else one that would, and waits for a second person. */
function rulingOf(review: LoadedReview, disagreement: Disagreement): Api.Ruling | null {
  const { kind, ruledBy, proposals } = disagreement;
  const whole = targetOfDisagreement(disagreement);
  const targets = [
    ...(whole === null ? [] : [whole]),
    // What marks say of a line is settled by a ruling on that line as well.
    ...(kind === 'over-resolved' ? proposals.map(({ target }) => target) : []),
  ].map(targetKey);
  const record = standingRulings(review.rulings).find(
    (one) =>
      one.ruling.id === ruledBy ||
      (awaitsSecond(one) && targets.includes(targetKey(one.ruling.target))),
  );
  return record === undefined ? null : rulingView(review, record);
}

function linkView(review: LoadedReview, link: Link): Api.Link {
  return {
    id: link.id,
    kind: link.kind,
    probability: link.probability,
    birds: link.birds,
    proposed: link.proposed,
    ruling: link.ruling,
    deducted: link.deducted,
    deduction: link.deduction.map(({ taxon, number }) => ({ taxon, number })),
    first: sightingView(review, link.first),
    second: sightingView(review, link.second),
    evidence: link.evidence.map((evidence) => ({
      ...evidence,
      text: said(review, evidence.text),
    })),
  };
}

function sightingView(review: LoadedReview, sighting: Sighting): Api.Sighting {
  const [section] = sectionViews(review.access.record, [sighting.section]);
  if (section === undefined) throw new Error(`no section ${sighting.section}`);
  return {
    cell: sighting.cell,
    section,
    lines: [...sighting.lines],
    observers: sighting.observers.map((ids) => peopleView(review, ids)),
    taxon: sighting.taxon,
    number: sighting.number,
    start: sighting.start,
    end: sighting.end,
    position: sighting.position && [...sighting.position],
  };
}

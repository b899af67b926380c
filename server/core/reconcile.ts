import { agreementOf } from './agree/agreement-of.js';
import { alignCells, type AlignedCell } from './align/cells.js';
import { compareCell } from './compare/compare-cell.js';
import { conflictWitness } from './compare/feasibility-witness.js';
import { birdsInConflict } from './compare/joint-feasibility.js';
import { withSampleErrors } from './compare/sample-error.js';
import { settleGroup, tau2OfCompared } from './consensus/settle-group.js';
import { describeCell } from './describe-cell.js';
import { findDisagreements } from './disagreements/find-disagreements.js';
import { flocksOfCell } from './disagreements/cell-flocks.js';
import { wordsFor } from './disagreements/words.js';
import { allocationOf } from './estimate/allocation-of.js';
import { Book } from './ledger/book.js';
import { compile } from './ledger/compile.js';
import { compiledCells } from './ledger/compiled-cells.js';
import { deductionsOf, withDeduction } from './ledger/deductions.js';
import { findLinks } from './link/find-links.js';
import type { RaftsByCell } from './link/sightings.js';
import { RunMemory, type Memory } from './memory.js';
import type { Agreement } from './model/agreement.js';
import type { Protocol } from './model/protocol.js';
import type { Result } from './model/result.js';
import type { Ruling } from './model/ruling.js';
import type { Position, Snapshot, Tally } from './model/snapshot.js';
import { applyToTallies } from './rulings/apply-to-tallies.js';
import { checkContradictions } from './rulings/check-contradictions.js';
import type { ReconciledCell } from './rulings/reconciled-cell.js';
import { changesGroups, regroup, withoutCell } from './rulings/regroup.js';
import { ruleOnGroups, type DraftedCell } from './rulings/rule-on-groups.js';
import { ruleOnLinks } from './rulings/rule-on-links.js';
import { lookAlikesFrom } from './taxa/candidate-set.js';

/**
 * The product: independent tallies and the rulings given so far become one compiled count that
 * traces back bird by bird. Pure and deterministic to the byte: the same snapshot, rulings and
 * protocol give the same result, in whatever order tallies, lines and rulings are listed.
 *
 * @param counted the count as checked by `model/check-count.ts`.
 * @param given rulings in force: none withdrawn, none replaced.
 * @param protocol every key set; defaults in `model/default-protocol.ts`.
 * @param memory of an earlier run of the same count: cells whose tallies and rulings are the same are
 *   not computed again. The result is the same with or without it.
 * @throws Refusal CONTRADICTION where two rulings are about one thing, BAD_INPUT where a decision
 *   does not fit its target. A ruling whose tallies have changed is not applied but listed as stale.
 */
export function reconcile(
  counted: Snapshot,
  given: readonly Ruling[],
  protocol: Protocol,
  memory: Memory = new RunMemory(),
): Result {
  const rulings = [...given].sort((one, other) => (one.id < other.id ? -1 : 1));
  checkContradictions(rulings);
  const snapshot = withSampleErrors(counted, protocol);
  const lookAlikes = lookAlikesFrom(protocol.lookAlikes);
  const asRuled = applyToTallies(snapshot, rulings, lookAlikes);
  const unapplied = asRuled.outcomes.filter(({ state }) => state !== 'applied');
  const drafted = draft(asRuled.snapshot, rulings, protocol, memory);
  const { cells, outcomes: onGroups } = ruleOnGroups(drafted, rulings, protocol);
  const { links: ruled, outcomes: onLinks } = ruleOnLinks(
    memory.recall(keyOfAll('links', asRuled.snapshot, protocol), () =>
      findLinks(asRuled.snapshot, cellOf(cells), protocol, raftsOf(cells)),
    ),
    rulings,
    cells,
    asRuled.snapshot,
    protocol,
  );
  const compiled = compiledCells(cells);
  const deductions = deductionsOf(ruled, compiled);
  const links = ruled.map((link) => withDeduction(link, deductions.get(link.id) ?? []));
  const taken = links.flatMap(({ id, deducted }) => (deducted ? (deductions.get(id) ?? []) : []));
  const book = new Book();
  const { reported, lines } = compile(asRuled.snapshot, compiled, taken, protocol, book);
  return {
    count: snapshot.id,
    reported,
    protocol,
    cells: cells.map((cell) => describeCell(cell, wordsFor(snapshot))),
    disagreements: findDisagreements(
      asRuled.snapshot,
      { reported, lines, cells },
      links,
      rulings.filter(({ id }) => !unapplied.some((outcome) => outcome.id === id)),
      protocol,
    ),
    links,
    agreement: memory.recall(keyOfAll('agreement', snapshot, protocol), () =>
      agreementAsWritten(snapshot, protocol, memory),
    ),
    compiled: lines,
    allocation: allocationOf(cells, reported, lines, protocol),
    ledger: book.postings(),
    rulings: [
      ...asRuled.outcomes,
      ...drafted.flatMap(({ outcomes }) => outcomes),
      ...withoutCell(
        rulings,
        drafted.map(({ compared }) => compared.cell.id),
      ),
      ...onGroups,
      ...onLinks,
    ].sort((one, other) => (one.id < other.id ? -1 : 1)),
    faults: [],
  };
}

/** Aligns, compares and drafts, cell by cell: everything before a ruling on a group's numbers. */
function draft(
  snapshot: Snapshot,
  rulings: readonly Ruling[],
  protocol: Protocol,
  memory: Memory,
): DraftedCell[] {
  const lookAlikes = lookAlikesFrom(protocol.lookAlikes);
  return alignCells(snapshot).map((cell) => {
    const regrouping = rulings.filter((ruling) => changesGroups(ruling, cell.id));
    return memory.recall(JSON.stringify([keyOfCell(cell, snapshot), regrouping, protocol]), () => {
      const { compared, outcomes } = regroup(compareCell(cell, lookAlikes), regrouping, lookAlikes);
      const tau2OfCell = tau2OfCompared(compared, protocol);
      const wrong = birdsInConflict(cell.looks, protocol);
      return {
        compared,
        flocks: flocksOfCell(compared, snapshot, lookAlikes, protocol),
        outcomes,
        birdsInConflict: wrong,
        witness: wrong === 0 ? null : conflictWitness(cell.looks, protocol),
        groups: compared.groups.map((group) => ({
          group,
          draft: settleGroup(compared, group, protocol, tau2OfCell),
        })),
      };
    });
  });
}

/** Agreement is about what observers wrote: a compiler's reading of their lines does not improve it. */
function agreementAsWritten(snapshot: Snapshot, protocol: Protocol, memory: Memory): Agreement {
  const { cells } = ruleOnGroups(draft(snapshot, [], protocol, memory), [], protocol);
  const words = wordsFor(snapshot);
  return agreementOf(
    cells.map((cell) => describeCell(cell, words)),
    protocol,
    { matched: raftsOf(cells), standing: standingOf(snapshot) },
  );
}

/** Where the observer of each tally stood, if said. */
function standingOf({ tallies, vantages }: Snapshot): ReadonlyMap<string, Position> {
  const positions = new Map(vantages.map(({ id, position }) => [id, position]));
  return new Map(
    tallies.flatMap(({ id, vantage }) => {
      const position = positions.get(vantage ?? '');
      return position === undefined ? [] : [[id, position] as const];
    }),
  );
}

/** All that a cell is computed from: flocks are matched by where they lay and when. */
function keyOfCell(cell: AlignedCell, { windows, sections }: Snapshot): unknown {
  const window = windows.find(({ id }) => id === cell.window);
  return ['cell', cell, window, sections.filter(({ id }) => cell.place.includes(id))];
}

/** Flocks matched between observers, by cell: links need not match them again. */
function raftsOf(cells: readonly ReconciledCell[]): RaftsByCell {
  return new Map(
    cells
      .filter(({ compared }) => compared.cell.layer === 'using')
      .map(({ compared, flocks }) => [compared.cell.id, flocks.rafts]),
  );
}

function keyOfAll(what: string, snapshot: Snapshot, protocol: Protocol): string {
  return JSON.stringify([what, snapshot, protocol]);
}

/** Which cell a tally's birds were compared in; birds that flew through lie in a layer of their own. */
function cellOf(cells: readonly ReconciledCell[]): (tally: Tally) => string {
  const byTally = new Map(
    cells
      .filter(({ compared }) => compared.cell.layer === 'using')
      .flatMap(({ compared }) =>
        compared.cell.looks.flatMap((look) =>
          look.tallies.map((tally) => [tally.id, compared.cell.id] as const),
        ),
      ),
  );
  return (tally) => byTally.get(tally.id) ?? '';
}

import type { Look } from './align/looks.js';
import { boundsOf } from './compare/bounds.js';
import { birdsIn, linesInGroup, seeksGroup, type ComparedPair } from './compare/compare-cell.js';
import { witnessSentence } from './compare/feasibility-words.js';
import { totalIn } from './consensus/units.js';
import type { Words } from './disagreements/words.js';
import type { Cell, CellTally, Pairing } from './model/result.js';
import { basisOfGroup } from './rulings/basis.js';
import type { ReconciledCell } from './rulings/reconciled-cell.js';
import { taxonName } from './taxa/taxon-name.js';

/** A reconciled cell as the result shows it. */
export function describeCell(reconciled: ReconciledCell, words: Words): Cell {
  const { compared, birdsInConflict, witness, groups } = reconciled;
  const { cell, pairs } = compared;
  return {
    id: cell.id,
    place: cell.place,
    window: cell.window,
    layer: cell.layer,
    tallies: cell.looks.map((look) => describeLook(look, cell.looks)),
    pairings: pairs.map(describePair),
    bounds: boundsOf(cell.looks),
    feasible: birdsInConflict === 0,
    birdsInConflict,
    witness: witness === null ? null : witnessSentence(witness, words),
    groups: groups.map(({ group, consensus, lines }) => ({
      id: group.id,
      identifications: group.identifications,
      taxa: group.taxa,
      totals: cell.looks
        .filter((look) => seeksGroup(look, group))
        .map((look) => ({
          observer: look.observer,
          number: totalIn(look, group),
          stated: linesInGroup(look, group).length > 0,
        })),
      consensus,
      basis: basisOfGroup(cell.looks, group),
      lines,
    })),
  };
}

function describeLook(look: Look, all: readonly Look[]): CellTally {
  const enters = (each: Look): boolean =>
    each.full && each.tallies.some((tally) => look.tallies.includes(tally));
  return {
    tally: look.tallies.map((tally) => tally.id).join('+'),
    observer: look.observer,
    total: birdsIn(look.lines),
    coverage: look.coverage,
    counted: all.some(enters),
    lines: look.lines.map((line) => ({
      taxon: taxonName(line.candidates),
      candidates: line.candidates,
      number: line.number,
      lines: line.sources.map((source) => source.id),
    })),
  };
}

function describePair(pair: ComparedPair): Pairing {
  const { agreed, compatible, differently, onlyA, onlyB, flows } = pair.balance;
  return {
    a: pair.a.observer,
    b: pair.b.observer,
    agreed,
    compatible,
    differently,
    onlyA,
    onlyB,
    outsideScopeA: pair.outsideScopeA,
    outsideScopeB: pair.outsideScopeB,
    independent: pair.independent,
    complete: pair.complete,
    flows: flows.map((flow) => ({
      kind: flow.kind,
      a: flow.a === null ? null : taxonName(flow.a),
      b: flow.b === null ? null : taxonName(flow.b),
      number: flow.number,
    })),
  };
}

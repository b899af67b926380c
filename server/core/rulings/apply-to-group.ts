import { isWithin, keyOf, type CandidateSet } from '../taxa/candidate-set.js';
import type { CellGroup, ComparedCell } from '../compare/compare-cell.js';
import { compositionOfLook } from '../consensus/composition.js';
import { intervalOf } from '../consensus/interval.js';
import {
  settleGroup,
  wholeLines,
  type SettledGroup,
  type SettledLine,
} from '../consensus/settle-group.js';
import { totalIn, unitsOf } from '../consensus/units.js';
import type { Protocol } from '../model/protocol.js';
import type { Consensus } from '../model/result.js';
import type { Ruling } from '../model/ruling.js';
import { Refusal } from '../refusal.js';
import { targetSaying } from './check-contradictions.js';
import { joined, say } from '../model/saying.js';

/** A group's lines and consensus after a ruling. */
export interface RuledGroup {
  readonly consensus: Consensus;
  readonly lines: readonly SettledLine[];
}

/**
 * What a ruling makes of a drafted group.
 *
 * @throws Refusal BAD_INPUT where the decision does not fit a group or names an observer who has no
 *   tally of it.
 */
export function applyToGroup(
  draft: SettledGroup,
  compared: ComparedCell,
  group: CellGroup,
  ruling: Ruling,
  protocol: Protocol,
): RuledGroup {
  const { decision } = ruling;
  switch (decision.kind) {
    case 'let-stand':
      return { consensus: { ...draft.consensus, basis: 'ruling' }, lines: draft.lines };
    case 'accept-observer': {
      const look = compared.cell.looks.find((each) => each.observer === decision.observer);
      if (look === undefined) {
        throw new Refusal(
          'BAD_INPUT',
          say(
            'Ruling {id} accepts observer "{observer}", who has no tally of {cell}. Those who have: {observers}.',
            {
              id: ruling.id,
              observer: decision.observer,
              cell: compared.cell.id,
              observers: joined(
                compared.cell.looks.map((each) => each.observer),
                ', ',
              ),
            },
          ),
        );
      }
      const number = totalIn(look, group);
      return {
        consensus: ruled(
          draft,
          number,
          intervalOf(number, unitsOf([look], group, protocol), draft.tau2OfCell),
          [look.observer],
        ),
        lines: wholeLines(number, compositionOfLook(look, group)),
      };
    }
    case 'take-rule': {
      const other = settleGroup(compared, group, protocol, draft.tau2OfCell, decision.rule);
      return { consensus: { ...other.consensus, basis: 'ruling' }, lines: other.lines };
    }
    case 'set-numbers': {
      const lines = merged(decision.lines);
      const number = lines.reduce((sum, line) => sum + line.number, 0);
      return { consensus: ruled(draft, number, scaledInterval(draft, number)), lines };
    }
    case 'identify-as': {
      const to = [...decision.to].sort();
      const lines = merged(
        draft.lines.map((line) =>
          isWithin(line.candidates, decision.from) ? { ...line, candidates: to } : line,
        ),
      );
      return { consensus: { ...draft.consensus, basis: 'ruling' }, lines };
    }
    default:
      throw new Refusal(
        'BAD_INPUT',
        say(
          'Ruling {id} decides "{kind}", which does not fit {target}. A group takes let-stand, accept-observer, take-rule, set-numbers or identify-as.',
          { id: ruling.id, kind: decision.kind, target: targetSaying(ruling.target) },
        ),
      );
  }
}

function ruled(
  draft: SettledGroup,
  number: number,
  interval: { low: number; high: number },
  observers: readonly string[] = draft.consensus.observers,
): Consensus {
  return { ...draft.consensus, basis: 'ruling', number, ...interval, observers };
}

/** A number set by hand keeps the draft's relative error: a ruling does not recount the birds. */
function scaledInterval(draft: SettledGroup, number: number): { low: number; high: number } {
  const { consensus } = draft;
  if (consensus.number === 0) return { low: number, high: number };
  return {
    low: Math.floor((number * consensus.low) / consensus.number),
    high: Math.ceil((number * consensus.high) / consensus.number),
  };
}

function merged(lines: readonly SettledLine[]): SettledLine[] {
  const bySet = new Map<string, { candidates: CandidateSet; number: number }>();
  for (const line of lines) {
    const candidates = [...line.candidates].sort();
    const key = keyOf(candidates);
    bySet.set(key, { candidates, number: (bySet.get(key)?.number ?? 0) + line.number });
  }
  return [...bySet.entries()]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([, line]) => line)
    .filter((line) => line.number > 0);
}

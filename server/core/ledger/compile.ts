import { isWithin, keyOf, type CandidateSet } from '../taxa/candidate-set.js';
import type { Deduction } from '../ledger/deductions.js';
import { afterDeductions, postGroup } from '../ledger/post-group.js';
import { account, type Book } from '../ledger/book.js';
import { largestRemainder } from '../math/largest-remainder.js';
import type { Protocol } from '../model/protocol.js';
import type { CompiledLine } from '../model/result.js';
import type { Snapshot } from '../model/snapshot.js';
import { bySystematicOrder } from '../taxa/systematic-order.js';
import { taxonName } from '../taxa/taxon-name.js';
import type { ReconciledCell } from '../rulings/reconciled-cell.js';

interface Compiled {
  /** A window id, or the count id where windows are averaged. */
  readonly reported: string;
  readonly lines: readonly CompiledLine[];
}

/** What has been added up for one taxon of one window. */
interface Sum {
  readonly candidates: CandidateSet;
  number: number;
  /** Squared reach of the interval below and above, added over cells as independent errors. */
  below: number;
  above: number;
  flyingThrough: number;
  presentNotCounted: boolean;
}

/**
 * Adds the cells up to the compiled count, posting every bird (method sections 6 and 7). Each window
 * compiles by itself; the protocol says which is reported.
 *
 * A line's interval is that of the birds left on it: what was found twice leaves with its own error,
 * so the others keep their relative one.
 *
 * @param cells those that are compiled (see `compiledCells`)
 * @param deductions what links take off them
 */
export function compile(
  snapshot: Snapshot,
  cells: readonly ReconciledCell[],
  deductions: readonly Deduction[],
  protocol: Protocol,
  book: Book,
): Compiled {
  const byWindow = snapshot.windows.map((window) => ({
    id: window.id,
    sums: compileWindow(
      window.id,
      cells.filter((cell) => cell.compared.cell.window === window.id),
      deductions,
      book,
    ),
  }));
  if (protocol.windows === 'mean' && byWindow.length > 1) {
    const sums = averageOf(snapshot.id, byWindow, book);
    return { reported: snapshot.id, lines: compiledLines(sums) };
  }
  const total = (sums: ReadonlyMap<string, Sum>): number =>
    [...sums.values()].reduce((running, sum) => running + sum.number, 0);
  const named = byWindow.find((window) => window.id === protocol.windows);
  const highest = byWindow.reduce((best, window) =>
    total(window.sums) > total(best.sums) ? window : best,
  );
  const { id, sums } = named ?? highest;
  return { reported: id, lines: compiledLines(sums) };
}

function compileWindow(
  window: string,
  cells: readonly ReconciledCell[],
  deductions: readonly Deduction[],
  book: Book,
): Map<string, Sum> {
  const sums = new Map<string, Sum>();
  const sumOf = (candidates: CandidateSet): Sum => {
    const key = keyOf(candidates);
    const known = sums.get(key) ?? {
      candidates,
      number: 0,
      below: 0,
      above: 0,
      flyingThrough: 0,
      presentNotCounted: false,
    };
    sums.set(key, known);
    return known;
  };
  for (const cell of cells) {
    const { id, layer, looks } = cell.compared.cell;
    const using = layer === 'using';
    const into = using ? account.compiled(window) : account.flyingThrough(window);
    for (const reconciled of cell.groups) {
      const { group, consensus, lines } = reconciled;
      const taken = deductions.filter((each) => each.cell === id && each.group === group.id);
      postGroup(book, id, reconciled, taken, into);
      for (const { candidates, number } of afterDeductions(lines, taken)) {
        const sum = sumOf(candidates);
        if (!using) {
          sum.flyingThrough += number;
          continue;
        }
        sum.number += number;
        const share = consensus.number === 0 ? 0 : number / consensus.number;
        sum.below += ((consensus.number - consensus.low) * share) ** 2;
        sum.above += ((consensus.high - consensus.number) * share) ** 2;
      }
    }
    // A zero that was written down and birds that were seen but not counted are data as well.
    for (const line of looks.flatMap((look) => look.lines)) {
      if (line.presentNotCounted) sumOf(line.candidates).presentNotCounted = true;
      else if (line.number === 0) sumOf(line.candidates);
    }
  }
  return sums;
}

/** The mean over windows in whole birds, each bird posted from the window it is taken from. */
function averageOf(
  count: string,
  windows: readonly { id: string; sums: ReadonlyMap<string, Sum> }[],
  book: Book,
): Map<string, Sum> {
  const keys = [...new Set(windows.flatMap((window) => [...window.sums.keys()]))].sort();
  const grand = windows.reduce(
    (running, { sums }) => [...sums.values()].reduce((sum, each) => sum + each.number, running),
    0,
  );
  const over = windows.length;
  const perKey = keys.map((key) => windows.map(({ sums }) => sums.get(key)?.number ?? 0));
  const numbers = largestRemainder(
    Math.round(grand / over),
    perKey.map((values) => values.reduce((sum, value) => sum + value, 0)),
  );
  const averaged = new Map<string, Sum>();
  keys.forEach((key, index) => {
    const present = windows.flatMap(({ sums }) => sums.get(key) ?? []);
    const [first] = present;
    if (first === undefined) return;
    const number = numbers[index] ?? 0;
    const mean = (pick: (sum: Sum) => number): number =>
      present.reduce((sum, each) => sum + pick(each), 0) / over;
    averaged.set(key, {
      candidates: first.candidates,
      number,
      below: mean((sum) => sum.below) / over,
      above: mean((sum) => sum.above) / over,
      flyingThrough: Math.round(mean((sum) => sum.flyingThrough)),
      presentNotCounted: present.some((sum) => sum.presentNotCounted),
    });
    if (number === 0) return;
    const parts = largestRemainder(number, perKey[index] ?? []);
    windows.forEach(({ id }, window) => {
      book.post(
        account.compiled(id),
        account.compiled(count),
        taxonName(first.candidates),
        parts[window] ?? 0,
        { kind: 'window', ref: id },
      );
    });
  });
  return averaged;
}

function compiledLines(sums: ReadonlyMap<string, Sum>): CompiledLine[] {
  const all = [...sums.values()];
  return all
    .map((sum): CompiledLine => {
      const coarser = all.filter(
        (other) =>
          other.candidates.length > sum.candidates.length &&
          isWithin(sum.candidates, other.candidates),
      );
      return {
        taxon: taxonName(sum.candidates),
        candidates: sum.candidates,
        number: sum.number,
        low: Math.max(0, Math.floor(sum.number - Math.sqrt(sum.below) + 1e-9)),
        high: Math.max(sum.number, Math.ceil(sum.number + Math.sqrt(sum.above) - 1e-9)),
        atLeast: sum.number,
        atMost: coarser.reduce((most, other) => most + other.number, sum.number),
        flyingThrough: sum.flyingThrough,
        presentNotCounted: sum.presentNotCounted,
      };
    })
    .sort((one, other) => bySystematicOrder(one.candidates, other.candidates));
}

import type { OwnTallyFragment } from '../graphql/generated/graphql.js';
import { birds } from '../ui/words.js';
import { readTaxon } from '../ui/taxon.js';
import { runningTotal, wholeNumber, type Draft } from './draft.js';
import { quantityWords } from './line-words.js';
import { submittedQuantity } from './submitted-tally.js';

/** One version of a tally, by taxon, to be held against another. */
export interface TallySheet {
  readonly title: string;
  /** What was counted of each taxon, in words: `12`, or `12 + 40–60` where lines do not add up. */
  readonly rows: ReadonlyMap<string, string>;
  /** Birds on the water or land and flying through. */
  readonly total: number;
}

interface SheetLine {
  readonly taxon: string;
  /** A number that can be added up; `null` for a range or mere presence. */
  readonly exact: number | null;
  readonly words: string;
}

export function sheetOfDraft(title: string, draft: Draft): TallySheet {
  const total = runningTotal(draft);
  return sheet(
    title,
    total.using + total.flyingThrough,
    draft.lines.map((line) => ({
      taxon: line.taxon,
      exact: line.quantity === 'number' && line.low === '' ? wholeNumber(line.number) : null,
      words: quantityWords(line),
    })),
  );
}

export function sheetOfTally(title: string, tally: OwnTallyFragment): TallySheet {
  return sheet(
    title,
    tally.total,
    tally.lines.map((line) => ({
      taxon: line.written,
      exact: line.low === null ? line.number : null,
      words: submittedQuantity(line),
    })),
  );
}

function sheet(title: string, total: number, lines: readonly SheetLine[]): TallySheet {
  const byTaxon = new Map<string, SheetLine[]>();
  for (const line of lines) {
    const name = readTaxon(line.taxon).common;
    byTaxon.set(name, [...(byTaxon.get(name) ?? []), line]);
  }
  const rows = new Map<string, string>();
  for (const [name, own] of byTaxon) {
    const exact = own.map((line) => line.exact).filter((number) => number !== null);
    const parts = [
      ...(exact.length === 0 ? [] : [birds(exact.reduce((sum, number) => sum + number, 0))]),
      ...own.filter((line) => line.exact === null).map(({ words }) => words),
    ];
    rows.set(name, parts.join(' + '));
  }
  return { title, rows, total };
}

/** Names of the taxa in any of the sheets: those that differ first, then by name. */
export function taxaOf(
  sheets: readonly TallySheet[],
): readonly { readonly name: string; readonly differs: boolean }[] {
  const names = [...new Set(sheets.flatMap(({ rows }) => [...rows.keys()]))].sort();
  const taxa = names.map((name) => ({
    name,
    differs: new Set(sheets.map(({ rows }) => rows.get(name))).size > 1,
  }));
  return [...taxa.filter(({ differs }) => differs), ...taxa.filter(({ differs }) => !differs)];
}

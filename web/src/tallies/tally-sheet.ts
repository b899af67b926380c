import { t } from '@lingui/core/macro';
import type { OwnTallyFragment } from '../graphql/generated/graphql.js';
import { birds } from '../ui/words.js';
import { readTaxon } from '../ui/taxon.js';
import { runningTotal, wholeNumber, type Draft } from './draft.js';
import { quantityWords } from './line-words.js';
import { clockTimeOf } from './local-time.js';
import { submittedQuantity } from './submitted-tally.js';

/** One version of a tally, by taxon, to be held against another. */
export interface TallySheet {
  readonly title: string;
  /** What was counted of each taxon, in words: `12`, or `12 + 40–60` where lines do not add up. */
  readonly rows: ReadonlyMap<string, string>;
  /** Birds on the water or land and flying through. */
  readonly total: number;
  /** What holds for the whole tally, in words, in an order that all sheets share. */
  readonly whole: ReadonlyMap<string, string>;
}

interface SheetLine {
  readonly taxon: string;
  /** A number that can be added up; `null` for a range or mere presence. */
  readonly exact: number | null;
  readonly words: string;
}

/** What of a tally as a whole can be told in a few words. */
interface Whole {
  /** By the clock of the count; empty where it is not said. */
  readonly start: string;
  readonly end: string;
  /** Per cent of the section; empty where it is not said. */
  readonly seenPercent: string;
}

export function sheetOfDraft(title: string, draft: Draft): TallySheet {
  const total = runningTotal(draft);
  return sheet(
    title,
    total.using + total.flyingThrough,
    {
      start: draft.start,
      end: draft.end,
      seenPercent: draft.seenAll ? '100' : draft.seenPercent,
    },
    draft.lines.map((line) => ({
      taxon: line.taxon,
      exact: line.quantity === 'number' && line.low === '' ? wholeNumber(line.number) : null,
      words: quantityWords(line),
    })),
  );
}

/** @param timeZone of the count */
export function sheetOfTally(title: string, tally: OwnTallyFragment, timeZone: string): TallySheet {
  const clock = (instant: string | null): string =>
    instant === null ? '' : clockTimeOf(instant, timeZone);
  return sheet(
    title,
    tally.total,
    {
      start: clock(tally.start),
      end: clock(tally.end),
      seenPercent: String(Math.round(tally.coverage * 1000) / 10),
    },
    tally.lines.map((line) => ({
      taxon: line.written,
      exact: line.low === null ? line.number : null,
      words: submittedQuantity(line),
    })),
  );
}

function sheet(
  title: string,
  total: number,
  whole: Whole,
  lines: readonly SheetLine[],
): TallySheet {
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
  return { title, rows, total, whole: wholeInWords(whole) };
}

function wholeInWords({ start, end, seenPercent }: Whole): ReadonlyMap<string, string> {
  const said = (words: string): string => (words.trim() === '' ? t`not said` : words);
  return new Map([
    [t`Began`, said(start)],
    [t`Ended`, said(end)],
    [t`Of the section`, seenPercent.trim() === '' ? said('') : t`${seenPercent} %`],
  ]);
}

/** What of the tallies as a whole is not the same in all sheets. */
export function wholesThatDiffer(sheets: readonly TallySheet[]): readonly string[] {
  const names = [...new Set(sheets.flatMap(({ whole }) => [...whole.keys()]))];
  return names.filter((name) => new Set(sheets.map(({ whole }) => whole.get(name))).size > 1);
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

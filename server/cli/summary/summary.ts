import { listed, wordsFor, type Words } from './words.js';
import type { Cell, Result } from '../../core/model/result.js';
import type { Snapshot } from '../../core/model/snapshot.js';
import { agreementLines } from './agreement.js';
import { allocationLines } from './allocation.js';
import { balanceLines } from './balance.js';
import { compiledTable } from './compiled-table.js';
import { wrap, type Style } from './layout.js';
import { countedBySeverity, disagreementLines, linkLines } from './matters.js';

/** A reconciled count as a compiler reads it in a terminal: the result first, then what needs one. */
export function summaryText(result: Result<string>, snapshot: Snapshot, style: Style): string {
  const words = wordsFor(snapshot);
  const section = (title: string, lines: readonly string[]): readonly string[] =>
    lines.length === 0 ? [] : ['', style.heading(title), '', ...lines];
  const open = countedBySeverity(result);
  return [
    style.heading(snapshot.name),
    ...headLines(result, snapshot),
    ...section(`Compiled count (${reportedAs(result, snapshot)})`, compiledTable(result, words)),
    ...section('Estimate: species within pairs and groups', allocationLines(result, words)),
    ...section('Pairing balance', balanceLines(result, words)),
    ...section(
      `Disagreements by birds at stake${open === '' ? '' : ` (${open})`}`,
      disagreementLines(result, words),
    ),
    ...section('Possible double counts', linkLines(result, words)),
    ...section('Without a second count', singleLines(result, snapshot, words)),
    ...section('Agreement', agreementLines(result, words)),
    ...section(
      'Rulings',
      result.rulings.flatMap(({ id, state, text }) =>
        wrap(`${id} (${state.replaceAll('-', ' ')}): ${text}`, '  '),
      ),
    ),
    '',
  ].join('\n');
}

function headLines(result: Result<string>, snapshot: Snapshot): readonly string[] {
  const { tallies, windows } = snapshot;
  const observers = new Set(tallies.map(({ observer }) => observer));
  const lines = tallies.reduce((sum, tally) => sum + tally.lines.length, 0);
  const spans = windows.map(
    ({ id, start, end }) => `window ${id} ${start.slice(11, 16)}–${end.slice(11, 16)}`,
  );
  const { rule, zeros, resolution, minimumYears } = result.protocol;
  const years = new Set(snapshot.history.map(({ year }) => year)).size;
  const enough = years >= minimumYears ? '' : ', too few to say what was to be expected';
  return [
    `${snapshot.waterbody}, ${snapshot.date}, ${spans.join(', ')} (${snapshot.timeZone})`,
    `${plural(tallies.length, 'tally', 'tallies')} with ${plural(lines, 'line')} by ${plural(observers.size, 'observer')} in ${plural(snapshot.sections.length, 'section')}`,
    `Rule: ${rule}. One observer's zero beside another's birds: ${zeros}. Resolution: ${resolution}.`,
    ...(years === 0 ? [] : [`Held against ${plural(years, 'earlier year')}${enough}.`]),
  ].flatMap((text) => wrap(text));
}

function reportedAs(result: Result<string>, { windows }: Snapshot): string {
  const isWindow = windows.some(({ id }) => id === result.reported);
  return isWindow ? `window ${result.reported}` : 'mean of the windows';
}

function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Cells that rest on one tally, and sections that nobody counted in a window. */
function singleLines(result: Result<string>, snapshot: Snapshot, words: Words): readonly string[] {
  const using = result.cells.filter(({ layer }) => layer === 'using');
  const single = using.filter(({ tallies }) => tallies.filter(({ counted }) => counted).length < 2);
  const missing = snapshot.windows.flatMap(({ id }) => {
    const seen = new Set(
      using.filter(({ window }) => window === id).flatMap(({ place }) => [...place]),
    );
    const sections = snapshot.sections.filter((one) => !seen.has(one.id)).map((one) => one.id);
    return sections.length === 0 ? [] : [`Not counted in window ${id}: ${words.place(sections)}.`];
  });
  return [...single.map((cell) => singleSentence(cell, words)), ...missing].flatMap((text) =>
    wrap(text, '  '),
  );
}

function singleSentence(cell: Cell<string>, words: Words): string {
  const place = `${words.place(cell.place)}, window ${cell.window}`;
  const tallies = cell.tallies.map((tally) => {
    const share = tally.coverage < 1 ? `, ${Math.round(tally.coverage * 100)} % seen` : '';
    return `${words.observer(tally)} ${words.number(tally.total)} birds${share}`;
  });
  return `${place}: ${listed(tallies)}.`;
}

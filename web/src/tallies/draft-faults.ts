import { i18n } from '@lingui/core';
import { msg, t } from '@lingui/core/macro';
import type { Fault } from '../../../server/core/model/fault.js';
import { inOnePiece, isFlat, selfCrossing } from '../../../server/core/model/polygon-shape.js';
import { saidIn } from '../../../server/core/model/saying.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { language, wording, type Language } from '../ui/language.js';
import { wholeNumber, type Draft, type DraftLine } from './draft.js';
import { raftFaults } from './raft-draft.js';

/** What must be mended, tied to the line and field where it can be: the form shows it there. */
export interface DraftFault {
  /** `null`: the tally as a whole. */
  readonly lineId: string | null;
  /** The field's name, as in tallies.csv; `null` where no single field is at fault. */
  readonly field: string | null;
  readonly sentence: string;
}

/** Everything that the form can know by itself to be wrong; the server checks again. */
export function draftFaults(draft: Draft): readonly DraftFault[] {
  const faults: DraftFault[] = [];
  const whole = (field: string, sentence: string): void => {
    faults.push({ lineId: null, field, sentence });
  };
  if (draft.start === '') whole('start', t`Say when you began counting, such as 08:15.`);
  if (draft.end === '') whole('end', t`Say when you stopped counting, such as 10:30.`);
  if (!draft.seenAll) {
    const percent = Number(draft.seenPercent);
    if (draft.seenPercent.trim() === '' || !(percent > 0 && percent < 100)) {
      whole('coverage', t`Say how much of the section you saw, in per cent: over 0 and under 100.`);
    }
  }
  if (!draft.seenAll && crossesItself(draft.seenArea)) {
    whole(
      'coverage',
      t`The outline on the map crosses itself: take its last corners back and set them in their order, all the way round.`,
    );
  }
  const ice = draft.conditions.iceCover.trim().replace(',', '.');
  if (ice !== '' && !(Number(ice) >= 0 && Number(ice) <= 100)) {
    whole('ice-cover', t`Say how much of the section was under ice, in per cent: 0 to 100.`);
  }
  if (draft.scope === 'taxa' && draft.scopeTaxa.length === 0) {
    whole('scope', t`Name at least one taxon that you set out to count.`);
  }
  if (draft.replaces !== null && draft.reason.trim() === '') {
    whole('reason', t`Say why the tally is corrected; the earlier version stays on record.`);
  }
  for (const line of draft.lines) faults.push(...lineFaults(line));
  for (const { field, sentence } of raftFaults(draft)) whole(field, sentence);
  return faults;
}

function crossesItself(corners: Draft['seenArea']): boolean {
  const [first] = corners;
  if (first === undefined || corners.length < 3) return false;
  const ring = inOnePiece([...corners, first]);
  return isFlat(ring) || selfCrossing(ring) !== null;
}

/** Lines are never changed in place, so each is checked once in a language, however often the others change. */
const checked = new WeakMap<
  DraftLine,
  { readonly said: Language; readonly faults: readonly DraftFault[] }
>();

/** What is wrong with one line. */
function lineFaults(line: DraftLine): readonly DraftFault[] {
  const known = checked.get(line);
  if (known?.said === language()) return known.faults;
  const faults = checkLine(line);
  checked.set(line, { said: language(), faults });
  return faults;
}

function checkLine(line: DraftLine): readonly DraftFault[] {
  const faults: DraftFault[] = [];
  const at = (field: string, sentence: string): void => {
    faults.push({ lineId: line.id, field, sentence });
  };
  const taxon = parseTaxon(line.taxon);
  if (!taxon.ok) {
    at('taxon', `${sentence(saidIn(taxon.problem, wording()))}${didYouMean(taxon.nearest)}`);
  }
  const number = wholeNumber(line.number);
  if (line.quantity === 'number' && number === null) {
    at('number', t`Give whole birds, such as 12; 0 says that you looked and saw none.`);
  }
  const low = wholeNumber(line.low);
  const high = wholeNumber(line.high);
  if (line.quantity === 'range') {
    if (low === null) at('low', t`Give the fewest that it could be, in whole birds.`);
    if (high === null) at('high', t`Give the most that it could be, in whole birds.`);
  }
  if (line.quantity !== 'present' && low !== null && high !== null) {
    if (low > high) at('high', t`The most (${high}) must not be under the fewest (${low}).`);
    else if (line.quantity === 'number' && number !== null && (number < low || number > high)) {
      at('number', t`${number} is not between the fewest (${low}) and the most (${high}).`);
    }
  }
  const most = line.quantity === 'number' ? number : line.quantity === 'range' ? high : null;
  for (const [fields, words] of subCounts) {
    let sum = 0;
    for (const field of fields) {
      const text = line[field];
      if (text.trim() === '') continue;
      const count = wholeNumber(text);
      if (count === null) at(field, t`Give whole birds, or leave it empty.`);
      else sum += count;
    }
    if (most !== null && sum > most) {
      const parts = i18n._(words);
      at(fields[0], t`${parts} add up to ${sum}, more than the ${most} of the line.`);
    }
  }
  if (
    (line.method === 'block' || line.totalMethod === 'block') &&
    line.block.trim() !== '' &&
    !((wholeNumber(line.block) ?? 0) > 0)
  ) {
    at('block', t`Give the birds in one block, such as 50, or leave it empty.`);
  }
  if (line.heading.trim() !== '') {
    const heading = Number(line.heading);
    if (!(heading >= 0 && heading < 360)) at('heading', t`Give degrees from north, 0 to 359.`);
  }
  const isGiven = (text: string): boolean => text.trim() !== '';
  for (const [field, other, most] of [
    ['lat', 'lon', 90],
    ['lon', 'lat', 180],
  ] as const) {
    if (!isGiven(line[field])) {
      if (isGiven(line[other])) at(field, t`Give latitude and longitude together, or neither.`);
    } else if (!(Math.abs(Number(line[field])) <= most)) {
      at(field, t`Give decimal degrees from -${most} to ${most}, such as 44.2137.`);
    }
  }
  return faults;
}

const subCounts = [
  [['male', 'female'], msg`Males and females`],
  [['adult', 'immature'], msg`Adults and immatures`],
] as const;

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** Ties the server's faults to the lines they are about: its row is the line's place, from 1. */
export function serverFaults(
  draft: Draft,
  faults: readonly Fault<string>[],
): readonly DraftFault[] {
  return faults.map((fault) => {
    // Rows of another file than the tally are no lines.
    const row = fault.file === 'tally' ? fault.row : null;
    const line = row === null ? undefined : draft.lines[row - 1];
    return {
      lineId: line?.id ?? null,
      field: fault.column,
      sentence: `${sentence(fault.problem)} ${expected(fault)}${didYouMean(fault.nearest)}`,
    };
  });
}

/** The first fault of a field, for showing right below it. */
export function faultAt(
  faults: readonly DraftFault[],
  lineId: string | null,
  field: string,
): string | undefined {
  return faults.find((fault) => fault.lineId === lineId && fault.field === field)?.sentence;
}

function expected(fault: Fault<string>): string {
  const { expected: wanted } = fault;
  return t`Expected ${wanted}.`;
}

/** Put after a sentence. */
function didYouMean(nearest: string | null): string {
  if (nearest === null) return '';
  const question = t`Did you mean ${nearest}?`;
  return ` ${question}`;
}

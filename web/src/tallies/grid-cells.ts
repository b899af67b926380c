import type { MessageDescriptor } from '@lingui/core';
import { msg, t } from '@lingui/core/macro';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { searchTaxa } from '../../../server/core/taxa/search-taxa.js';
import { readTaxon } from '../ui/taxon.js';
import type { DraftLine } from './draft.js';

/** What of a line stands in a column of the grid, and what typing there changes. */
export interface GridColumn {
  readonly name: string;
  readonly label: MessageDescriptor;
  readonly isNumber: boolean;
  readonly textOf: (line: DraftLine) => string;
  readonly changeOf: (text: string) => Partial<DraftLine>;
}

function plain(
  name: 'male' | 'female' | 'flock' | 'note' | 'time',
  label: MessageDescriptor,
  isNumber: boolean,
): GridColumn {
  return {
    name,
    label,
    isNumber,
    textOf: (line) => line[name],
    changeOf: (text) => ({ [name]: text }),
  };
}

/** `12`, `40-60`, or `present`, as a paper sheet has it. */
export const NUMBER_COLUMN: GridColumn = {
  name: 'number',
  label: msg`Number`,
  isNumber: true,
  textOf: (line) => {
    if (line.quantity === 'present') return t`present`;
    return line.quantity === 'range' ? `${line.low}-${line.high}` : line.number;
  },
  changeOf: (text) => {
    const none = { number: '', low: '', high: '' };
    // A sheet may have been written in the other language.
    if (['present', t`present`.toLowerCase()].includes(text.trim().toLowerCase())) {
      return { ...none, quantity: 'present' };
    }
    const [, low, high] = /^\s*(\d[\d,]*)\s*[-–]\s*(\d[\d,]*)?\s*$/u.exec(text) ?? [];
    if (low === undefined) return { ...none, quantity: 'number', number: text };
    return { ...none, quantity: 'range', low, high: high ?? '' };
  },
};

/** Shown when they are asked for. */
export const MORE_COLUMNS: readonly GridColumn[] = [
  {
    name: 'block',
    label: msg`Block`,
    isNumber: true,
    textOf: (line) => (line.method === 'block' ? line.block : ''),
    changeOf: (text) =>
      text.trim() === '' ? { method: 'one-by-one', block: '' } : { method: 'block', block: text },
  },
  plain('male', msg`Males`, true),
  plain('female', msg`Female-type`, true),
  plain('time', msg`Time`, false),
  plain('flock', msg`Flock`, false),
  plain('note', msg`Note`, false),
];

/** What a code or name in the grid is taken for, or what it may have been meant for. */
export type GridTaxon =
  | { readonly kind: 'known'; readonly common: string }
  | { readonly kind: 'empty' }
  | { readonly kind: 'unknown'; readonly nearest: string | null; readonly common: string | null };

export function gridTaxon(text: string): GridTaxon {
  if (text.trim() === '') return { kind: 'empty' };
  const parsed = parseTaxon(text);
  if (parsed.ok) return { kind: 'known', common: readTaxon(text).common };
  const nearest = parsed.nearest ?? searchTaxa(text, 1)[0]?.name ?? null;
  return {
    kind: 'unknown',
    nearest,
    common: nearest === null ? null : readTaxon(nearest).common,
  };
}

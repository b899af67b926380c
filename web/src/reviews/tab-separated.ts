import { t } from '@lingui/core/macro';
import type { StatisticPartsFragment } from '../graphql/generated/graphql.js';
import { twoDecimals } from '../ui/words.js';

/** One column of a table: how it is shown, and what goes into a spreadsheet. */
export type Column<Row> = { readonly title: string } & (
  | { readonly kind: 'text'; readonly text: (row: Row) => string }
  | {
      readonly kind: 'number';
      readonly number: (row: Row) => number | null;
      readonly write: (value: number) => string;
    }
  | {
      readonly kind: 'statistic';
      readonly statistic: (row: Row) => StatisticPartsFragment;
      readonly write: (value: number) => string;
    }
);

/**
 * A table as a spreadsheet takes it from the clipboard: a head, then a row a line, tabs between. A
 * statistic takes four columns (value, low, high, n); a number that there is not is an empty field.
 * The decimal sign is that of the language of the pages.
 */
export function tabSeparated<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string {
  const head = columns.flatMap(({ title, kind }) =>
    kind === 'statistic' ? [title, t`${title}, low`, t`${title}, high`, t`${title}, n`] : [title],
  );
  const lines = rows.map((row) => columns.flatMap((column) => fieldsOf(column, row)));
  return [head.map(textField), ...lines].map((fields) => `${fields.join('\t')}\n`).join('');
}

function fieldsOf<Row>(column: Column<Row>, row: Row): readonly string[] {
  switch (column.kind) {
    case 'text':
      return [textField(column.text(row))];
    case 'number':
      return [numberField(column.number(row))];
    case 'statistic': {
      const { value, low, high, n } = column.statistic(row);
      return [value, low, high, n].map(numberField);
    }
  }
}

function numberField(value: number | null): string {
  if (value === null) return '';
  const decimalSign = twoDecimals(0).charAt(1);
  return String(value).replace('.', decimalSign);
}

/** One line, and never a formula: a name is what somebody typed. */
function textField(text: string): string {
  const line = text.replaceAll(/\s+/gu, ' ').trim();
  return /^[=+\-@]/u.test(line) ? `'${line}` : line;
}

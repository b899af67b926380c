import { t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import type { StatisticPartsFragment } from '../graphql/generated/graphql.js';
import { birds } from '../ui/words.js';
import { intervalText, missingWord } from './agreement-words.js';
import { CopyTable } from './copy-table.js';
import { tabSeparated, type Column } from './tab-separated.js';

/** Numbers as a table that copies into a spreadsheet; the first column names the row. */
export function StatisticTable<Row>(props: {
  readonly label: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  /** Fewest units for a number. */
  readonly least: number;
}): ReactNode {
  const { label, columns, rows, keyOf, least } = props;
  return (
    <div className="stack-tight">
      <div className="wide" role="region" aria-label={t`Table: ${label}`} tabIndex={0}>
        <table className="statistics">
          <thead>
            <tr>
              {columns.map(({ title, kind }) => (
                <th key={title} scope="col" className={kind === 'text' ? undefined : 'number'}>
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={keyOf(row)}>
                {columns.map((column, place) => (
                  <TableCell
                    key={column.title}
                    column={column}
                    row={row}
                    isHead={place === 0}
                    least={least}
                  />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <CopyTable label={label} text={() => tabSeparated(columns, rows)} />
    </div>
  );
}

function TableCell<Row>(props: {
  readonly column: Column<Row>;
  readonly row: Row;
  readonly isHead: boolean;
  readonly least: number;
}): ReactNode {
  const { column, row } = props;
  if (column.kind === 'text') {
    const text = column.text(row);
    return props.isHead ? <th scope="row">{text}</th> : <td>{text}</td>;
  }
  if (column.kind === 'number') {
    const value = column.number(row);
    return <td className="number">{value === null ? '–' : column.write(value)}</td>;
  }
  return (
    <td className="number">
      <StatisticText statistic={column.statistic(row)} write={column.write} least={props.least} />
    </td>
  );
}

/** Value, interval, n; words where there is no value. */
function StatisticText(props: {
  readonly statistic: StatisticPartsFragment;
  readonly write: (value: number) => string;
  readonly least: number;
}): ReactNode {
  const { statistic, write, least } = props;
  return (
    <>
      {statistic.value === null ? (
        <span className="soft">{missingWord(statistic, least)}</span>
      ) : (
        write(statistic.value)
      )}
      {statistic.value === null ? null : (
        <span className="block soft small">{intervalText(statistic, write)}</span>
      )}
      <span className="block soft small">n {birds(statistic.n)}</span>
    </>
  );
}

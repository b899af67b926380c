import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { memo, useState, type KeyboardEvent, type ReactNode } from 'react';
import { useAnnounce } from '../ui/announcer.js';
import type { DraftFault } from './draft-faults.js';
import type { DraftLine } from './draft.js';
import type { ChangeLine } from './edited-line.js';
import { gridTaxon, type GridColumn } from './grid-cells.js';
import { i18n } from '@lingui/core';

/** One row of the grid: a line, or the empty row in which the next one begins. */
export const GridRow = memo(function GridRow(props: {
  readonly row: number;
  readonly lineId: string;
  /** `null` for the empty row. */
  readonly line: DraftLine | null;
  readonly columns: readonly GridColumn[];
  readonly faults: readonly DraftFault[];
  readonly onBegin: (lineId: string, taxon: string) => void;
  readonly onChange: ChangeLine;
  readonly onRemove: (lineId: string) => void;
  readonly onGo: (row: number, column: string) => void;
}): ReactNode {
  const { row, line, lineId, onGo } = props;
  const [isLeft, setLeft] = useState(false);
  const announce = useAnnounce();
  const text = line?.taxon ?? '';
  const taxon = gridTaxon(text);
  const isAsked = isLeft && taxon.kind === 'unknown';
  const question =
    taxon.kind !== 'unknown'
      ? ''
      : taxon.common === null
        ? t`“${text}” is not a known taxon.`
        : t`“${text}” is not a known taxon. Did you mean ${taxon.common}?`;

  /** Enter goes to the next row, or first to the question about this one. */
  function go(event: KeyboardEvent, column: string): void {
    if (event.key === 'Enter') {
      if (column === 'taxon' && taxon.kind === 'unknown' && taxon.nearest !== null) {
        setLeft(true);
        onGo(row, 'nearest');
      } else if (line !== null) onGo(row + 1, 'taxon');
    } else if (event.key === 'ArrowDown') onGo(row + 1, column);
    else if (event.key === 'ArrowUp') onGo(row - 1, column);
    else return;
    event.preventDefault();
  }

  return (
    <tr data-at-fault={props.faults.length > 0}>
      <td>
        <input
          type="text"
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          aria-label={t`Row ${row + 1}, code or name`}
          aria-invalid={isAsked ? true : undefined}
          aria-describedby={`grid-said-${lineId}`}
          data-row={row}
          data-column="taxon"
          value={text}
          onChange={({ target }) => {
            setLeft(false);
            if (line === null) props.onBegin(lineId, target.value);
            else props.onChange(lineId, { taxon: target.value }, 'taxon');
          }}
          onBlur={() => {
            if (!isLeft && taxon.kind === 'unknown') announce(question);
            setLeft(true);
          }}
          onKeyDown={(event) => go(event, 'taxon')}
        />
        <span id={`grid-said-${lineId}`} className="grid-said small">
          {taxon.kind === 'known' ? taxon.common : null}
          {isAsked ? <span className="field-fault">{question}</span> : null}
        </span>
        {isAsked && taxon.nearest !== null ? (
          <button
            type="button"
            className="button"
            data-row={row}
            data-column="nearest"
            onClick={() => {
              props.onChange(lineId, { taxon: taxon.nearest ?? text });
              onGo(row, 'number');
            }}
          >
            <Trans>Use {taxon.common}</Trans>
          </button>
        ) : null}
        {props.faults.map((fault) => (
          <span key={fault.sentence} className="field-fault">
            {fault.sentence}
          </span>
        ))}
      </td>
      {props.columns.map((column) => (
        <td key={column.name}>
          <input
            type={column.name === 'time' ? 'time' : 'text'}
            autoComplete="off"
            className={column.isNumber ? 'number' : undefined}
            aria-label={t`Row ${row + 1}, ${i18n._(column.label).toLowerCase()}`}
            disabled={line === null}
            data-row={row}
            data-column={column.name}
            value={line === null ? '' : column.textOf(line)}
            onChange={({ target }) =>
              props.onChange(lineId, column.changeOf(target.value), column.name)
            }
            onKeyDown={(event) => {
              // Up and down change a time; Enter leaves it.
              if (column.name !== 'time' || event.key === 'Enter') go(event, column.name);
            }}
          />
        </td>
      ))}
      <td>
        {line === null ? null : (
          <button
            type="button"
            className="button"
            aria-label={t`Remove row ${row + 1}`}
            onClick={() => props.onRemove(lineId)}
          >
            ×
          </button>
        )}
      </td>
    </tr>
  );
});

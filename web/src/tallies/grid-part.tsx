import { Trans } from '@lingui/react/macro';
import { useCallback, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { v7 } from 'uuid';
import { useKeptChoice } from '../ui/kept.js';
import type { DraftFault } from './draft-faults.js';
import { emptyLine, withLine, withoutLine } from './draft.js';
import { editedLine, type ChangeLine } from './edited-line.js';
import { MORE_COLUMNS, NUMBER_COLUMN } from './grid-cells.js';
import { GridRow } from './grid-row.js';
import { UndoButtons, type UndoProps } from './undo-buttons.js';
import type { ChangeDraft } from './use-draft.js';
import { i18n } from '@lingui/core';

const noFaults: readonly DraftFault[] = [];

/**
 * A paper sheet typed in with the keyboard alone: code or name, tab, number, Enter for the next row.
 * It writes into the same draft as the buttons do, and stamps no times: they are on the sheet.
 */
export function GridPart(props: {
  readonly undo: UndoProps;
  readonly faults: readonly DraftFault[];
  readonly change: ChangeDraft;
  readonly onDone: () => void;
}): ReactNode {
  const { faults, change } = props;
  const { lines } = props.undo.draft;
  const [shown, setShown] = useKeptChoice('countersign.grid-columns', ['few', 'all'], 'few');
  // The empty row has the id that its line will have, so that it stays the same row when typed into.
  const [freshId, setFreshId] = useState<string>(() => v7());
  const [wanted, setWanted] = useState<{ readonly row: number; readonly column: string } | null>({
    row: lines.length,
    column: 'taxon',
  });
  const table = useRef<HTMLTableElement>(null);
  const columns = useMemo(
    () => (shown === 'all' ? [NUMBER_COLUMN, ...MORE_COLUMNS] : [NUMBER_COLUMN]),
    [shown],
  );

  useEffect(() => {
    if (wanted === null) return;
    const cell = table.current?.querySelector<HTMLElement>(
      `[data-row="${wanted.row}"][data-column="${wanted.column}"]`,
    );
    cell?.focus();
    if (cell instanceof HTMLInputElement) cell.select();
  }, [wanted]);

  const go = useCallback((row: number, column: string) => setWanted({ row, column }), []);
  const changeLine = useCallback<ChangeLine>(
    (lineId, fields, field) =>
      change(
        (last) => editedLine(last, lineId, fields, null),
        field === undefined ? undefined : `${lineId}.${field}`,
      ),
    [change],
  );
  const begin = useCallback(
    (lineId: string, taxon: string) => {
      change((last) => withLine(last, { ...emptyLine(taxon), id: lineId }), `${lineId}.taxon`);
      setFreshId(v7());
    },
    [change],
  );
  const remove = useCallback(
    (lineId: string) => {
      change((last) => withoutLine(last, lineId));
      setWanted({ row: 0, column: 'taxon' });
    },
    [change],
  );
  const rows = [...lines.map((line) => ({ id: line.id, line })), { id: freshId, line: null }];
  return (
    <section className="stack" aria-labelledby="grid-heading">
      <h2 id="grid-heading">
        <Trans>Type in a paper sheet</Trans>
      </h2>
      <p className="hint">
        <Trans>
          A code or name, Tab, the number, Enter for the next row. A number may be a range such as
          40-60, or the word present for birds that were seen and not counted. Arrow keys go up and
          down.
        </Trans>
      </p>
      <div>
        <button
          type="button"
          className="button"
          aria-pressed={shown === 'all'}
          onClick={() => setShown(shown === 'all' ? 'few' : 'all')}
        >
          <Trans>More columns</Trans>
        </button>
      </div>
      <div className="wide">
        <table ref={table} className="entry-grid">
          <thead>
            <tr>
              <th scope="col">
                <Trans>Code or name</Trans>
              </th>
              {columns.map(({ name, label, isNumber }) => (
                <th key={name} scope="col" className={isNumber ? 'number' : undefined}>
                  {i18n._(label)}
                </th>
              ))}
              <th scope="col">
                <span className="for-readers">
                  <Trans>Remove</Trans>
                </span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ id, line }, row) => (
              <GridRow
                key={id}
                row={row}
                lineId={id}
                line={line}
                columns={columns}
                faults={faultsOf(faults, id)}
                onBegin={begin}
                onChange={changeLine}
                onRemove={remove}
                onGo={go}
              />
            ))}
          </tbody>
        </table>
      </div>
      <div className="tally-foot foot-acts">
        <UndoButtons {...props.undo} />
        <button type="button" className="button" data-kind="main" onClick={props.onDone}>
          <Trans>Sheet done</Trans>
        </button>
      </div>
    </section>
  );
}

function faultsOf(faults: readonly DraftFault[], lineId: string): readonly DraftFault[] {
  if (faults.length === 0) return noFaults;
  // What is wrong with the name is asked in its cell already.
  return faults.filter((fault) => fault.lineId === lineId && fault.field !== 'taxon');
}

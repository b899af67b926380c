import { t } from '@lingui/core/macro';
import { Plural, Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import type { Fault } from '../../../server/core/model/fault.js';

/** Every fault with its place in the files, to be worked through beside a spreadsheet. */
export function FaultTable(props: { readonly faults: readonly Fault<string>[] }): ReactNode {
  return (
    <div className="wide" role="region" aria-label={t`What needs mending`} tabIndex={0}>
      <table>
        <caption>
          <Plural
            value={props.faults.length}
            one="# thing to mend. Rows are as a spreadsheet numbers them."
            other="# things to mend. Rows are as a spreadsheet numbers them."
          />
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Trans>File</Trans>
            </th>
            <th scope="col" className="number">
              <Trans context="of a table">Row</Trans>
            </th>
            <th scope="col">
              <Trans>Column</Trans>
            </th>
            <th scope="col">
              <Trans>Written</Trans>
            </th>
            <th scope="col">
              <Trans>What is wrong</Trans>
            </th>
            <th scope="col">
              <Trans>Expected</Trans>
            </th>
            <th scope="col">
              <Trans>Nearest</Trans>
            </th>
          </tr>
        </thead>
        <tbody>
          {props.faults.map((fault, index) => (
            <tr key={index}>
              <td>{fault.file}</td>
              <td className="number">{fault.row ?? ''}</td>
              <td>{fault.column ?? ''}</td>
              <td>{fault.value ?? ''}</td>
              <td>{fault.problem}</td>
              <td>{fault.expected}</td>
              <td>{fault.nearest ?? ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

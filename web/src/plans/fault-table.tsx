import type { ReactNode } from 'react';
import type { Fault } from '../../../server/core/model/fault.js';
import { countOf } from '../ui/words.js';

/** Every fault with its place in the files, to be worked through beside a spreadsheet. */
export function FaultTable(props: { readonly faults: readonly Fault[] }): ReactNode {
  return (
    <div className="wide" role="region" aria-label="What needs mending" tabIndex={0}>
      <table>
        <caption>
          {countOf(props.faults.length, 'thing')} to mend. Rows are as a spreadsheet numbers them.
        </caption>
        <thead>
          <tr>
            <th scope="col">File</th>
            <th scope="col" className="number">
              Row
            </th>
            <th scope="col">Column</th>
            <th scope="col">Written</th>
            <th scope="col">What is wrong</th>
            <th scope="col">Expected</th>
            <th scope="col">Nearest</th>
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

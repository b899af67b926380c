import type { ReactNode } from 'react';
import { faultSentence, type Fault } from '../../../server/core/model/fault.js';

/** Faults as sentences, in the words that the command line uses too. */
export function FaultList(props: { readonly faults: readonly Fault[] }): ReactNode {
  return (
    <ul className="stack-tight">
      {props.faults.map((fault, index) => (
        <li key={index}>{faultSentence(fault)}</li>
      ))}
    </ul>
  );
}

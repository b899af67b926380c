import type { ReactNode } from 'react';
import { faultSaying, type Fault } from '../../../server/core/model/fault.js';
import { saidIn } from '../../../server/core/model/saying.js';
import { wording } from './language.js';

/** Faults that the server found, as sentences, in the words that the command line uses too. */
export function FaultList(props: { readonly faults: readonly Fault<string>[] }): ReactNode {
  return (
    <ul className="stack-tight">
      {props.faults.map((fault, index) => (
        <li key={index}>{saidIn(faultSaying(fault), wording())}</li>
      ))}
    </ul>
  );
}

import { t } from '@lingui/core/macro';
import type { ReactNode } from 'react';
import type { DraftFault } from './draft-faults.js';
import type { Draft } from './draft.js';
import { readTaxon } from '../ui/taxon.js';

/** All that must be mended, on top, each naming its line; the same sentences stand at the fields. */
export function FaultSummary(props: {
  readonly headline: string;
  readonly faults: readonly DraftFault[];
  readonly draft: Draft;
}): ReactNode {
  const nameOf = (lineId: string | null): string => {
    if (lineId === null) return '';
    const index = props.draft.lines.findIndex(({ id }) => id === lineId);
    const line = props.draft.lines[index];
    if (line === undefined) return '';
    const place = index + 1;
    const taxon = readTaxon(line.taxon).common;
    return `${t`Line ${place}, ${taxon}:`} `;
  };
  return (
    <div className="notice stack-tight" data-kind="refused" role="alert">
      <p>
        <strong>{props.headline}</strong>
      </p>
      <ul className="stack-tight">
        {props.faults.map((fault, index) => (
          <li key={index}>
            {nameOf(fault.lineId)}
            {fault.sentence}
          </li>
        ))}
      </ul>
    </div>
  );
}

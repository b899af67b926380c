import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { memo, type ReactNode } from 'react';
import { readTaxon } from '../ui/taxon.js';
import type { DraftFault } from './draft-faults.js';
import { wholeNumber, type DraftLine } from './draft.js';
import { detailWords, quantityWords } from './line-words.js';

/** One line in the list. Drawn anew only if it changed itself, however many lines there are. */
const LineItem = memo(function LineItem(props: {
  readonly line: DraftLine;
  readonly faults: readonly DraftFault[];
  readonly onOpen: (lineId: string) => void;
  readonly onTap: (lineId: string, step: number) => void;
}): ReactNode {
  const { line, faults } = props;
  const details = detailWords(line);
  const { common } = readTaxon(line.taxon);
  const step = line.method === 'block' ? (wholeNumber(line.block) ?? 1) : 1;
  return (
    <li data-at-fault={faults.length > 0}>
      <div className="tally-line-row">
        <button type="button" className="tally-line" onClick={() => props.onOpen(line.id)}>
          <span>
            {common}
            {details === '' ? null : (
              <span className="soft small tally-line-details">{details}</span>
            )}
          </span>
          <span className="number">{quantityWords(line)}</span>
          <span className="for-readers">
            . <Trans>Change this line</Trans>
          </span>
        </button>
        {line.quantity !== 'number' || step === 0 ? null : (
          <button
            type="button"
            className="button tally-line-tap"
            aria-label={t`Add ${step} to ${common}`}
            onClick={() => props.onTap(line.id, step)}
          >
            +{step}
          </button>
        )}
      </div>
      {faults.map((fault) => (
        <p key={fault.sentence} className="field-fault">
          {fault.sentence}
        </p>
      ))}
    </li>
  );
});

const noFaults: readonly DraftFault[] = [];

interface Items {
  readonly lines: readonly DraftLine[];
  readonly faultsOf: ReadonlyMap<string, readonly DraftFault[]>;
  readonly onOpen: (lineId: string) => void;
  readonly onTap: (lineId: string, step: number) => void;
}

/** Some lines, the newest first. A tap on one of hundreds is worked out among these few only. */
export const LineItems = memo(
  function LineItems({ lines, faultsOf, onOpen, onTap }: Items): ReactNode {
    return lines
      .toReversed()
      .map((line) => (
        <LineItem
          key={line.id}
          line={line}
          faults={faultsOf.get(line.id) ?? noFaults}
          onOpen={onOpen}
          onTap={onTap}
        />
      ));
  },
  (before, after) =>
    before.faultsOf === after.faultsOf &&
    before.onOpen === after.onOpen &&
    before.onTap === after.onTap &&
    before.lines.length === after.lines.length &&
    before.lines.every((line, index) => line === after.lines[index]),
);

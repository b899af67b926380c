import { msg, t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import type { Activity, Method } from '../../../server/core/model/snapshot.js';
import { parseTaxon } from '../../../server/core/taxa/parse-taxon.js';
import { Choice } from './choice.js';
import { CountPanel } from './count-panel.js';
import { faultAt, type DraftFault } from './draft-faults.js';
import type { DraftLine, QuantityKind } from './draft.js';
import { MarksPart, MoreLineFields } from './later-parts.js';
import type { ChangeLine } from './edited-line.js';
import type { Place } from './place.js';
import { UndoButtons, type UndoProps } from './undo-buttons.js';
import { NumberField } from './number-field.js';
import { readTaxon } from '../ui/taxon.js';
import { TaxonPicker } from './taxon-picker.js';
import { widerNames } from './wider-names.js';
import type { Label } from '../ui/said.js';

const quantities: readonly { readonly value: QuantityKind; readonly label: Label }[] = [
  { value: 'number', label: msg`Number` },
  { value: 'range', label: msg`From–to` },
  { value: 'present', label: msg`Seen, not counted` },
];

const methodOptions: readonly { readonly value: Method; readonly label: Label }[] = [
  { value: 'one-by-one', label: msg`One by one` },
  { value: 'block', label: msg`In blocks` },
  { value: 'sample', label: msg`By a sample` },
  { value: 'guess', label: msg`Guess` },
];

const activityOptions: readonly { readonly value: Activity; readonly label: Label }[] = [
  { value: 'water', label: msg`On water` },
  { value: 'land', label: msg`On land or ice` },
  { value: 'flying-through', label: msg`Flying through` },
  { value: 'flushed', label: msg`Flushed` },
];

/**
 * Everything about one tally line: what most lines need is on top, the rest is folded away, and the
 * number lies at the bottom of the screen, under the thumb.
 */
export function LineEditor(props: {
  readonly line: DraftLine;
  readonly sections: readonly { readonly id: string; readonly name: string }[];
  readonly faults: readonly DraftFault[];
  readonly recent: readonly string[];
  readonly expected: readonly string[];
  readonly place: Place;
  /** While the window is open the first tap stamps the time by itself. */
  readonly isStamping: boolean;
  readonly undo: UndoProps;
  readonly onChange: ChangeLine;
  readonly onDone: () => void;
  readonly onRemove: () => void;
}): ReactNode {
  const { line, faults } = props;
  const [isChangingTaxon, setChangingTaxon] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    heading.current?.focus();
    heading.current?.scrollIntoView({ block: 'start' });
  }, []);
  const shown = readTaxon(line.taxon);
  const parsed = parseTaxon(line.taxon);
  const wider = parsed.ok ? widerNames(parsed.candidates) : [];
  const fault = (field: string): string | undefined => faultAt(faults, line.id, field);
  const set = (change: Partial<DraftLine>, field?: string): void =>
    props.onChange(line.id, change, field);
  const taxonFault = fault('taxon');

  return (
    <section className="line-editor stack" aria-labelledby={`line-${line.id}`}>
      <div>
        <h2 id={`line-${line.id}`} ref={heading} tabIndex={-1}>
          {shown.common}
        </h2>
        <p className="taxon soft">{shown.name}</p>
        {taxonFault === undefined ? null : <p className="field-fault">{taxonFault}</p>}
      </div>
      {wider.length === 0 ? null : (
        <div className="field" role="group" aria-label={t`Not sure of the species? Leave it as`}>
          <span className="label">
            <Trans>Not sure? Leave it as</Trans>
          </span>
          <div className="choice-row">
            {wider.map((one) => (
              <button
                key={one.name}
                type="button"
                className="button"
                onClick={() => set({ taxon: one.name })}
              >
                {one.common}
              </button>
            ))}
          </div>
        </div>
      )}
      {isChangingTaxon ? (
        <TaxonPicker
          label={t`Change the taxon to`}
          recent={props.recent}
          expected={props.expected}
          onPick={(taxon) => {
            set({ taxon: taxon.name });
            setChangingTaxon(false);
          }}
        />
      ) : (
        <div>
          <button
            type="button"
            className="button"
            data-kind="quiet"
            onClick={() => setChangingTaxon(true)}
          >
            <Trans>Another taxon</Trans>
          </button>
        </div>
      )}

      <Choice
        legend={t`How many`}
        isShort
        value={line.quantity}
        options={quantities}
        onChange={(quantity) => set({ quantity })}
      />
      {line.quantity === 'range' || (line.quantity === 'number' && line.low + line.high !== '') ? (
        <div className="two-fields">
          <NumberField
            label={t`At least`}
            value={line.low}
            fault={fault('low')}
            onChange={(low) => set({ low }, 'low')}
          />
          <NumberField
            label={t`At most`}
            value={line.high}
            fault={fault('high')}
            onChange={(high) => set({ high }, 'high')}
          />
        </div>
      ) : null}
      {line.quantity === 'present' ? (
        <p className="hint">
          <Trans>Seen, but not counted: the compiled count then says “at least one more”.</Trans>
        </p>
      ) : null}

      <Choice
        legend={t`How counted`}
        value={line.method}
        options={methodOptions}
        onChange={(method) => set({ method })}
      />
      {line.method === 'block' && line.quantity !== 'number' ? (
        <NumberField
          label={t`Birds in one block`}
          value={line.block}
          fault={fault('block')}
          onChange={(block) => set({ block }, 'block')}
        />
      ) : null}
      <Choice
        legend={t`Doing`}
        value={line.activity}
        options={activityOptions}
        onChange={(activity) => set({ activity })}
      />

      <MarksPart line={line} onChange={(noted) => set(noted)} />
      <MoreLineFields
        line={line}
        sections={props.sections}
        place={props.place}
        isStamping={props.isStamping}
        fault={fault}
        set={set}
      />
      <div>
        <button type="button" className="button" data-kind="quiet" onClick={props.onRemove}>
          <Trans>Remove this line</Trans>
        </button>
      </div>

      <div className="line-dock">
        {line.quantity === 'number' ? (
          <CountPanel line={line} fault={fault('number')} blockFault={fault('block')} set={set} />
        ) : null}
        <div className="foot-acts">
          <UndoButtons {...props.undo} />
          <button type="button" className="button" data-kind="main" onClick={props.onDone}>
            <Trans>Line done</Trans>
          </button>
        </div>
      </div>
    </section>
  );
}

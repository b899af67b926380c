import { t } from '@lingui/core/macro';
import { Trans } from '@lingui/react/macro';
import type { ReactNode } from 'react';
import { SelectField } from '../ui/select-field.js';
import { TextArea, TextField } from '../ui/text-field.js';
import { Choice } from './choice.js';
import type { DraftLine } from './draft.js';
import { HeadingDial } from './heading-dial.js';
import { NumberField } from './number-field.js';
import type { Place } from './place.js';
import { PositionFields } from './position-fields.js';

/** Sex and age, flock and movement, position, certainty and note: folded until they are needed. */
export function MoreLineFields(props: {
  readonly line: DraftLine;
  readonly sections: readonly { readonly id: string; readonly name: string }[];
  readonly place: Place;
  readonly isStamping: boolean;
  readonly fault: (field: string) => string | undefined;
  readonly set: (change: Partial<DraftLine>, field?: string) => void;
}): ReactNode {
  const { line, fault, set } = props;
  const hasSexOrAge = [line.male, line.female, line.adult, line.immature].some(
    (text) => text !== '',
  );
  const hasMovement = [line.flock, line.heading, line.from, line.to].some((text) => text !== '');
  const hasFault = (fields: readonly string[]): boolean =>
    fields.some((field) => fault(field) !== undefined);
  return (
    <>
      <details open={hasSexOrAge || hasFault(['male', 'female', 'adult', 'immature'])}>
        <summary>
          <Trans>Sex and age</Trans>
        </summary>
        <div className="two-fields">
          <NumberField
            label={t`Males`}
            value={line.male}
            fault={fault('male')}
            onChange={(male) => set({ male }, 'male')}
          />
          <NumberField
            label={t`Female-type`}
            value={line.female}
            fault={fault('female')}
            onChange={(female) => set({ female }, 'female')}
          />
          <NumberField
            label={t`Adults`}
            value={line.adult}
            fault={fault('adult')}
            onChange={(adult) => set({ adult }, 'adult')}
          />
          <NumberField
            label={t`Immatures`}
            value={line.immature}
            fault={fault('immature')}
            onChange={(immature) => set({ immature }, 'immature')}
          />
        </div>
      </details>
      <details open={hasMovement || hasFault(['flock', 'time', 'heading', 'from', 'to'])}>
        <summary>
          <Trans>Flock, time and where it went</Trans>
          {line.time === '' ? null : <span className="soft"> ({line.time})</span>}
        </summary>
        <div className="two-fields">
          <TextField
            label={t`Flock label`}
            hint={t`your own, such as raft 1`}
            fault={fault('flock')}
            value={line.flock}
            onChange={(value) => set({ flock: value }, 'flock')}
          />
          <TextField
            label={t`Time seen`}
            hint={
              props.isStamping
                ? t`stamped by itself at the first tap; change it if it was earlier`
                : t`stamped by itself only while the window is open`
            }
            fault={fault('time')}
            type="time"
            value={line.time}
            onChange={(value) => set({ time: value }, 'time')}
          />
          <SectionField
            label={t`Came from`}
            value={line.from}
            sections={props.sections}
            fault={fault('from')}
            onChange={(from) => set({ from })}
          />
          <SectionField
            label={t`Went to`}
            value={line.to}
            sections={props.sections}
            fault={fault('to')}
            onChange={(to) => set({ to })}
          />
        </div>
        <HeadingDial
          value={line.heading}
          fault={fault('heading')}
          onChange={(heading) => set({ heading }, 'heading')}
        />
      </details>
      <details open={line.lat + line.lon !== '' || hasFault(['lat', 'lon'])}>
        <summary>
          <Trans>Where the flock was</Trans>
        </summary>
        <PositionFields line={line} place={props.place} fault={fault} set={set} />
      </details>
      <details
        open={line.note !== '' || line.certainty === 'likely' || hasFault(['note', 'certainty'])}
      >
        <summary>
          <Trans>How sure, and a note</Trans>
        </summary>
        <div className="stack">
          <Choice
            legend={t`Identification`}
            value={line.certainty}
            options={[
              { value: 'sure', label: t`Sure` },
              { value: 'likely', label: t`Likely` },
            ]}
            onChange={(certainty) => set({ certainty })}
          />
          <TextArea
            label={t`Note`}
            hint={t`field marks seen, light, what else a compiler should know`}
            fault={fault('note')}
            value={line.note}
            onChange={(value) => set({ note: value }, 'note')}
          />
        </div>
      </details>
    </>
  );
}

function SectionField(props: {
  readonly label: string;
  readonly value: string;
  readonly sections: readonly { readonly id: string; readonly name: string }[];
  readonly fault: string | undefined;
  readonly onChange: (value: string) => void;
}): ReactNode {
  return (
    <SelectField
      label={props.label}
      fault={props.fault}
      none={t`not seen`}
      options={props.sections.map((section) => ({ value: section.id, label: section.name }))}
      value={props.value}
      onChange={props.onChange}
    />
  );
}

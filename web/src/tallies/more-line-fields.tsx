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
        <summary>Sex and age</summary>
        <div className="two-fields">
          <NumberField
            label="Males"
            value={line.male}
            fault={fault('male')}
            onChange={(male) => set({ male }, 'male')}
          />
          <NumberField
            label="Female-type"
            value={line.female}
            fault={fault('female')}
            onChange={(female) => set({ female }, 'female')}
          />
          <NumberField
            label="Adults"
            value={line.adult}
            fault={fault('adult')}
            onChange={(adult) => set({ adult }, 'adult')}
          />
          <NumberField
            label="Immatures"
            value={line.immature}
            fault={fault('immature')}
            onChange={(immature) => set({ immature }, 'immature')}
          />
        </div>
      </details>
      <details open={hasMovement || hasFault(['flock', 'time', 'heading', 'from', 'to'])}>
        <summary>
          Flock, time and where it went
          {line.time === '' ? null : <span className="soft">({line.time})</span>}
        </summary>
        <div className="two-fields">
          <TextField
            label="Flock label"
            hint="your own, such as raft 1"
            fault={fault('flock')}
            value={line.flock}
            onChange={(value) => set({ flock: value }, 'flock')}
          />
          <TextField
            label="Time seen"
            hint={
              props.isStamping
                ? 'stamped by itself at the first tap; change it if it was earlier'
                : 'stamped by itself only while the window is open'
            }
            fault={fault('time')}
            type="time"
            value={line.time}
            onChange={(value) => set({ time: value }, 'time')}
          />
          <SectionField
            label="Came from"
            value={line.from}
            sections={props.sections}
            fault={fault('from')}
            onChange={(from) => set({ from })}
          />
          <SectionField
            label="Went to"
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
        <summary>Where the flock was</summary>
        <PositionFields line={line} place={props.place} fault={fault} set={set} />
      </details>
      <details
        open={line.note !== '' || line.certainty === 'likely' || hasFault(['note', 'certainty'])}
      >
        <summary>How sure, and a note</summary>
        <div className="stack">
          <Choice
            legend="Identification"
            value={line.certainty}
            options={[
              { value: 'sure', label: 'Sure' },
              { value: 'likely', label: 'Likely' },
            ]}
            onChange={(certainty) => set({ certainty })}
          />
          <TextArea
            label="Note"
            hint="field marks seen, light, what else a compiler should know"
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
      none="not seen"
      options={props.sections.map((section) => ({ value: section.id, label: section.name }))}
      value={props.value}
      onChange={props.onChange}
    />
  );
}

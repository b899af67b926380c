import type { ReactNode } from 'react';
import { Field } from './field.js';
import { said, type Label } from './said.js';

/** One of a list, by its value; with `none`, an empty choice that says so comes first. */
export function SelectField(props: {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
  readonly required?: boolean;
  readonly value: string;
  readonly none?: string;
  readonly options: readonly { readonly value: string; readonly label: Label }[];
  readonly onChange: (value: string) => void;
}): ReactNode {
  return (
    <Field label={props.label} hint={props.hint} fault={props.fault}>
      {(ties) => (
        <select
          {...ties}
          required={props.required}
          value={props.value}
          onChange={(event) => props.onChange(event.target.value)}
        >
          {props.none === undefined ? null : <option value="">{props.none}</option>}
          {props.options.map(({ value, label }) => (
            <option key={value} value={value}>
              {said(label)}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}

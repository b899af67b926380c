import type { ReactNode } from 'react';
import { Field } from './field.js';

interface TextProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
  readonly required?: boolean;
  readonly value: string;
  readonly onChange: (value: string) => void;
}

/** One line to fill in: words by default, or a date, a time, a password, digits. */
export function TextField(
  props: TextProps & {
    readonly type?: 'text' | 'password' | 'date' | 'time';
    /** Which keys a phone shows. */
    readonly keys?: 'numeric' | 'decimal';
    /** What a browser may fill in by itself. */
    readonly autoComplete?: string;
  },
): ReactNode {
  return (
    <Field label={props.label} hint={props.hint} fault={props.fault}>
      {(ties) => (
        <input
          {...ties}
          type={props.type ?? 'text'}
          inputMode={props.keys}
          autoComplete={props.autoComplete}
          className={props.keys === undefined ? undefined : 'number'}
          required={props.required}
          value={props.value}
          onChange={(event) => props.onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

/** Several lines to fill in: a reason, a note, a question. */
export function TextArea(props: TextProps): ReactNode {
  return (
    <Field label={props.label} hint={props.hint} fault={props.fault}>
      {(ties) => (
        <textarea
          {...ties}
          required={props.required}
          value={props.value}
          onChange={(event) => props.onChange(event.target.value)}
        />
      )}
    </Field>
  );
}

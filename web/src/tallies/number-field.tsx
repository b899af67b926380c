import type { ReactNode } from 'react';
import { TextField } from '../ui/text-field.js';

/** A whole number of birds, typed on the phone's number keys; no browser fills it in. */
export function NumberField(props: {
  readonly label: string;
  readonly hint?: string;
  readonly value: string;
  readonly fault: string | undefined;
  readonly onChange: (value: string) => void;
}): ReactNode {
  return <TextField {...props} keys="numeric" autoComplete="off" />;
}

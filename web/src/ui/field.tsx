import { useId, type ReactNode } from 'react';

/** What a control needs so that its label, hint and fault are read with it. */
export interface ControlTies {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': true | undefined;
}

/** A labelled control with an optional hint and, if something is wrong, the fault right below it. */
export function Field(props: {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly fault?: string | undefined;
  readonly children: (ties: ControlTies) => ReactNode;
}): ReactNode {
  const id = useId();
  const hintId = `${id}-hint`;
  const faultId = `${id}-fault`;
  const describedBy = [
    props.hint === undefined ? null : hintId,
    props.fault === undefined ? null : faultId,
  ].filter((part) => part !== null);
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      {props.hint === undefined ? null : (
        <span id={hintId} className="hint">
          {props.hint}
        </span>
      )}
      {props.children({
        id,
        'aria-describedby': describedBy.length === 0 ? undefined : describedBy.join(' '),
        'aria-invalid': props.fault === undefined ? undefined : true,
      })}
      {props.fault === undefined ? null : (
        <span id={faultId} className="field-fault">
          {props.fault}
        </span>
      )}
    </div>
  );
}

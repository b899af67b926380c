import { useId, type ReactNode } from 'react';
import { said, type Label } from '../ui/said.js';

/** One of a few, as large buttons that behave as one radio group. */
export function Choice<Value extends string>(props: {
  readonly legend: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly label: Label }[];
  /** Short labels: three fit beside one another on a phone. */
  readonly isShort?: boolean;
  readonly onChange: (value: Value) => void;
}): ReactNode {
  const name = useId();
  return (
    <fieldset className="field">
      <legend>{props.legend}</legend>
      <div className={props.isShort ? 'choice-grid choice-grid-short' : 'choice-grid'}>
        {props.options.map((option) => (
          <label key={option.value} className="choice-button">
            <input
              type="radio"
              name={name}
              checked={option.value === props.value}
              onChange={() => props.onChange(option.value)}
            />
            <span>{said(option.label)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

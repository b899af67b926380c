import type { ReactNode } from 'react';
import type { ControlTies } from '../ui/field.js';
import { birds } from '../ui/words.js';
import { wholeNumber } from './draft.js';

const blocks = [1, 5, 10, 50, 100] as const;
const digits = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;
const mostDigits = 6;

/**
 * A number that gloves can enter: digits, and keys that add a block at a time while the eye stays at
 * the telescope. The field itself takes a keyboard too.
 */
export function NumberPad(props: {
  readonly value: string;
  readonly ties: ControlTies;
  readonly onChange: (value: string) => void;
}): ReactNode {
  const { value, onChange } = props;
  const number = wholeNumber(value);

  function add(step: number): void {
    onChange(String(Math.max(0, (number ?? 0) + step)));
  }

  return (
    <div className="number-pad">
      <input
        {...props.ties}
        type="text"
        inputMode="numeric"
        autoComplete="off"
        className="number number-shown"
        value={value}
        onChange={(event) => onChange(event.target.value)}
      />
      <div className="pad-blocks" role="group" aria-label="Add a block">
        {blocks.map((block) => (
          <button
            key={block}
            type="button"
            className="button"
            onClick={() => add(block)}
            aria-label={`Add ${block}`}
          >
            +{block}
          </button>
        ))}
      </div>
      <div className="pad-digits" role="group" aria-label="Digits">
        {digits.map((digit) => (
          <button
            key={digit}
            type="button"
            className="button"
            onClick={() => onChange((value === '0' ? '' : value.slice(0, mostDigits - 1)) + digit)}
          >
            {digit}
          </button>
        ))}
        <button type="button" className="button" onClick={() => add(-1)} aria-label="Take 1 away">
          −1
        </button>
        <button
          type="button"
          className="button"
          onClick={() => onChange(value === '' ? '0' : value.slice(0, mostDigits - 1) + '0')}
        >
          0
        </button>
        <button
          type="button"
          className="button"
          onClick={() => onChange(value.slice(0, -1))}
          aria-label="Delete the last digit"
        >
          ⌫
        </button>
      </div>
      <p className="hint" role="status">
        {number === null
          ? '\u00a0'
          : number === 0
            ? 'A stated zero: you looked for it and saw none.'
            : `${birds(number)} ${number === 1 ? 'bird' : 'birds'}.`}
      </p>
    </div>
  );
}
